"""Jobs due, as a calendar that any calendar program subscribes to (RFC 5545)."""

from cellarapp.documents.calendar.due import TYPES, Due, all_due
from cellarapp.documents.calendar.feed import feed

__all__ = ["TYPES", "Due", "all_due", "feed"]
