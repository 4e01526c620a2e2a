"""TRIP: how long a container has been out, and since when it is overdue."""

from cellarapp.domain.calendar import add_days, days_between, london_date
from cellarapp.domain.figures import Settings, setting
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Trip


def due_on(sent_at: str, customer: Record | None, settings: Settings | None = None) -> str:
    """TRIP-1: due back so many days after it was sent, each customer its own agreement."""
    agreed = customer["fields"].get("agreed_days") if customer is not None else None
    days = setting("agreed_days", settings) if agreed is None else agreed
    return add_days(london_date(sent_at), int(days))


def days_out(trip: Trip, now: str) -> int:
    """TRIP-2: nights out, counted on London's calendar."""
    return days_between(london_date(trip["since"]), london_date(now))


def days_overdue(trip: Trip, now: str) -> int:
    """TRIP-3: days past the day it was due; nought on that day, before it, and with none agreed."""
    if trip["due_on"] is None:
        return 0
    return max(0, days_between(trip["due_on"], london_date(now)))
