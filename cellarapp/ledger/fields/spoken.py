"""Fields that name themselves in their messages, which say what to do.

They read JSON as it comes: a number sent as text is an error and not a number, and `true` is not 1.
Metadata goes into the OpenAPI document.
"""

from collections.abc import Collection, Mapping
from typing import Any, ClassVar

from marshmallow import ValidationError
from marshmallow.fields import Boolean, Field, Integer, String
from typing_extensions import override

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
