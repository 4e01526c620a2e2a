"""A made-up brewery to look at: fourteen months of entries, as three devices would have made them.

Everything in it is invented. The same seed and time give the same entries, byte for byte.
Only here is chance allowed; the rules know none.
"""

from collections.abc import Iterator
from datetime import date

from cellarapp.demo.notebook import Received
from cellarapp.demo.words import PEOPLE
from cellarapp.demo.year import live
from cellarapp.domain.calendar import london_date, parse_instant

__all__ = ["PEOPLE", "Received", "entries"]


def entries(now: str, seed: int) -> Iterator[Received]:
    """Every entry in the order in which the server received it, none of them after `now`.

    Args:
        now: the instant that is to be the present, as in domain/calendar.py.
        seed: which made-up brewery.
    """
    today = date.fromisoformat(london_date(now))
    return live(parse_instant(now), today, seed).book.received()
