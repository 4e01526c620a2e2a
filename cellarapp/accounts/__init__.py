"""People, devices, who is let in, and what they may do.

To the server the principal is the device: it holds the cookie. Who has it in hand is a person.
"""
