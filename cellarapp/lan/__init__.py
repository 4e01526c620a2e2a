"""HTTPS on the brewery's own network, and how phones come to trust it.

Needs the packages of the extra "lan"; `addresses` only when it is asked about that network.
"""
