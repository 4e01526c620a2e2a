"""The shapes of answers about people and devices, for the OpenAPI document."""

from typing import Any

from marshmallow import Schema
from marshmallow.fields import Integer, List, Nested, String

from cellarapp.domain.roles import ROLES


def instant(*, or_null: bool = False) -> String:
    """A time."""
    return String(required=True, allow_none=or_null, metadata={"format": "date-time"})


def role() -> String:
    """What somebody may do."""
    return String(required=True, metadata={"enum": list(ROLES)})


def uuid(**more: Any) -> String:
    """An id."""
    return String(required=True, metadata={"format": "uuid"}, **more)


class PinCheckShape(Schema):
    """What a device needs to know a PIN again: PBKDF2 with SHA-256."""

    salt = String(required=True, metadata={"description": "base64"})
    iterations = Integer(required=True, metadata={"minimum": 600_000})
    hash = String(required=True, metadata={"description": "base64"})


class PersonHere(Schema):
    """Somebody who has proved themselves on this device."""

    name = String(required=True)
    role = role()
    pin_check = Nested(PinCheckShape, required=True, allow_none=True)


class DeviceHere(Schema):
    """This device."""

    id = uuid()
    name = String(required=True)


class InHand(Schema):
    """Who has it in hand."""

    name = String(required=True)
    role = role()


class MeAnswer(Schema):
    """What a device is told about itself."""

    device = Nested(DeviceHere, required=True)
    person = Nested(InHand, required=True)
    people = List(Nested(PersonHere), required=True)
    stepped_up_until = instant(or_null=True)
    version = Integer(
        required=True, metadata={"description": "Another number when something of it has changed"}
    )


class PersonShape(Schema):
    """Somebody."""

    id = uuid()
    name = String(required=True)
    role = role()
    has = List(
        String(metadata={"enum": ["passphrase", "pin"]}),
        required=True,
        metadata={"description": "What they can prove themselves with"},
    )
    created_at = instant()
    retired_at = instant(or_null=True)


class PeopleAnswer(Schema):
    """Everybody."""

    people = List(Nested(PersonShape), required=True)


class DeviceShape(Schema):
    """A device."""

    id = uuid()
    name = String(required=True)
    people = List(String(), required=True)
    person = String(required=True, allow_none=True, metadata={"description": "Who has it in hand"})
    paired_at = instant()
    last_seen_at = instant()
    waiting = Integer(required=True, metadata={"minimum": 0})
    oldest_waiting_at = instant(or_null=True)
    app = String(required=True)
    revoked_at = instant(or_null=True)


class DevicesAnswer(Schema):
    """All devices."""

    devices = List(Nested(DeviceShape), required=True)


class InviteAnswer(Schema):
    """A link that pairs one device."""

    link = String(required=True, metadata={"format": "uri"})
    token = String(required=True)
    expires_at = instant()
    qr_svg = String(required=True, metadata={"description": "The link as a QR code"})


class AuditLine(Schema):
    """Who did what."""

    id = Integer(required=True, metadata={"minimum": 1})
    at = instant()
    who = String(required=True, allow_none=True)
    device = String(required=True, allow_none=True)
    what = String(required=True)
    about = String(required=True)


class AuditAnswer(Schema):
    """A page, newest first; `next` is what to ask for before."""

    lines = List(Nested(AuditLine), required=True)
    next = Integer(required=True, allow_none=True)
