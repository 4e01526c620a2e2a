"""HTTP: translates requests into calls of the ledger and what comes back into answers."""

from cellarapp.api.service import register

__all__ = ["register"]
