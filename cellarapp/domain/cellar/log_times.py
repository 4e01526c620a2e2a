"""LOG: times as loggers write them, and the London clock that those without a zone are read on."""

import re
from typing import NamedTuple

from cellarapp.domain.calendar import london_date, london_instant, london_minute
from cellarapp.domain.cellar.asked import FIRST_AT, LAST_AT
from cellarapp.domain.cellar.times import MONTHS, at_ms, ms_of
from cellarapp.domain.cellar.units import (
    DAY_MINUTES,
    HALF_DAY_HOURS,
    HOUR_MS,
    MINUTE_MS,
    THIS_CENTURY,
)
from cellarapp.domain.errors import NotATime

CLOCK = (
    r"[ T]+([0-9]{1,2}):([0-9]{2})(?::([0-9]{2})(?:[.,][0-9]{1,9})?)?[ ]*([AaPp][Mm])?"
    r"[ ]*(Z|[+-][0-9]{2}:?[0-9]{2})?"
)
YEAR_FIRST = re.compile("([0-9]{4})[-/]([0-9]{1,2})[-/]([0-9]{1,2})" + CLOCK)
DAY_FIRST = re.compile("([0-9]{1,2})[-/.]([0-9]{1,2})[-/.]([0-9]{4}|[0-9]{2})" + CLOCK)
NAMED_MONTH = re.compile("([0-9]{1,2})[- ]([A-Za-z]{3,9})[- ,]+([0-9]{4})" + CLOCK)
LEAST_MONTH_LETTERS = 3


class Written(NamedTuple):
    """A time as it stands in a file: milliseconds of the clock's reading, and its offset if any."""

    clock_ms: int
    offset_ms: int | None


def written_time(text: str) -> Written | None:
    """LOG-1: the day first, or the year first; None where the text is no time that can be."""
    for pattern, order in ((YEAR_FIRST, "ymd"), (DAY_FIRST, "dmy"), (NAMED_MONTH, "dny")):
        found = pattern.fullmatch(text)
        if found:
            parts = dict(zip(order, found.groups(), strict=False))
            month = _month(parts["n"]) if "n" in parts else int(parts["m"])
            year = int(parts["y"])
            year = year + THIS_CENTURY if len(parts["y"]) == 2 else year
            return _written(year, month, int(parts["d"]), found.groups()[3:])
    return None


def _month(name: str) -> int:
    low = name.lower()
    if len(low) < LEAST_MONTH_LETTERS:
        return 0
    return next((n + 1 for n, month in enumerate(MONTHS) if month.lower().startswith(low)), 0)


def _written(year: int, month: int, day: int, clock: tuple[str | None, ...]) -> Written | None:
    hour, minute, second = int(clock[0] or 0), int(clock[1] or 0), int(clock[2] or 0)
    half = (clock[3] or "").lower()
    if half:
        if not 1 <= hour <= HALF_DAY_HOURS:
            return None
        hour = hour % HALF_DAY_HOURS + (HALF_DAY_HOURS if half == "pm" else 0)
    text = f"{year:04d}-{month:02d}-{day:02d}T{hour:02d}:{minute:02d}:{second:02d}.000Z"
    try:
        clock_ms = ms_of(text)
    except NotATime:
        return None
    if not FIRST_AT <= text <= LAST_AT:
        return None
    return Written(clock_ms, offset_of(clock[4]) if clock[4] else None)


def offset_of(zone: str) -> int:
    """Milliseconds that a zone's clock is ahead: Z, +01:00, -0500."""
    if zone == "Z":
        return 0
    minutes = int(zone[1:3]) * 60 + int(zone[-2:])
    return (-minutes if zone[0] == "-" else minutes) * MINUTE_MS


def instant_of(written: Written, before_ms: int | None) -> int | None:
    """LOG-2: the instant meant; None for a time that the clocks leapt over in March.

    An hour that happens twice in October is read as the first, unless the line before is later
    than that already.
    """
    if written.offset_ms is not None:
        return written.clock_ms - written.offset_ms
    text = at_ms(written.clock_ms)
    first = ms_of(london_instant(text[:10], written.clock_ms // MINUTE_MS % DAY_MINUTES))
    first += written.clock_ms % MINUTE_MS
    if not _shows(first, text):
        return None
    second = first + HOUR_MS
    if before_ms is not None and first <= before_ms < second and _shows(second, text):
        return second
    return first


def _shows(time: int, text: str) -> bool:
    instant = at_ms(time)
    minute = london_minute(instant)
    return text.startswith(f"{london_date(instant)}T{minute // 60:02d}:{minute % 60:02d}")
