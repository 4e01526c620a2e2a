"""Instants in UTC and days on the brewery's calendar, which is London's.

An instant is written 2026-11-25T09:40:00.000Z and a day 2026-11-25, so that both sort as text.
Years run from 1900 to 2199: anything else is a slip.
"""

import re
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from cellarapp.domain.errors import NotADate, NotATime

LONDON = ZoneInfo("Europe/London")
INSTANT = re.compile(r"(?:19|20|21)\d\d-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z", re.ASCII)
DAY = re.compile(r"(?:19|20|21)\d\d-\d\d-\d\d", re.ASCII)


def parse_instant(text: str) -> datetime:
    """The instant that the text says. Raises: NotATime for any other form."""
    if not INSTANT.fullmatch(text):
        raise NotATime(text=text)
    try:
        return datetime.fromisoformat(text)
    except ValueError as fault:
        raise NotATime(text=text) from fault


def write_instant(moment: datetime) -> str:
    """The one way an instant is written: UTC, cut (not rounded) to milliseconds."""
    utc = moment.astimezone(UTC).replace(tzinfo=None)
    return f"{utc.isoformat(timespec='milliseconds')}Z"


def parse_day(text: str) -> date:
    """The day that the text says. Raises: NotADate."""
    if not DAY.fullmatch(text):
        raise NotADate(text=text)
    try:
        return date.fromisoformat(text)
    except ValueError as fault:
        raise NotADate(text=text) from fault


def london_date(instant: str) -> str:
    """The day it was in London at that instant."""
    return parse_instant(instant).astimezone(LONDON).date().isoformat()


def add_days(day: str, days: int) -> str:
    """The day that many days later, or earlier when negative."""
    return (parse_day(day) + timedelta(days=days)).isoformat()


def days_between(first: str, last: str) -> int:
    """Whole days from the first day to the last; negative when the last comes before."""
    return (parse_day(last) - parse_day(first)).days


def same_time_after(instant: str, days: int) -> str:
    """The same time on a London clock that many days later.

    A cask racked at 10:00 is ready at 10:00, also across the night the clocks change. A time that
    the clocks leap over (01:30 on that night in March) is read with the winter offset.
    """
    local = parse_instant(instant).astimezone(LONDON)
    if days == 0:
        return instant  # 01:30 comes twice in October, and this is the one that was meant
    return write_instant((local.replace(fold=0) + timedelta(days=days)).astimezone(UTC))


def london_minute(instant: str) -> int:
    """Minutes on a London clock since midnight, at that instant."""
    local = parse_instant(instant).astimezone(LONDON)
    return local.hour * 60 + local.minute


def london_instant(day: str, minute: int) -> str:
    """The instant at which a London clock shows so many minutes since that day's midnight.

    A time that happens twice in October is the first; one that is leapt over in March is read with
    the winter offset.
    """
    wall = datetime.combine(parse_day(day), datetime.min.time()) + timedelta(minutes=minute)
    return write_instant(wall.replace(tzinfo=LONDON))
