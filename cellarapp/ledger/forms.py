"""What an entry may hold: the envelope that all share, and the facts of each kind.

Anything else is malformed. The limits here only catch what cannot be meant; what is odd but
possible is taken in and becomes a query.
"""

from typing import Any

from marshmallow import RAISE, Schema
from marshmallow.fields import Dict, Field, List, Nested

from cellarapp.domain.containers import CONTAINER_KINDS, LARGEST_ML, most_that_fits_ml
from cellarapp.domain.entries import CONTAINER_KINDS as HAPPENING
from cellarapp.domain.entries import CORRECTION_KINDS
from cellarapp.domain.inference import AT_THE_BREWERY
from cellarapp.ledger.fields import (
    ID_PATTERN,
    Choice,
    Day,
    Id,
    Moment,
    Number,
    Pattern,
    Way,
    Whole,
    Words,
    YesNo,
)

MOST_ML = most_that_fits_ml(None)
LARGEST_SEQ = 9_999_999_999
"""Ten digits, as the order key has room for."""

NOT_READABLE = {
    "unknown": "This is not known here. Leave it out, or update the server.",
    "type": "This must be a JSON object.",
}

NO_FACTS: dict[str, Any] = {
    "required": "facts is missing; it may be an empty object.",
    "null": "facts must be a JSON object.",
    "invalid": "facts must be a JSON object.",
}


class Form(Schema):
    """Refuses what it does not know, in our own words."""

    class Meta:
        unknown = RAISE

    error_messages: dict[str, str] = NOT_READABLE


def _place(**more: Any) -> Id:
    return Id(AT_THE_BREWERY, **more)


def _why(**more: Any) -> Words:
    return Words(500, **more)


FACTS: dict[str, dict[str, Field[Any]]] = {
    "registered": {
        "kind": Choice(CONTAINER_KINDS, required=True),
        "capacity_ml": Whole(1, 4 * LARGEST_ML, "mL", required=True),
        "tare_g": Whole(1, 1_000_000, "g"),
        "owner": Words(60),
        "place": _place(),
    },
    "washed": {"with": Words(60)},
    "inspected": {"passed": YesNo(required=True), "why": _why()},
    "filled": {
        "gyle": Id(required=True),
        "volume_ml": Whole(1, 5 * LARGEST_ML, "mL", required=True),
        "best_before": Day(required=True, allow_none=True),
        "place": _place(),
    },
    "moved": {"place": _place(required=True)},
    "stillaged": {"place": _place()},
    "vented": {"spile": Choice(("hard", "soft"), required=True)},
    "tapped": {},
    "dipped": {"left_ml": Whole(0, 5 * LARGEST_ML, "mL", required=True)},
    "checked": {
        "temp_decidegc": Whole(-300, 1000, "tenths of a degree C"),
        "clarity": Words(60),
        "taste": Words(500),
        "words": Words(2000),
    },
    "emptied": {"why": _why()},
    "sent": {"customer": Id(required=True), "due_on": Day(required=True, allow_none=True)},
    "returned": {"ullage_ml": Whole(0, MOST_ML, "mL"), "place": _place(), "customer": Id()},
    "set_aside": {"why": _why(required=True)},
    "released": {},
    "missing": {"why": _why()},
    "found": {"place": _place()},
    "scrapped": {"why": _why()},
    "noted": {"words": Words(2000, required=True)},
    "voided": {"target": Id(required=True)},
    "renumbered": {"target": Id(required=True), "to": Number(required=True)},
    "settled": {
        "query": Pattern(
            f"[a-z_]{{1,40}}(?::{ID_PATTERN}){{1,9}}", "the id of a query", required=True
        ),
        "way": Way(required=True),
        "replaces": List(Id()),
    },
    "beer": {
        "name": Words(60, least=1),
        "abv_tenths": Whole(0, 300, "tenths of a per cent by volume"),
        "style": Words(60),
        "conditioning_days": Whole(0, 1000, "days"),
        "best_before_days": Whole(1, 4000, "days"),
        "on_sale_days": Whole(1, 365, "days"),
        "retired": YesNo(),
    },
    "gyle": {
        "number": Words(20, least=1),
        "beer": Id(),
        "brewed_on": Day(),
        "volume_ml": Whole(1, 100_000_000, "mL"),
        "retired": YesNo(),
    },
    "place": {
        "name": Words(60, least=1),
        "role": Choice(("store", "yard", "stillage", "bar")),
        "retired": YesNo(),
    },
    "customer": {
        "name": Words(60, least=1),
        "contact": Words(120),
        "phone": Words(40),
        "agreed_days": Whole(0, 1000, "days"),
        "delivery_day": Whole(0, 6, "(Monday is 0)"),
        "retired": YesNo(),
    },
    "chased": {"words": Words(2000), "promised_on": Day(allow_none=True)},
}


def _entry_form(kind: str) -> Form:
    """The form of a whole entry of one kind."""
    about_container = kind in HAPPENING or kind in CORRECTION_KINDS
    facts = Form.from_dict(dict(FACTS[kind]), name=f"FactsOf_{kind}")
    return _form(
        f"EntryOf_{kind}",
        kind=Choice([kind], required=True),
        subject=Number(required=True) if about_container else _place(required=True),
        facts=Nested(facts, required=True, error_messages=NO_FACTS),
    )


def _form(name: str, **parts: Field[Any]) -> Form:
    envelope = {
        "id": Id(required=True),
        "device": Id(required=True),
        "seq": Whole(1, LARGEST_SEQ, required=True),
        "happened_at": Moment(required=True),
        "person": Words(60, required=True),
        "rules": Whole(0, 2**31 - 1, required=True),
    }
    form = Form.from_dict(envelope | parts, name=name)()
    assert isinstance(form, Form)
    return form


FORMS: dict[str, Form] = {kind: _entry_form(kind) for kind in FACTS}
"""The form of each kind of entry."""

LATER_FORM = _form(
    "EntryOfLaterKind",
    kind=Words(40, least=1, required=True),
    subject=Words(60, least=1, required=True),
    facts=Dict(required=True, error_messages=NO_FACTS),
)
"""The form of an entry whose kind a later release may know."""
