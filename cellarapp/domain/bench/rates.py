"""Finings and cask hops: a rate as the trade writes it, and the dose for each container."""

from cellarapp.domain.bench.fillings import asked_fillings, in_all
from cellarapp.domain.bench.units import OUNCE_G, barrel_ml, ml_per_l_from_pints
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, number_in
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

FININGS_UNITS = ("pints_per_barrel", "ml_per_l", "ml_per_hl", "ml_per_container")
HOPS_UNITS = ("oz_per_barrel", "g_per_hl", "g_per_container")
UNIT_WHY = "How the rate is written."
MOST_ML_PER_L = 50
MOST_G_PER_HL = 2000


def asked_per_l(asked: Asked, units: tuple[str, ...]) -> float:
    """The rate asked about, in mL or g for a litre; for a container its volume is asked too."""
    rate, unit = asked.number("rate"), asked.choice("rate_unit", units, UNIT_WHY)
    if unit == "pints_per_barrel":
        return ml_per_l_from_pints(rate)
    if unit == "oz_per_barrel":
        return rate * OUNCE_G * 1000 / barrel_ml()
    if unit in ("ml_per_container", "g_per_container"):
        return rate * 1000 / asked.whole("per_ml")
    return rate / 100 if unit in ("ml_per_hl", "g_per_hl") else rate


def finings_dose(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-1: finings for each container, to the mL, and in all, with the rate in every usual unit.

    Asked: product, rate, rate_unit, per_ml for a rate by container, containers.
    """
    asked = Asked(inputs, "product", "rate", "rate_unit", "per_ml", "containers")
    work = Working(settings)
    table = work.figure("finings_rates")
    product = asked.choice("product", list(table), "Isinglass, or auxiliary finings.")
    why = "More than any finings are used at."
    per_l = number_in("rate", asked_per_l(asked, FININGS_UNITS), 0, MOST_ML_PER_L, "mL/L", why)
    work.step("Rate for a litre; 1 pint per barrel = 1000 / 288 mL/L", per_l, "mL/L", 3)
    pints = half_up(per_l / ml_per_l_from_pints(1), 3)
    if pints < table[product]["low"] or pints > table[product]["high"]:
        work.caution("finings_rate_unusual")
    fillings = asked_fillings(asked)
    doses = [half_up_whole(per_l * filling.volume_ml / 1000) for filling in fillings]
    total = int(work.step("In all = sum of count x dose", in_all(fillings, doses), "mL", 0))
    return work.done(
        {
            "ml_per_l": half_up(per_l, 3),
            "ml_per_hl": half_up(per_l * 100, 1),
            "pints_per_barrel": half_up(pints, 2),
            "containers": [
                {**filling.row(), "dose_ml": dose}
                for filling, dose in zip(fillings, doses, strict=True)
            ],
            "total_ml": total,
        }
    )


def cask_hops(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-2: hops for each cask and in all. Asked as finings_dose is, without a product."""
    asked = Asked(inputs, "rate", "rate_unit", "per_ml", "containers")
    work = Working(settings)
    why = "More than any cask is hopped with."
    per_l = asked_per_l(asked, HOPS_UNITS)
    per_hl = number_in("rate", per_l * 100, 0, MOST_G_PER_HL, "g/hL", why)
    work.step("Rate for a hectolitre; 1 oz per barrel = 17.32 g/hL", per_hl, "g/hL", 2)
    ounces = half_up(per_l * barrel_ml() / 1000 / OUNCE_G, 3)
    _warn_of_hops(work, per_hl, ounces)
    fillings = asked_fillings(asked)
    doses = [half_up(per_l * filling.volume_ml / 1000, 1) for filling in fillings]
    total = work.step("In all = sum of count x dose", in_all(fillings, doses), "g", 1)
    return work.done(
        {
            "g_per_hl": half_up(per_hl, 2),
            "oz_per_barrel": half_up(ounces, 2),
            "containers": [
                {**filling.row(), "dose_g": dose}
                for filling, dose in zip(fillings, doses, strict=True)
            ],
            "total_g": total,
        }
    )


def _warn_of_hops(work: Working, per_hl: float, ounces: float) -> None:
    usual = work.figure("cask_hops")
    if per_hl > 0:
        work.caution("hops_may_add_co2")
    if half_up(per_hl, 3) >= work.setting("cask_hops_clog_g_per_hl"):
        work.caution("hops_clog_tap")
    elif ounces > usual["high"]:
        work.caution("hops_beyond_published")
    elif ounces and (ounces > usual["usual_high"] or ounces < usual["usual_low"]):
        work.caution("hops_rate_unusual")
