"""The beer at fining: yeast, pH and temperature against their windows; sulphite carried in."""

from typing import Any

from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

CONDITION_CAUTIONS = {
    "yeast_million_per_ml": {"below": "conditioning_at_risk", "above": "fining_at_risk"},
    "ph": {"below": "ph_outside", "above": "ph_outside"},
    "temp_c": {"below": "fining_cold", "above": "fining_warm"},
}
MOST_ADDITIONS = 20


def verdict(work: Working, name: str, value: float, window: dict[str, float]) -> str:
    """Inside, below or above the window, either end of which is inside."""
    side = "inside"
    if value < window["low"]:
        side = "below"
    elif value > window["high"]:
        side = "above"
    if side != "inside":
        work.caution(CONDITION_CAUTIONS[name][side])
    return side


def finings_conditions(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-4: each measured value against its window; null for what was not measured.

    Asked: yeast_million_per_ml, ph, fining_temp_c, at least one of them; brand_ph, the pH that
    this beer usually has.
    """
    fields = {"yeast_million_per_ml": "yeast_million_per_ml", "ph": "ph", "temp_c": "fining_temp_c"}
    asked, work = Asked(inputs, *fields.values(), "brand_ph"), Working(settings)
    if not any(asked.has(field) for field in fields.values()):
        asked.number("yeast_million_per_ml")
    windows = work.figure("fining_windows")
    result: dict[str, Any] = {
        name: verdict(work, name, asked.number(field), windows[name]) if asked.has(field) else None
        for name, field in fields.items()
    }
    result["brand_ph"] = None
    if asked.has("brand_ph"):
        off = asked.number("ph") - asked.number("brand_ph")
        work.step("pH away from the beer's own", off, "pH", 2)
        unlike = half_up(abs(off), 6) > work.figure("brand_ph_spread")
        result["brand_ph"] = "unlike" if unlike else "like"
        if unlike:
            work.caution("ph_unlike_brand")
    return work.done(result)


def sulphite(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-5: sulphite that finings carry in, on top of the beer's own, against declaration.

    Asked: beer_so2_mg_per_l, if measured; additions, each with product, ml_per_l, and so2_mg_per_l
    from its sheet (else the upper published value). The total is what the law looks at; where the
    beer's own is not known there is none, and what is carried in is declared only by itself.
    """
    asked, work = Asked(inputs, "beer_so2_mg_per_l", "additions"), Working(settings)
    own = asked.number("beer_so2_mg_per_l") if asked.has("beer_so2_mg_per_l") else None
    carried = 0.0
    published = work.figure("finings_so2_mg_per_l")
    for index, row in enumerate(asked.parts("additions", MOST_ADDITIONS, "additions")):
        part = Asked(row, "product", "ml_per_l", "so2_mg_per_l", at=f"additions[{index}].")
        product = part.choice("product", list(published), "Isinglass, or auxiliary finings.")
        ml_per_l, strength = part.number("ml_per_l"), published[product]
        if part.has("so2_mg_per_l"):
            strength = part.number("so2_mg_per_l")
        carried += ml_per_l * strength / 1000
    work.step("Carried in = sum of rate x SO2 in the finings / 1000", carried, "mg/L", 2)
    if own is None:
        work.caution("beer_sulphite_not_known")
    else:
        work.step("Total = the beer's own + carried in", own + carried, "mg/L", 2)
    total = carried if own is None else own + carried
    declare = half_up(total, 6) > work.figure("sulphite_declared_above_mg_per_l")
    if declare:
        work.caution("declare_sulphites")
    if half_up(total, 6) >= work.figure("sulphite_beer_most_mg_per_l"):
        work.caution("sulphite_high")
    return work.done(
        {
            "carried_in_mg_per_l": half_up(carried, 2),
            "total_mg_per_l": None if own is None else half_up(total, 2),
            "declare": declare,
        }
    )
