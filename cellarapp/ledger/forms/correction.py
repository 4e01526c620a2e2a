"""The facts of what puts another entry right."""

from marshmallow.fields import List

from cellarapp.ledger.fields import ID_PATTERN, Id, Number, Pattern, Way
from cellarapp.ledger.forms.form import Facts

CORRECTION: Facts = {
    "voided": {"target": Id(required=True)},
    "renumbered": {"target": Id(required=True), "to": Number(required=True)},
    "settled": {
        "query": Pattern(
            f"[a-z_]{{1,40}}(?::{ID_PATTERN}){{1,9}}", "the id of a query", required=True
        ),
        "way": Way(required=True),
        "replaces": List(Id()),
    },
}
