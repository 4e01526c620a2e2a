"""When an entry takes effect: fixed once, at receipt (LIFE-23).

A device's clock may be wrong, and must neither stop an entry nor rule the ledger.
"""

from datetime import UTC, datetime, timedelta
from typing import NamedTuple

from cellarapp.domain.entries import Clock

BELIEVED_OFFSET = timedelta(seconds=120)
"""A residual no greater than this is the network's delay, not the clock's fault."""
BELIEVED_AHEAD = timedelta(seconds=300)
"""An entry may seem to come after its receipt by this much."""
FIRST_BELIEVED = datetime(2000, 1, 1, tzinfo=UTC)


class Effect(NamedTuple):
    """When an entry takes effect and what was thought of the device's clock."""

    effective_at: datetime
    clock: Clock


def take_effect(happened_at: datetime, *, offset: timedelta, received_at: datetime) -> Effect:
    """The time by which an entry folds.

    Args:
        happened_at: what the device says.
        offset: receipt less the time at which the device says it sent the entry.
        received_at: the receipt; no entry takes effect later.
    """
    clock: Clock = "ok"
    if abs(offset) > BELIEVED_OFFSET:
        clock = "corrected"
        try:
            happened_at += offset
        except OverflowError:
            return Effect(received_at, "impossible")
    if not FIRST_BELIEVED <= happened_at <= received_at + BELIEVED_AHEAD:
        return Effect(received_at, "impossible")
    return Effect(min(happened_at, received_at), clock)


def write_any(moment: datetime) -> str:
    """An instant in the form of domain/calendar.py; also of the years before 1000."""
    return moment.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
