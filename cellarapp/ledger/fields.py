"""Marshmallow fields for what an entry may hold; their messages say what to do.

They read JSON as it comes: a number sent as text is an error and not a number, and `true` is not 1.
Text is repaired rather than refused. Metadata goes into the OpenAPI document.
"""

import re
from collections.abc import Callable, Collection, Mapping
from datetime import UTC, datetime
from typing import Any, ClassVar

from marshmallow import ValidationError
from marshmallow.fields import Boolean, DateTime, Field, Integer, Raw, String
from typing_extensions import override

from cellarapp.domain.calendar import parse_day, parse_instant, write_instant
from cellarapp.domain.errors import NotADate, NotANumber, NotATime
from cellarapp.domain.numbers import normal_number

FIRST_DAY, LAST_DAY = "2000-01-01", "2100-12-31"
ID_PATTERN = r"[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}"
IS_ID = re.compile(ID_PATTERN, re.ASCII).fullmatch
UNWRITABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]")

ALWAYS = {
    "required": "{name} is missing.",
    "null": "{name} must not be null; leave it out if there is nothing to say.",
}


class Spoken(Field[Any]):
    """A field that names itself in its messages. Subclasses say how a value is `read`."""

    messages: ClassVar[dict[str, str]] = {}

    def __init__(self, *, described: Mapping[str, Any] | None = None, **more: Any) -> None:
        # What describes the field in OpenAPI: by its class, and by where it is used.
        metadata = {**(described or {}), **(more.pop("metadata", None) or {})}
        super().__init__(metadata=metadata, **more)

    def read(self, value: Any) -> Any:
        """The value as it is to be kept. Raises: ValidationError."""
        raise NotImplementedError

    def said(self) -> dict[str, Any]:
        """What the messages may mention."""
        return {"name": self.name}

    @override
    def make_error(self, key: str, **given: Any) -> ValidationError:
        return ValidationError((ALWAYS | self.messages)[key].format(**self.said()))

    @override
    def _deserialize(
        self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **more: Any
    ) -> Any:
        return self.read(value)


class Whole(Spoken, Integer):
    """A whole number within limits, in a unit such as mL."""

    messages: ClassVar = {
        "invalid": "{name} must be a whole number from {low} to {high}{unit}.",
        "range": "{name} must be between {low} and {high}{unit}.",
    }

    def __init__(self, low: int, high: int, unit: str = "", **more: Any) -> None:
        limits: dict[str, Any] = {"minimum": low, "maximum": high}
        super().__init__(described=limits | ({"description": unit} if unit else {}), **more)
        self.low, self.high, self.unit = low, high, f" {unit}" if unit else ""

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "low": self.low, "high": self.high, "unit": self.unit}

    @override
    def read(self, value: Any) -> int:
        if type(value) is not int:
            raise self.make_error("invalid")
        if not self.low <= value <= self.high:
            raise self.make_error("range")
        return value


class YesNo(Spoken, Boolean):
    """True or false, and nothing that merely looks like it."""

    messages: ClassVar = {"invalid": "{name} must be true or false."}

    @override
    def read(self, value: Any) -> bool:
        if not isinstance(value, bool):
            raise self.make_error("invalid")
        return value


class Words(Spoken, String):
    """What a person wrote. Characters that cannot be stored are left out, blanks around it too."""

    messages: ClassVar = {
        "invalid": "{name} must be text.",
        "length": "{name} must have {least} to {most} characters.",
    }

    def __init__(self, most: int, *, least: int = 0, **more: Any) -> None:
        super().__init__(described={"maxLength": most, "minLength": least}, **more)
        self.most, self.least = most, least

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "least": self.least, "most": self.most}

    @override
    def read(self, value: Any) -> str:
        if not isinstance(value, str):
            raise self.make_error("invalid")
        text = UNWRITABLE.sub("", value).strip()
        if not self.least <= len(text) <= self.most:
            raise self.make_error("length")
        return text


class Pattern(Spoken, String):
    """Text of one exact form, described in words."""

    messages: ClassVar = {"invalid": "{name} must be {form}."}

    def __init__(self, pattern: str, form: str, **more: Any) -> None:
        super().__init__(described={"pattern": f"^(?:{pattern})$", "description": form}, **more)
        self.form = form
        self.matches = re.compile(pattern, re.ASCII).fullmatch

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "form": self.form}

    @override
    def read(self, value: Any) -> str:
        if not isinstance(value, str) or not self.matches(value):
            raise self.make_error("invalid")
        return value


class Id(Pattern):
    """An id made on a device; some places go by a word instead."""

    def __init__(self, *words: str, **more: Any) -> None:
        form = "a UUID in lower case" + "".join(f' or "{word}"' for word in words)
        super().__init__("|".join([ID_PATTERN, *map(re.escape, words)]), form, **more)


class Choice(Spoken, String):
    """One of a few words."""

    messages: ClassVar = {"invalid": "{name} must be one of {choices}."}

    def __init__(self, choices: Collection[str], **more: Any) -> None:
        super().__init__(described={"enum": list(choices)}, **more)
        self.choices = frozenset(choices)
        self.listed = ", ".join(choices)

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "choices": self.listed}

    @override
    def read(self, value: Any) -> str:
        if not isinstance(value, str) or value not in self.choices:
            raise self.make_error("invalid")
        return value


class Converted(Spoken, String):
    """Text that a rule of the domain reads."""

    convert: Callable[[str], str]

    @override
    def read(self, value: Any) -> str:
        if not isinstance(value, str):
            raise self.make_error("invalid")
        try:
            return type(self).convert(value)
        except (NotANumber, NotADate, NotATime) as fault:
            raise self.make_error("invalid") from fault


class Number(Converted):
    """A container's number, put into its normal form: "f 117" is F117."""

    messages: ClassVar = {
        "invalid": "{name} must be a container's number: one to eight letters and digits, "
        "at least one of them a digit.",
    }
    convert = staticmethod(normal_number)

    def __init__(self, **more: Any) -> None:
        described = 'A container\'s number; "f 117" is read as F117.'
        super().__init__(described={"description": described}, **more)


def _normal_way(text: str) -> str:
    act, _, about = text.partition(":")
    target, _, number = about.partition(":")
    if text == "right" or (act == "void" and IS_ID(about)):
        return text
    if act == "renumber" and IS_ID(target):
        return f"renumber:{target}:{normal_number(number)}"
    raise NotANumber(text=text)


class Way(Converted):
    """The way out of a query: it is right, this entry is void, that one is another number's."""

    messages: ClassVar = {
        "invalid": '{name} must be "right", "void:" and the id of an entry, or "renumber:", '
        'the id of an entry, ":" and a number.',
    }
    convert = staticmethod(_normal_way)


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
