"""Days and instants, and temperatures by time."""

from datetime import UTC, datetime
from typing import Any, ClassVar

from marshmallow.fields import DateTime, Raw
from typing_extensions import override

from cellarapp.domain.calendar import parse_day, parse_instant, write_instant
from cellarapp.domain.errors import NotADate, NotATime
from cellarapp.ledger.fields.spoken import Spoken
from cellarapp.ledger.fields.text import Converted

FIRST_DAY, LAST_DAY = "2000-01-01", "2100-12-31"


def _believable_day(text: str) -> str:
    parse_day(text)
    if not FIRST_DAY <= text <= LAST_DAY:
        raise NotADate(text=text)
    return text


class Day(Converted):
    """A date on the brewery's calendar."""

    messages: ClassVar = {
        "invalid": "{name} must be a date from 2000 to 2100, written as 2026-11-25.",
    }
    convert = staticmethod(_believable_day)

    def __init__(self, **more: Any) -> None:
        described = {"format": "date", "description": f"{FIRST_DAY} to {LAST_DAY}"}
        super().__init__(described=described, **more)


def _in_utc(text: str) -> str:
    try:
        moment = datetime.fromisoformat(text)
        if moment.tzinfo is None:
            raise NotATime(text=text)
        written = write_instant(moment)
    except (ValueError, OverflowError) as fault:
        raise NotATime(text=text) from fault
    parse_instant(written)
    return written


class Instant(Converted):
    """A time that somebody planned or noted, kept in UTC."""

    messages: ClassVar = {
        "invalid": "{name} must be a time from 1900 to 2199 with its zone, "
        "written as 2026-11-25T09:40:00.000Z.",
    }

    convert = staticmethod(_in_utc)

    def __init__(self, **more: Any) -> None:
        super().__init__(described={"format": "date-time"}, **more)


class Series(Spoken, Raw):
    """Temperatures: pairs of a time and tenths of a degree C, 1 to 500 of them."""

    MOST = 500
    messages: ClassVar = {
        "invalid": "{name} must be a list of 1 to 500 pairs: a time with its zone, and a "
        "temperature from -300 to 1000 tenths of a degree C.",
    }

    def __init__(self, **more: Any) -> None:
        described = {"type": "array", "minItems": 1, "maxItems": self.MOST}
        super().__init__(described=described, **more)

    @override
    def read(self, value: Any) -> list[list[str | int]]:
        if not isinstance(value, list) or not 1 <= len(value) <= self.MOST:
            raise self.make_error("invalid")
        return [self._pair(each) for each in value]

    def _pair(self, each: Any) -> list[str | int]:
        if not isinstance(each, list) or len(each) != 2:
            raise self.make_error("invalid")
        at, temp_decidegc = each
        if not isinstance(at, str) or type(temp_decidegc) is not int:
            raise self.make_error("invalid")
        if not -300 <= temp_decidegc <= 1000:
            raise self.make_error("invalid")
        try:
            return [_in_utc(at), temp_decidegc]
        except NotATime as fault:
            raise self.make_error("invalid") from fault


class Moment(Spoken, DateTime):
    """An instant with its zone, however wrong the clock that it was read from."""

    messages: ClassVar = {
        "invalid": "{name} must be a time with its zone, written as 2026-11-25T09:40:00.000Z.",
    }

    @override
    def read(self, value: Any) -> datetime:
        try:
            moment = datetime.fromisoformat(value if isinstance(value, str) else "")
        except ValueError as fault:
            raise self.make_error("invalid") from fault
        if moment.tzinfo is None:
            raise self.make_error("invalid")
        try:
            return moment.astimezone(UTC)
        except OverflowError:  # the first or last day of all, in another zone
            return moment.replace(tzinfo=UTC)
