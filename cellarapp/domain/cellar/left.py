"""LEFT: what is left in a cask, from a dip or from its weight; how much of that can be drunk."""

from typing import Any

from cellarapp.domain.bench.gravity import beer_g_per_ml
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.gauging import MEASURES, asked_inside
from cellarapp.domain.cellar.sediment import pints
from cellarapp.domain.errors import NotAmong
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs, number_in
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

LAID = ("lying", "standing")
LAID_WHY = "A cask is dipped at the bung lying, or along its length standing on its head."
TILTED_WHY = (
    "A dip at the bung holds only while the cask lies level: once it is tilted, weigh it or count "
    "the pints."
)


def drinkable(work: Working, left_ml: float, sediment_ml: float | None) -> dict[str, Any]:
    """LEFT-1: what is left, and without the sediment that stays behind."""
    left = half_up_whole(max(0.0, left_ml))
    can = max(0, left - half_up_whole(sediment_ml or 0))
    work.step("Drinkable = left - sediment", can, "mL", 0)
    return {
        "left_ml": left,
        "left_pints": pints(left),
        "drinkable_ml": can,
        "drinkable_pints": pints(can),
    }


def left_by_dip(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LEFT-2: litres and pints from the wet part of a dip rod.

    Integrated segments of the cask's own inside measures, calibrated to what it holds where that
    is known. Refused once the cask is tilted. Asked: wet_mm, tilted; laid, the three measures,
    holds_ml (alone: a model of that size), sediment_ml. Twin: static/src/domain/cellar/left.ts.
    """
    fields = ("wet_mm", "tilted", "laid", "holds_ml", "sediment_ml", *MEASURES)
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    laid = asked.choice("laid", LAID, LAID_WHY) if asked.has("laid") else LAID[0]
    if asked.flag("tilted", TILTED_WHY):
        raise NotAmong(field="tilted", given=True, choices=[False], why=TILTED_WHY)
    inside, scale = asked_inside(work, asked)
    deepest = inside.bung_mm if laid == "lying" else inside.length_mm
    why = "No deeper than the cask is inside."
    wet_mm = number_in("wet_mm", asked.number("wet_mm"), 0, half_up(deepest, 1), "mm", why)
    wet_mm = min(wet_mm, deepest)
    full_ml = inside.full_ml() * scale
    work.step("Full = pi L (2 R² + r²) / 3", full_ml, "mL", 0)
    if laid == "lying":
        left_ml = inside.lying_ml(wet_mm) * scale
        work.step("Left = sum of circular segments along the cask", left_ml, "mL", 0)
        work.caution("dip_needs_level_cask")
    else:
        left_ml = inside.standing_ml(wet_mm) * scale
        work.step(
            "Left = pi (R² h - (R² - r²) ((h - L/2)³ + (L/2)³) / (3 (L/2)²))", left_ml, "mL", 0
        )
    return work.done(
        {
            **drinkable(work, left_ml, asked.maybe_number("sediment_ml")),
            "full_ml": half_up_whole(full_ml),
        }
    )


def left_by_weight(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LEFT-3: litres and pints from the weight of that container and its own tare.

    Asked: gross_g, tare_g, present_gravity, beer_temp_c; sediment_ml.
    """
    fields = ("gross_g", "tare_g", "present_gravity", "beer_temp_c", "sediment_ml")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    gross_g = asked.number("gross_g")
    why = "A container weighs no less than it does empty."
    tare_g = number_in("tare_g", asked.number("tare_g"), 0, gross_g, "g", why)
    density = beer_g_per_ml(work, asked.number("present_gravity"), asked.number("beer_temp_c"))
    work.step("Density of beer = gravity x density of water", density, "g/mL", 5)
    left_ml = work.step("Left = (gross - tare) / density", (gross_g - tare_g) / density, "mL", 0)
    work.caution("weighed_in_air")
    return work.done(drinkable(work, left_ml, asked.maybe_number("sediment_ml")))
