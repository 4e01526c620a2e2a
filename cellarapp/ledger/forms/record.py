"""The facts of what sets a record, and of what happens to the thing it is about."""

from typing import Any

from marshmallow.fields import Field, List, Nested
from marshmallow.validate import Length

from cellarapp.domain.containers import CONTAINER_KINDS, LARGEST_ML
from cellarapp.domain.entries import RECORD_KINDS
from cellarapp.domain.figures import figure
from cellarapp.ledger.fields import (
    Choice,
    Day,
    Id,
    Instant,
    Number,
    Pattern,
    Series,
    Whole,
    Words,
    YesNo,
)
from cellarapp.ledger.forms.dose import ADDED
from cellarapp.ledger.forms.form import NO_PART, Facts, Form, part

SAMPLE: dict[str, Field[Any]] = {
    "isinglass_centipt": Whole(0, 10_000, "hundredths of a pint per barrel", required=True),
    "auxiliary_centipt": Whole(0, 10_000, "hundredths of a pint per barrel", required=True),
}
MOST_JARS = 200
JAR_READ: dict[str, Field[Any]] = {
    "jar": Whole(1, MOST_JARS, "(jars in a row)", required=True),
    "after_min": Whole(0, 100_000, "minutes"),
    "clarity_tenths": Whole(10, 50, "tenths"),
    "resettled_tenths": Whole(10, 50, "tenths"),
    "sediment_ul": Whole(0, 10_000_000, "µL"),
}

DROP_LINE: dict[str, Field[Any]] = {
    "number": Number(required=True),
    "kind": Choice(CONTAINER_KINDS, required=True),
    "beer": Words(60, required=True),
    "abv_tenths": Whole(0, 300, "tenths of a per cent by volume", required=True, allow_none=True),
    "lot": Words(40, required=True),
    "best_before": Day(required=True, allow_none=True),
    "volume_ml": Whole(0, 5 * LARGEST_ML, "mL", required=True),
    "contains": Words(300, required=True),
}
DROP_ASKED: dict[str, Field[Any]] = {
    "beer": Id(required=True),
    "kind": Choice(CONTAINER_KINDS, required=True),
    "count": Whole(1, 99, required=True),
}
MOST_AT_A_DROP = 100


def numbers() -> Any:
    """Containers, by their numbers."""
    return List(Number(), validate=Length(max=MOST_AT_A_DROP))


MAP_POSITION = Form.from_dict(
    {
        "latitude_e6": Whole(-90_000_000, 90_000_000, "millionths of a degree", required=True),
        "longitude_e6": Whole(-180_000_000, 180_000_000, "millionths of a degree", required=True),
    },
    name="MapPosition",
)


DEPOSITS = Form.from_dict(
    {kind: Whole(0, 100_000, "pence") for kind in CONTAINER_KINDS}, name="Deposits"
)


def deposits() -> Nested:
    """What is paid for a container of each kind, in pence."""
    return Nested(DEPOSITS, error_messages=NO_PART)


def map_position() -> Nested:
    """Where something is, on any map."""
    return Nested(MAP_POSITION, error_messages=NO_PART)


def gravity() -> Whole:
    """A gravity, whole in the ledger: 1.0405 is 10405."""
    return Whole(9000, 13_000, "ten thousandths of specific gravity")


