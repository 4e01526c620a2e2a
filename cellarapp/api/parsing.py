"""Reads and checks what a request carries, for flask-smorest."""

from typing import Any, ClassVar, NoReturn

from flask import Request
from marshmallow import EXCLUDE, Schema, ValidationError
from marshmallow.fields import Integer, Raw
from typing_extensions import override
from webargs.flaskparser import FlaskParser

from cellarapp.api.bodies import read_json
from cellarapp.api.problems import ProblemError
from cellarapp.ledger.fields import Spoken
from cellarapp.ledger.forms import NOT_READABLE
from cellarapp.ledger.problem import field_errors


class Parser(FlaskParser):
    """Reads bodies our way and tells errors as problems."""

    @override
    def load_json(self, req: Request, schema: Schema) -> Any:
        return read_json(req)

    @override
    def handle_error(
        self, error: ValidationError, req: Request, schema: Schema, **more: Any
    ) -> NoReturn:
        assert isinstance(error.messages, dict)
        errors = [e for below in error.messages.values() for e in field_errors(below)]
        said = " ".join(e.detail for e in errors[:3])
        raise ProblemError("malformed-request", said, errors) from error


class Asked(Schema):
    """What a request may say. What an app of a later release adds is passed over."""

    class Meta:
        unknown = EXCLUDE

    error_messages: dict[str, str] = NOT_READABLE


class AskedWhole(Spoken, Integer):
    """A whole number within limits, from the query of an address."""

    messages: ClassVar = {"invalid": "{name} must be a whole number from {low} to {high}."}

    def __init__(self, low: int, high: int, **more: Any) -> None:
        super().__init__(described={"minimum": low, "maximum": high}, **more)
        self.low, self.high = low, high

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "low": self.low, "high": self.high}

    @override
    def read(self, value: Any) -> int:
        plain = isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 20
        if not plain or not self.low <= int(value) <= self.high:
            raise self.make_error("invalid")
        return int(value)


class Protocol(Spoken, Integer):
    """The version of the protocol."""

    messages: ClassVar = {"invalid": "{name} must be 1; this server speaks no other protocol."}

    @override
    def read(self, value: Any) -> int:
        if type(value) is not int or value != 1:
            raise self.make_error("invalid")
        return value


class Elements(Spoken, Raw):
    """A list of anything at all: each element is judged by itself, later."""

    messages: ClassVar = {"invalid": "{name} must be a list."}

    @override
    def read(self, value: Any) -> list[object]:
        if not isinstance(value, list):
            raise self.make_error("invalid")
        return value
