"""The facts of what happens to a container."""

from marshmallow.fields import List
from marshmallow.validate import Length

from cellarapp.domain.containers import ANY_BREWERY, CONTAINER_KINDS, LARGEST_ML, most_that_fits_ml
from cellarapp.ledger.fields import Choice, Day, Id, Instant, Whole, Words, YesNo
from cellarapp.ledger.forms.dose import DOSE
from cellarapp.ledger.forms.form import Facts, part, place, why

MOST_ML = most_that_fits_ml(None, ANY_BREWERY)

HAPPENING: Facts = {
    "registered": {
        "kind": Choice(CONTAINER_KINDS, required=True),
        "capacity_ml": Whole(1, 4 * LARGEST_ML, "mL", required=True),
        "tare_g": Whole(1, 1_000_000, "g"),
        "owner": Words(60),
        "hire": part(
            "Hire",
            pence_a_day=Whole(0, 100_000, "pence a day", required=True),
            due_on=Day(required=True),
        ),
        "place": place(),
        "inside": part(
            "Inside",
            bung_diameter_mm=Whole(1, 2000, "mm", required=True),
            head_diameter_mm=Whole(1, 2000, "mm", required=True),
            length_mm=Whole(1, 3000, "mm", required=True),
        ),
        "limit_millibar": Whole(1, 100_000, "mbar above the atmosphere"),
    },
    "washed": {"with": Words(60)},
    "inspected": {"passed": YesNo(required=True), "why": why()},
    "filled": {
        "gyle": Id(required=True),
        "volume_ml": Whole(1, 5 * LARGEST_ML, "mL", required=True),
        "best_before": Day(required=True, allow_none=True),
        "place": place(),
        "doses": List(part("Dose", **DOSE), validate=Length(max=20)),
    },
    "dosed": DOSE,
    "moved": {"place": place(required=True)},
    "stillaged": {"place": place()},
    "vented": {"spile": Choice(("hard", "soft"), required=True)},
    "tapped": {},
    "stooped": {},
    "dipped": {
        "left_ml": Whole(0, 5 * LARGEST_ML, "mL", required=True),
        "wet_mm": Whole(0, 2000, "mm"),
    },
    "checked": {
        "temp_decidegc": Whole(-300, 1000, "tenths of a degree C"),
        "clarity": Words(60),
        "taste": Words(500),
        "words": Words(2000),
    },
    "planned": {"sale_at": Instant(required=True, allow_none=True)},
    "emptied": {"why": why()},
    "sent": {
        "customer": Id(required=True),
        "due_on": Day(required=True, allow_none=True),
        "on_record_since": Day(),
    },
    "returned": {"ullage_ml": Whole(0, MOST_ML, "mL"), "place": place(), "customer": Id()},
    "set_aside": {"why": why(required=True)},
    "released": {},
    "missing": {"why": why()},
    "found": {"place": place()},
    "scrapped": {"why": why()},
    "noted": {"words": Words(2000, required=True)},
    "reported": {
        "where": Words(200, least=1, required=True),
        "words": Words(1000),
        "name": Words(60),
        "phone": Words(40),
    },
    "told": {
        "customer": Id(required=True),
        "says": Choice(("empty", "not_here", "here"), required=True),
    },
    "forgotten": {"target": Id(required=True)},
}