RECORD: Facts = {
    "brewery": {
        "name": Words(60, least=1),
        "address": Words(200),
        "phone": Words(40),
        "email": Words(120),
        "web": Pattern(
            r"|https://[a-z0-9.-]+(:[0-9]{1,5})?", "an address such as https://casks.example"
        ),
        "company_prefix": Pattern(r"|\d{4,12}", "a GS1 company prefix of 4 to 12 digits, or empty"),
        "map": map_position(),
        "deposits": deposits(),
    },
    "beer": {
        "name": Words(60, least=1),
        "abv_tenths": Whole(0, 300, "tenths of a per cent by volume"),
        "style": Words(60),
        "conditioning_days": Whole(0, 1000, "days"),
        "best_before_days": Whole(1, 4000, "days"),
        "on_sale_days": Whole(1, 365, "days"),
        "sediment_firkin_ml": Whole(0, 40_915, "mL"),
        "target_co2_centivols": Whole(0, 600, "hundredths of a volume"),
        "priming_sugar": Choice(("none", *figure("priming_sugars"), "malt_extract")),
        "priming_yield": Choice(("full", "balling")),
        "sugar_solids_tenths": Whole(1, 1000, "tenths of a per cent by weight"),
        "sugar_fermentable_tenths": Whole(1, 1000, "tenths of a per cent of the solids"),
        "syrup_gravity_e4": gravity(),
        "syrup_g_per_l": Whole(1, 1500, "g/L"),
        "keg_co2_centivols": Whole(0, 600, "hundredths of a volume"),
        "auxiliary": Choice(("none", "auxiliary_alginate", "auxiliary_silica")),
        "auxiliary_ml_per_hl": Whole(0, 5000, "mL/hL"),
        "isinglass_ml_per_hl": Whole(0, 5000, "mL/hL"),
        "hops_g_per_hl": Whole(0, 2000, "g/hL"),
        "limit_gravity_e4": gravity(),
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
        "original_gravity_e4": gravity(),
        "present_gravity_e4": gravity(),
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
        "email": Words(120),
        "map": map_position(),
        "deposit_pence": Whole(0, 100_000, "pence"),
        "deposits": deposits(),
        "agreed_days": Whole(0, 1000, "days"),
        "delivery_day": Whole(0, 6, "(Monday is 0)"),
        "expected_days": Whole(0, 1000, "days"),
        "retired": YesNo(),
    },
    "chased": {
        "words": Words(2000),
        "outcome": Choice(("spoke", "no_answer", "not_there", "wrote")),
        "promised_on": Day(allow_none=True),
        "ask_again_on": Day(allow_none=True),
    },
    "erased": {"name": YesNo()},
    "linked": {
        "hash": Pattern("[0-9a-f]{64}", "the SHA-256 of a secret, hexadecimal", required=True)
    },
    "unlinked": {},
    "temperature": {"series": Series(required=True), "read_from": Words(120)},
    "setting": {
        "value_millionths": Whole(-(10**15), 10**15),
        "values_millionths": List(Whole(-(10**15), 10**15), validate=Length(max=50)),
        "words": Words(1000),
        "retired": YesNo(),
    },
    "lot": {
        "what": Choice(ADDED),
        "name": Words(60, least=1),
        "received_on": Day(),
        "stored_temp_decidegc": Whole(-300, 1000, "tenths of a degree C"),
        "opened_on": Day(),
        "so2_mg_per_l": Whole(0, 10_000, "mg/L"),
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
    "drop": {
        "customer": Id(),
        "on": Day(),
        "numbers": numbers(),
        "handed_over_at": Instant(),
        "lines": List(part("DropLine", **DROP_LINE), validate=Length(max=MOST_AT_A_DROP)),
        "empties": numbers(),
        "empties_counted": Whole(0, 500),
        "matched": List(Number(), validate=Length(max=500)),
        "count_closed": YesNo(),
        "asked": List(part("DropAsked", **DROP_ASKED), validate=Length(max=MOST_AT_A_DROP)),
        "deposits_taken_pence": Whole(0, 10_000_000, "pence"),
        "deposits_given_back_pence": Whole(0, 10_000_000, "pence"),
        "held_before": Whole(0, 10_000),
        "held_after": Whole(0, 10_000),
        "taken_by": Words(60),
        "signature": Pattern(r"[0-9 ;]{0,12000}", "strokes of whole numbers, at most 12,000 signs"),
        "note": Words(500),
        "retired": YesNo(),
    },
    "trial": {
        "gyle": Id(),
        "auxiliary": Choice(("auxiliary_alginate", "auxiliary_silica")),
        "isinglass_lot": Id(),
        "auxiliary_lot": Id(),
        "auxiliary_at": Instant(),
        "started_at": Instant(),
        "sample_ml": Whole(1, 10_000, "mL"),
        "samples": List(part("TrialSample", **SAMPLE), validate=Length(max=MOST_JARS)),
        "retired": YesNo(),
    },
    "trial_read": {
        "jars": List(part("JarRead", **JAR_READ), required=True, validate=Length(max=MOST_JARS)),
        "instead_of": List(Id(), validate=Length(max=20)),
    },
}

for _kind in RECORD_KINDS:
    for _field in RECORD[_kind].values():
        # Null empties a field again. Text is emptied by "", a list by [], and yes or no is said.
        _field.allow_none = not isinstance(_field, Words | YesNo | List)
