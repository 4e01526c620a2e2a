"""Priming sugar for a racking: per container and in all, dry or as syrup, and what follows."""

from typing import Any

from cellarapp.domain.bench.co2 import EXTRACT_FIELDS, RESIDUAL_FIELDS, Sources, asked_sources
from cellarapp.domain.bench.fillings import Filling, asked_fillings, in_all
from cellarapp.domain.bench.pressure import SEALED_FIELDS, asked_sealed
from cellarapp.domain.bench.sugars import (
    SUGAR_FIELDS,
    YIELD_WHY,
    YIELDS,
    asked_sugar,
    co2_per_gram,
    strength_rise_pct,
)
from cellarapp.domain.bench.syrup import SYRUP_FIELDS, Syrup, asked_syrup, batch
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

FIELDS = (
    "target_vol",
    "yield",
    "containers",
    *RESIDUAL_FIELDS,
    *EXTRACT_FIELDS,
    *SUGAR_FIELDS,
    *SYRUP_FIELDS,
    *SEALED_FIELDS,
)


def needed_vol(work: Working, target_vol: float, sources: Sources) -> tuple[float, str | None]:
    """CO2 that sugar has to give, and why none where the beer brings enough by itself."""
    needed = target_vol - sources.residual_vol - sources.from_extract_vol
    work.step("CO2 from sugar = target - left - to come", max(0.0, needed), "vol", 3)
    if needed > 0:
        return needed, None
    if sources.residual_vol >= target_vol:
        return 0.0, "residual"
    work.caution("extract_overshoots")
    return 0.0, "remaining_extract"


def rows(fillings: list[Filling], sugar_g_per_l: float, syrup: Syrup | None) -> list[Any]:
    """The dose for one container of each row."""
    doses = []
    for filling in fillings:
        grams = sugar_g_per_l * filling.volume_ml / 1000
        doses.append(
            {
                **filling.row(),
                "sugar_g": half_up(grams, 1),
                "syrup_ml": half_up_whole(syrup.volume_ml(grams)) if syrup else None,
            }
        )
    return doses


def primings(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """PRIME-1: sugar that brings the beer to its target once it has fermented.

    The volume of primings is inside the fill. Remaining extract counts before primings: where it
    reaches the target alone no sugar is given, and why is said. Twin: bench/primings.ts.
    """
    asked, work = Asked(inputs, *FIELDS), Working(settings)
    target, conversion = asked.number("target_vol"), asked.choice("yield", YIELDS, YIELD_WHY)
    fillings = asked_fillings(asked)
    sources = asked_sources(work, asked)
    needed, why_none = needed_vol(work, target, sources)
    sugar = asked_sugar(work, asked)
    grams = needed * work.figure("co2_g_per_l_per_vol") / co2_per_gram(work, sugar, conversion)
    work.step("Sugar = CO2 from sugar x g/L for one volume / CO2 from 1 g", grams, "g/L", 3)
    syrup = asked_syrup(work, asked, sugar)
    doses = rows(fillings, grams, syrup)
    if syrup:
        needed_ml = int(in_all(fillings, [row["syrup_ml"] for row in doses]))
        made = batch(work, asked, syrup, needed_ml)
        total_g = half_up(needed_ml * syrup.sugar_g_per_l / 1000, 1)
    else:
        made, total_g = None, in_all(fillings, [row["sugar_g"] for row in doses])
    work.step("For the whole racking = sum of count x dose", total_g, "g", 1)
    final_vol = sources.residual_vol + sources.from_extract_vol + needed
    return work.done(
        {
            "residual_vol": half_up(sources.residual_vol, 3),
            "from_extract_vol": half_up(sources.from_extract_vol, 3),
            "needed_vol": half_up(needed, 3),
            "no_sugar_because": why_none,
            "yield": "balling" if sugar.name == "malt_extract" else conversion,
            "sugar_g_per_l": half_up(grams, 3),
            "containers": doses,
            "total_sugar_g": total_g,
            "syrup": made,
            "strength_rise_pct": half_up(strength_rise_pct(work, sugar, grams), 2),
            "dilution_pct": half_up(syrup.volume_ml(grams) / 10, 2) if syrup else 0.0,
            "final_vol": half_up(final_vol, 3),
            "pressure": asked_sealed(work, asked, final_vol),
        }
    )
