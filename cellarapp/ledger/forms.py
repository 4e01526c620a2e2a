"""What an entry may hold: the envelope that all share, and the facts of each kind.

Anything else is malformed. The limits here only catch what cannot be meant; what is odd but
possible is taken in and becomes a query.
"""

from typing import Any

from marshmallow import RAISE, Schema
from marshmallow.fields import Dict, Field, List, Nested
from marshmallow.validate import Length

from cellarapp.domain.containers import CONTAINER_KINDS, LARGEST_ML, most_that_fits_ml
from cellarapp.domain.entries import CONTAINER_KINDS as HAPPENING
from cellarapp.domain.entries import CORRECTION_KINDS
from cellarapp.domain.figures import FIGURES, figure
from cellarapp.domain.inference import AT_THE_BREWERY
from cellarapp.ledger.fields import (
    ID_PATTERN,
    Choice,
    Day,
    Id,
    Instant,
    Moment,
    Number,
    Pattern,
    Series,
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

NO_PART: dict[str, Any] = {"type": "This must be a JSON object."}

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


def _part(name: str, **parts: Field[Any]) -> Nested:
    """An object within the facts."""
    return Nested(Form.from_dict(dict(parts), name=name), error_messages=NO_PART)


def _gravity() -> Whole:
    return Whole(9000, 13_000, "ten thousandths of specific gravity")


ADDED = ("primings", "auxiliary_alginate", "auxiliary_silica", "isinglass", "hops")
DOSE: dict[str, Field[Any]] = {
    "what": Choice(ADDED, required=True),
    "amount_ml": Whole(0, LARGEST_ML, "mL"),
    "amount_g": Whole(0, 100_000, "g"),
    "lot": Id(),
}
SAMPLE: dict[str, Field[Any]] = {
    "isinglass_centipt": Whole(0, 10_000, "hundredths of a pint per barrel", required=True),
    "auxiliary_centipt": Whole(0, 10_000, "hundredths of a pint per barrel", required=True),
    "clarity": List(
        _part(
            "Clarity",
            after_min=Whole(0, 100_000, "minutes", required=True),
            score_tenths=Whole(0, 50, "tenths", required=True),
        ),
        required=True,
        validate=Length(max=50),
    ),
    "resettled_tenths": List(Whole(0, 50, "tenths"), required=True, validate=Length(max=50)),
    "sediment_ul": Whole(0, 10_000_000, "µL", required=True, allow_none=True),
}

FACTS: dict[str, dict[str, Field[Any]]] = {
    "registered": {
        "kind": Choice(CONTAINER_KINDS, required=True),
        "capacity_ml": Whole(1, 4 * LARGEST_ML, "mL", required=True),
        "tare_g": Whole(1, 1_000_000, "g"),
        "owner": Words(60),
        "place": _place(),
        "inside": _part(
            "Inside",
            bung_diameter_mm=Whole(1, 2000, "mm", required=True),
            head_diameter_mm=Whole(1, 2000, "mm", required=True),
            length_mm=Whole(1, 3000, "mm", required=True),
        ),
        "limit_millibar": Whole(1, 100_000, "mbar above the atmosphere"),
    },
    "washed": {"with": Words(60)},
    "inspected": {"passed": YesNo(required=True), "why": _why()},
    "filled": {
        "gyle": Id(required=True),
        "volume_ml": Whole(1, 5 * LARGEST_ML, "mL", required=True),
        "best_before": Day(required=True, allow_none=True),
        "place": _place(),
        "doses": List(_part("Dose", **DOSE), validate=Length(max=20)),
    },
    "dosed": DOSE,
    "moved": {"place": _place(required=True)},
    "stillaged": {"place": _place()},
    "vented": {"spile": Choice(("hard", "soft"), required=True)},
    "tapped": {},
    "stooped": {},
    "dipped": {
        "left_ml": Whole(0, 5 * LARGEST_ML, "mL", required=True),
        "wet_mm": Whole(0, 2000, "mm"),
    },
    "planned": {"sale_at": Instant(required=True, allow_none=True)},
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
        "target_co2_centivols": Whole(0, 600, "hundredths of a volume"),
        "priming_sugar": Choice(("none", *figure("priming_sugars"), "malt_extract")),
        "priming_yield": Choice(("full", "balling")),
        "syrup_g_per_l": Whole(1, 1500, "g/L"),
        "auxiliary": Choice(("none", "auxiliary_alginate", "auxiliary_silica")),
        "auxiliary_ml_per_hl": Whole(0, 5000, "mL/hL"),
        "isinglass_ml_per_hl": Whole(0, 5000, "mL/hL"),
        "hops_g_per_hl": Whole(0, 2000, "g/hL"),
        "limit_gravity_e4": _gravity(),
        "vegan": YesNo(),
        "cereals": List(Choice(figure("label_cereals")), validate=Length(max=10)),
        "milk": YesNo(),
        "retired": YesNo(),
    },
    "gyle": {
        "number": Words(20, least=1),
        "beer": Id(),
        "brewed_on": Day(),
        "volume_ml": Whole(1, 100_000_000, "mL"),
        "loss_ml": Whole(0, 100_000_000, "mL"),
        "original_gravity_e4": _gravity(),
        "present_gravity_e4": _gravity(),
        "highest_temp_decidegc": Whole(-50, 500, "tenths of a degree C"),
        "measured_co2_centivols": Whole(0, 600, "hundredths of a volume"),
        "yeast_thousands_per_ml": Whole(0, 1_000_000, "thousands of cells in a mL"),
        "ph_hundredths": Whole(0, 1400, "hundredths"),
        "fining_temp_decidegc": Whole(-50, 500, "tenths of a degree C"),
        "sulphite_decimg_per_l": Whole(0, 10_000, "tenths of a mg/L"),
        "retired": YesNo(),
    },
    "place": {
        "name": Words(60, least=1),
        "role": Choice(("store", "yard", "stillage", "bar")),
        "temp_decidegc": Whole(-300, 1000, "tenths of a degree C"),
        "retired": YesNo(),
    },
    "customer": {
        "name": Words(60, least=1),
        "contact": Words(120),
        "phone": Words(40),
        "agreed_days": Whole(0, 1000, "days"),
        "delivery_day": Whole(0, 6, "(Monday is 0)"),
        "expected_days": Whole(0, 1000, "days"),
        "retired": YesNo(),
    },
    "chased": {"words": Words(2000), "promised_on": Day(allow_none=True)},
    "temperature": {"series": Series(required=True), "read_from": Words(120)},
    "setting": {"value_thousandths": Whole(-(10**12), 10**12), "retired": YesNo()},
    "lot": {
        "what": Choice(ADDED),
        "name": Words(60, least=1),
        "received_on": Day(),
        "stored_temp_decidegc": Whole(-300, 1000, "tenths of a degree C"),
        "retired": YesNo(),
    },
    "solution": {
        "agent": Choice(("peracetic", "caustic")),
        "name": Words(60, least=1),
        "made_at": Instant(),
        "volume_ml": Whole(1, 100_000_000, "mL"),
        "made_mg_per_l": Whole(1, 1_000_000, "mg/L"),
        "least_mg_per_l": Whole(0, 1_000_000, "mg/L"),
        "most_uses": Whole(1, 10_000),
        "most_hours": Whole(1, 10_000, "hours"),
        "thrown_away": YesNo(),
        "retired": YesNo(),
    },
    "solution_used": {"uses": Whole(1, 1000, required=True)},
    "solution_checked": {"strength_mg_per_l": Whole(0, 1_000_000, "mg/L", required=True)},
    "trial": {
        "gyle": Id(),
        "started_at": Instant(),
        "sample_ml": Whole(1, 10_000, "mL"),
        "samples": List(_part("TrialSample", **SAMPLE), validate=Length(max=200)),
        "retired": YesNo(),
    },
}


def _entry_form(kind: str) -> Form:
    """The form of a whole entry of one kind."""
    facts = Form.from_dict(dict(FACTS[kind]), name=f"FactsOf_{kind}")
    return _form(
        f"EntryOf_{kind}",
        kind=Choice([kind], required=True),
        subject=_subject(kind),
        facts=Nested(facts, required=True, error_messages=NO_FACTS),
    )


def _subject(kind: str) -> Field[Any]:
    """A container goes by its number, a setting by its figure, anything else by an id."""
    if kind in HAPPENING or kind in CORRECTION_KINDS:
        return Number(required=True)
    return Choice(FIGURES, required=True) if kind == "setting" else _place(required=True)


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
