"""What forms are made of."""

from typing import Any

from marshmallow import RAISE, Schema
from marshmallow.fields import Field, Nested

from cellarapp.domain.inference import AT_THE_BREWERY
from cellarapp.ledger.fields import Id, Words

Facts = dict[str, dict[str, Field[Any]]]
"""The facts of each kind of entry."""

NOT_READABLE = {
    "unknown": "This is not known here. Leave it out, or update the server.",
    "type": "This must be a JSON object.",
}

NO_PART: dict[str, Any] = {"type": "This must be a JSON object."}


class Form(Schema):
    """Refuses what it does not know, in our own words."""

    class Meta:
        unknown = RAISE

    error_messages: dict[str, str] = NOT_READABLE


def place(**more: Any) -> Id:
    """A place, or "brewery" where nobody said which."""
    return Id(AT_THE_BREWERY, **more)


def why(**more: Any) -> Words:
    """A reason in words."""
    return Words(500, **more)


def part(name: str, **parts: Field[Any]) -> Nested:
    """An object within the facts."""
    return Nested(Form.from_dict(dict(parts), name=name), error_messages=NO_PART)
