"""Priming syrup: how much of a stated strength, how to make the batch up, and what is left."""

import math
from typing import Any, NamedTuple

from cellarapp.domain.bench.gravity import extract_g_per_l
from cellarapp.domain.bench.sugars import Sugar
from cellarapp.domain.inputs import Asked, whole_in
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Working

SYRUP_FIELDS = ("syrup_gravity", "syrup_g_per_l", "batch_ml")
LARGEST_BATCH_ML = 1_000_000


class Syrup(NamedTuple):
    """Grams of the sugar as weighed in one litre of syrup."""

    sugar_g_per_l: float

    def volume_ml(self, sugar_g: float) -> float:
        """The syrup that carries so much sugar."""
        return sugar_g / self.sugar_g_per_l * 1000


def asked_syrup(work: Working, asked: Asked, sugar: Sugar) -> Syrup | None:
    """The syrup asked for, by its gravity or else its grams in a litre; none for dry sugar."""
    if asked.has("syrup_gravity"):
        dry_g = extract_g_per_l(work, asked.number("syrup_gravity"))
        grams = work.step("Sugar in the syrup = 10 d P / dry part", dry_g / sugar.dry_g, "g/L", 1)
        return Syrup(grams)
    if asked.has("syrup_g_per_l"):
        return Syrup(asked.number("syrup_g_per_l"))
    return None


def batch(work: Working, asked: Asked, syrup: Syrup, needed_ml: int) -> dict[str, Any]:
    """How to make it up: weigh the sugar, dissolve it, make up to the volume.

    The batch asked for must be enough; without one it is the next whole step of the brewery's.
    """
    if asked.has("batch_ml"):
        why = "The batch must be enough for what is to be primed."
        value = asked.inputs["batch_ml"]
        batch_ml = whole_in(
            asked.at + "batch_ml", value, needed_ml, max(needed_ml, LARGEST_BATCH_ML), "mL", why
        )
    else:
        step_ml = work.setting("priming_batch_step_ml")
        batch_ml = math.ceil(half_up(math.ceil(half_up(needed_ml / step_ml, 6)) * step_ml, 6))
    work.caution("boil_priming_syrup")
    return {
        "sugar_g_per_l": half_up(syrup.sugar_g_per_l, 1),
        "needed_ml": needed_ml,
        "batch_ml": batch_ml,
        "batch_sugar_g": half_up(batch_ml * syrup.sugar_g_per_l / 1000, 1),
        "left_ml": batch_ml - needed_ml,
        "left_sugar_g": half_up((batch_ml - needed_ml) * syrup.sugar_g_per_l / 1000, 1),
    }
