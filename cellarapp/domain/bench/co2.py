"""CO2 in the beer before anything is added: what stayed in it, and what its extract will give."""

from typing import NamedTuple

from cellarapp.domain.bench.gravity import beer_g_per_ml, plato
from cellarapp.domain.bench.units import fahrenheit
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

RESIDUAL_FIELDS = ("highest_temp_c", "measured_vol")
EXTRACT_FIELDS = ("present_gravity", "limit_gravity")


class Sources(NamedTuple):
    """Volumes of CO2 in the beer, and still to come from its own extract."""

    residual_vol: float
    from_extract_vol: float


def residual_vol(work: Working, highest_temp_c: float) -> float:
    """CO2 that stays in beer fermented open, by the highest temperature since.

    Gas lost while warm is not won back on cooling. Twin: static/src/domain/bench/co2.ts.
    """
    curve, temp_f = work.figure("residual_co2_curve"), fahrenheit(highest_temp_c)
    vol = curve["a"] - curve["b"] * temp_f + curve["c"] * temp_f**2
    says = "CO2 left = a - b F + c F², F the highest temperature since fermentation ended"
    return work.step(says, vol, "vol", 3)


def asked_residual_vol(work: Working, asked: Asked) -> float:
    """A measured value where there is one, or what the temperature leaves."""
    if asked.has("measured_vol"):
        measured = asked.number("measured_vol")
        return work.step("CO2 as measured, in place of what is left", measured, "vol", 3)
    work.caution("residual_is_estimate")
    return residual_vol(work, asked.number("highest_temp_c"))


def from_extract_vol(work: Working, present_gravity: float, limit_gravity: float) -> float:
    """CO2 still to come while the beer falls to its attenuation limit; none below the limit."""
    fall_p = plato(work, present_gravity) - plato(work, limit_gravity)
    if fall_p < 0:
        work.caution("below_limit")
        fall_p = 0
    share = work.figure("real_per_apparent_extract")
    density = beer_g_per_ml(work, present_gravity, work.figure("gravity_reference_c"))
    fermented = share * fall_p * 10 * density
    work.step("Extract to ferment = r (P present - P limit) 10 d", fermented, "g/L", 2)
    balling = work.figure("balling")
    grams = fermented * balling["co2_g"] / balling["extract_g"]
    vol = grams / work.figure("co2_g_per_l_per_vol")
    return work.step("CO2 to come = extract x k, k of Balling's balance", vol, "vol", 3)


def asked_from_extract_vol(work: Working, asked: Asked) -> float:
    """None where neither gravity is given; both are needed if one is."""
    if not any(asked.has(field) for field in EXTRACT_FIELDS):
        return 0.0
    present, limit = asked.number("present_gravity"), asked.number("limit_gravity")
    return from_extract_vol(work, present, limit)


def asked_sources(work: Working, asked: Asked) -> Sources:
    """Both, as the rules that build on them ask for them."""
    return Sources(asked_residual_vol(work, asked), asked_from_extract_vol(work, asked))


def co2_in_beer(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """CO2-1: CO2 in the beer now, and what its own extract will still give.

    Asked: highest_temp_c or measured_vol; present_gravity and limit_gravity, or neither.
    """
    asked, work = Asked(inputs, *RESIDUAL_FIELDS, *EXTRACT_FIELDS), Working(settings)
    now, to_come = asked_sources(work, asked)
    grams = work.figure("co2_g_per_l_per_vol")
    return work.done(
        {
            "residual_vol": half_up(now, 3),
            "residual_g_per_l": half_up(now * grams, 2),
            "from_extract_vol": half_up(to_come, 3),
            "total_vol": half_up(now + to_come, 3),
            "total_g_per_l": half_up((now + to_come) * grams, 2),
        }
    )
