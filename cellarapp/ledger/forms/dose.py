"""What may be added to a fill."""

from typing import Any

from marshmallow.fields import Field

from cellarapp.domain.containers import LARGEST_ML
from cellarapp.ledger.fields import Choice, Id, Whole

ADDED = ("primings", "auxiliary_alginate", "auxiliary_silica", "isinglass", "hops")
DOSE: dict[str, Field[Any]] = {
    "what": Choice(ADDED, required=True),
    "amount_ml": Whole(0, LARGEST_ML, "mL"),
    "amount_g": Whole(0, 100_000, "g"),
    "lot": Id(),
}
