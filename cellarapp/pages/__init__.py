"""The pages that need no sign-in: for whoever finds a container, and for a customer.

Plain HTML, drawn by the server and working without script, on any phone there is. What is said on
them comes into the ledger as entries.
"""

from flask import Flask

from cellarapp.pages import customer, finder
from cellarapp.pages.frame import pages

PARTS = (finder, customer)
"""Their views join the one blueprint when they are imported."""


def register(app: Flask) -> None:
    """Register the pages of an application."""
    app.register_blueprint(pages)
