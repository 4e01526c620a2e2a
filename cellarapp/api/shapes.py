"""The shapes of answers, for the OpenAPI document. Answers are not run through them."""

from typing import Any

from marshmallow import Schema
from marshmallow.fields import Boolean, Dict, Integer, List, Nested, String

from cellarapp.domain.entries import RECORD_KINDS
from cellarapp.ledger.mentions import TRIPS

POSITION = {"minimum": 0}


def _position(**more: Any) -> Integer:
    return Integer(required=True, metadata=POSITION, **more)


def _instant() -> String:
    return String(required=True, metadata={"format": "date-time"})


class FieldProblem(Schema):
    """One thing to put right."""

    pointer = String(required=True, metadata={"description": "JSON Pointer, RFC 6901"})
    detail = String(required=True)


class ProblemDetails(Schema):
    """What went wrong (RFC 9457). Branch on `type`."""

    type = String(required=True)
    title = String(required=True)
    status = Integer(required=True, metadata={"minimum": 400, "maximum": 599})
    detail = String(required=True)
    errors = List(Nested(FieldProblem))
    incident = String(metadata={"format": "uuid"})
    epoch = String()
    head = Integer(metadata=POSITION)


class Result(Schema):
    """What became of one entry. A problem's pointers are within the entry."""

    id = String(required=True, allow_none=True)
    verdict = String(required=True, metadata={"enum": ["accepted", "known", "held", "refused"]})
    position = Integer(metadata={"minimum": 1})
    problem = Nested(ProblemDetails)


class PushAnswer(Schema):
    """A verdict for each entry, in the order of the request."""

    epoch = String(required=True)
    head = _position()
    server_time = _instant()
    results = List(Nested(Result), required=True)


class RowShape(Schema):
    """What is known now of one thing."""

    type = String(required=True, metadata={"enum": ["container", *sorted(RECORD_KINDS), TRIPS]})
    id = String(required=True)
    position = Integer(required=True, metadata={"minimum": 1})
    doc = Dict(required=True)


class PullAnswer(Schema):
    """Rows that changed."""

    epoch = String(required=True)
    since = _position()
    next = _position()
    more = Boolean(required=True)
    head = _position()
    rules = Integer(required=True)
    me_version = Integer(required=True, metadata={"description": "As in GET /api/me"})
    checksum = Integer(metadata=POSITION)
    rows = List(Nested(RowShape), required=True)


class SnapshotAnswer(Schema):
    """What the pages of a snapshot belong to."""

    epoch = String(required=True)
    position = _position()
    checksum = _position()
    rules = Integer(required=True)
    pages = Integer(required=True, metadata=POSITION)


class PageAnswer(Schema):
    """One page of a snapshot."""

    rows = List(Nested(RowShape), required=True)
    next = String(required=True, allow_none=True)


class HistoryEntry(Schema):
    """An entry with what the ledger knows of it."""

    id = String(required=True, metadata={"format": "uuid"})
    device = String(required=True, metadata={"format": "uuid"})
    seq = Integer(required=True, metadata={"minimum": 1})
    kind = String(required=True)
    subject = String(required=True)
    happened_at = _instant()
    effective_at = _instant()
    received_at = _instant()
    clock = String(required=True, metadata={"enum": ["ok", "corrected", "impossible"]})
    person = String(required=True)
    facts = Dict(required=True)
    rules = Integer(required=True)
    position = Integer(required=True, metadata={"minimum": 1})
    counts_for = String(required=True, allow_none=True)
    dropped_by = String(required=True, allow_none=True)


class HistoryAnswer(Schema):
    """A container and its entries."""

    row = Nested(RowShape, required=True)
    entries = List(Nested(HistoryEntry), required=True)


class HeldShape(Schema):
    """One entry that is held."""

    key = String(required=True, metadata={"description": "What it is decided by"})
    id = String(required=True, allow_none=True)
    raw = String(required=True)
    type = String(required=True, metadata={"description": "Why, as the type of a problem"})
    incident = String(required=True, allow_none=True)
    device = String(required=True)
    received_at = _instant()
    decision = String(
        required=True, allow_none=True, metadata={"enum": ["take", "put_aside", None]}
    )


class HeldAnswer(Schema):
    """Everything that is held."""

    held = List(Nested(HeldShape), required=True)


class HealthAnswer(Schema):
    """Which server this is."""

    status = String(required=True, metadata={"enum": ["ok"]})
    version = String(required=True)
    rules = Integer(required=True, metadata={"description": "Version of the rules"})
    build = String(required=True, metadata={"description": "Of the client; empty if not built"})
    demo = Boolean(required=True, metadata={"description": "Whether all of it is made up"})
    server_time = _instant()


class Check(Schema):
    """One thing that was looked at."""

    name = String(required=True)
    ok = Boolean(required=True)
    said = String(required=True)


class ReadyAnswer(Schema):
    """All that was looked at, and all of it well."""

    checks = List(Nested(Check), required=True)
