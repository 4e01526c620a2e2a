"""TRIPS: the trips that have ended, counted by customer, kind of container and days.

Made by the brewery's server from the fold of each container, and pulled by phones as one row for
each customer: counts instead of a history. Trips still open are in the standings.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple, TypedDict, TypeVar

from cellarapp.domain.calendar import days_between, london_date
from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.fold import step
from cellarapp.domain.standing import Standing, blank

T = TypeVar("T")


class TripCounts(TypedDict):
    """By kind of container, "" where nobody said which.

    `ended` has [day of the trip on which it came on record, days, returned, ended otherwise];
    `begun` how many of them began in each month.
    """

    ended: dict[str, list[list[int]]]
    begun: dict[str, dict[str, int]]


class EndedTrip(NamedTuple):
    """A trip that is over."""

    customer: str
    kind: str
    month: str
    """In which it began."""
    entered_day: int
    """On which of its days it came on record; 0 when that was when it began."""
    days: int
    returned: bool


def blank_counts() -> TripCounts:
    """A customer of whom no trip has ended."""
    return {"ended": {}, "begun": {}}


def ended_trip(before: Standing, entry: Entry, after: Standing) -> EndedTrip | None:
    """TRIPS-1: the trip that an entry ended, if it ended one.

    Seen at the brewery, or noted as found there, it has returned. Scrapped, or sent to somebody
    with no word of its return, it ended otherwise: how long it would have been out nobody knows.
    Noted twice as sent to one customer on one day it goes on.
    """
    trip, later = before["trip"], after["trip"]
    if trip is None or (later is not None and later["entry"] == trip["entry"]):
        return None
    began_on, ended_on = london_date(trip["since"]), london_date(entry["effective_at"])
    if later is not None and later["customer"] == trip["customer"] and began_on == ended_on:
        return None
    on_record = trip["on_record_since"]
    return EndedTrip(
        customer=trip["customer"],
        kind=after["kind"] or "",
        month=began_on[:7],
        entered_day=max(0, days_between(began_on, on_record)) if on_record else 0,
        days=max(0, days_between(began_on, ended_on)),
        returned=later is None and entry["kind"] != "scrapped",
    )


def fold_with_trips(number: str, entries: Iterable[Entry]) -> tuple[Standing, list[EndedTrip]]:
    """ORD-1: the standing of a container, as `fold` has it, and the trips that ended on the way."""
    standing, trips = blank(number), []
    for entry in sorted(entries, key=order_key):
        after = step(standing, entry).standing
        ended = ended_trip(standing, entry, after)
        if ended is not None:
            trips.append(ended)
        standing = after
    return standing, trips


def counted(counts: TripCounts, trip: EndedTrip, times: int) -> TripCounts:
    """TRIPS-2: the counts with a trip more, or one less when `times` is -1."""
    rows = {
        (entered, days): (returned, otherwise)
        for entered, days, returned, otherwise in counts["ended"].get(trip.kind, [])
    }
    key = (trip.entered_day, trip.days)
    returned, otherwise = rows.get(key, (0, 0))
    rows[key] = (returned + times * trip.returned, otherwise + times * (not trip.returned))
    months = counts["begun"].get(trip.kind, {})
    months = {**months, trip.month: months.get(trip.month, 0) + times}
    ended = [[*key, *rows[key]] for key in sorted(rows) if rows[key] != (0, 0)]
    return {
        "ended": _with(counts["ended"], trip.kind, ended),
        "begun": _with(counts["begun"], trip.kind, {m: n for m, n in months.items() if n}),
    }


def _with(by_kind: Mapping[str, T], kind: str, value: T) -> dict[str, T]:
    others = {name: one for name, one in by_kind.items() if name != kind}
    return {**others, kind: value} if value else others
