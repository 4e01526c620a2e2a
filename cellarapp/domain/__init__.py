"""The trade's rules: pure functions of their arguments.

Nothing here knows HTTP, a database, the clock, chance or files beside it.
Rules carry ids (ORD-1, LIFE-4 …) that stand in the docstring, the vectors and the tests.
What the phone needs without a network has a twin of the same name in static/src/domain/.
"""

RULES_VERSION = 3
"""Raised whenever the fold would give another standing for the same entries."""
