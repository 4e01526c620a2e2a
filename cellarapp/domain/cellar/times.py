"""Instants as whole milliseconds to reckon with, and times and days as they are said."""

import math
from datetime import timedelta

from cellarapp.domain.calendar import (
    add_days,
    days_between,
    london_date,
    london_instant,
    london_minute,
    parse_instant,
    write_instant,
)
from cellarapp.domain.cellar.units import EPOCH, HOUR_MS, MINUTE_MS
from cellarapp.domain.rounding import half_up

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
A_MONDAY = "2000-01-03"
HAIR = 1 / 1_000_000
"""Of a minute: what two languages' exp and log may differ by is far less."""


def ms_of(instant: str) -> int:
    """Milliseconds since 1970 began."""
    return (parse_instant(instant) - EPOCH) // timedelta(milliseconds=1)


def at_ms(ms: int) -> str:
    """The instant so many milliseconds after 1970 began."""
    return write_instant(EPOCH + timedelta(milliseconds=ms))


def hours_ms(hours: float) -> int:
    """Hours as milliseconds, to the next whole minute: late rather than early."""
    return math.ceil(hours * 60 - HAIR) * MINUTE_MS


def hours_ms_down(hours: float) -> int:
    """Hours as milliseconds, cut to the whole minute: early rather than late."""
    return math.floor(hours * 60 + HAIR) * MINUTE_MS


def hours_between(first_ms: int, last_ms: int) -> float:
    """Hours from one to the other."""
    return (last_ms - first_ms) / HOUR_MS


def end_of(day: str) -> str:
    """Midnight at the end of a day in London."""
    return london_instant(add_days(day, 1), 0)


def weekday(day: str) -> str:
    """Mon to Sun."""
    return DAYS[days_between(A_MONDAY, day) % len(DAYS)]


def day_and_month(day: str) -> str:
    """4 July: the day before the month, no ordinals."""
    return f"{int(day[8:])} {MONTHS[int(day[5:7]) - 1]}"


def say_day(day: str) -> str:
    """Sat 4 Jul 2026."""
    return f"{weekday(day)} {int(day[8:])} {MONTHS[int(day[5:7]) - 1][:3]} {day[:4]}"


def say_at(instant: str) -> str:
    """Sat 4 Jul 13:00, on a London clock."""
    day, minute = london_date(instant), london_minute(instant)
    return f"{say_day(day)[:-5]} {minute // 60:02d}:{minute % 60:02d}"


def plain(number: float) -> str:
    """A number as it is said, to hundredths: 12, 12.5, with no nought that says nothing."""
    rounded = half_up(number, 2)
    return str(int(rounded)) if rounded == int(rounded) else str(rounded)
