"""TEMP: the temperatures read at a place, by hand or by a logger, as one series."""

MOST_READINGS = 400
"""Kept with a place. A logger read every quarter of an hour fills four days; the ledger has all."""

Reading = list[str | int]
"""An instant, and tenths of a degree C."""


def merged(known: list[Reading], read: list[Reading]) -> list[Reading]:
    """TEMP-1: both series as one, in the order of time; the latest so many are kept.

    Of two readings at one instant the warmer stands: warmth is what harms beer. So the same
    readings give the same series in whatever order they arrive.
    """
    by_time: dict[str | int, int] = {}
    for at, temp_decidegc in [*known, *read]:
        by_time[at] = max(by_time.get(at, int(temp_decidegc)), int(temp_decidegc))
    return [[at, by_time[at]] for at in sorted(by_time, key=str)][-MOST_READINGS:]
