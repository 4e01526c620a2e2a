"""Text: what a person wrote, ids, numbers of containers. It is repaired rather than refused."""

import re
from collections.abc import Callable
from typing import Any, ClassVar

from marshmallow.fields import String
from typing_extensions import override

from cellarapp.domain.errors import NotADate, NotANumber, NotATime
from cellarapp.domain.numbers import normal_number
from cellarapp.ledger.fields.spoken import Spoken

ID_PATTERN = r"[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}"
IS_ID = re.compile(ID_PATTERN, re.ASCII).fullmatch
UNWRITABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]")


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
        # As described: the most counts what was sent, the least what is left of it.
        if len(value) > self.most or len(text) < self.least:
            raise self.make_error("length")
        return text


class Secret(Spoken, String):
    """A passphrase or the like: kept exactly as it was typed, and never shown."""

    messages: ClassVar = {
        "invalid": "{name} must be text.",
        "length": "{name} must have {least} to {most} characters.",
    }

    def __init__(self, least: int, most: int, **more: Any) -> None:
        described = {"minLength": least, "maxLength": most, "format": "password"}
        super().__init__(described=described, load_only=True, **more)
        self.least, self.most = least, most

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "least": self.least, "most": self.most}

    @override
    def read(self, value: Any) -> str:
        if not isinstance(value, str) or not value.isprintable():
            raise self.make_error("invalid")
        if not self.least <= len(value) <= self.most:
            raise self.make_error("length")
        return value


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
