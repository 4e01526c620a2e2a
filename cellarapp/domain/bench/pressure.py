"""Pressure in sealed containers, and the pressure that carbonates a keg."""

import math

from cellarapp.domain.bench.units import ATMOSPHERE_BAR, PSI_BAR, fahrenheit, kelvin
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

SEALED_FIELDS = ("cellar_temp_c", "dray_temp_c", "limit_bar")


def sealed_bar(work: Working, total_vol: float, temp_c: float, says: str) -> float:
    """Pressure above atmosphere at which beer holds so much CO2, by Henry's law.

    No headspace is counted, so a full container is meant. Never below nought.
    """
    henry, mass_g = work.figure("henry_co2"), work.figure("molar_masses_g")["co2"]
    by_warmth = math.exp(henry["slope_k"] * (1 / kelvin(temp_c) - 1 / henry["at_k"]))
    g_per_l_per_bar = henry["mol_per_m3_pa"] * by_warmth * mass_g * 100
    grams = total_vol * work.figure("co2_g_per_l_per_vol")
    return work.step(says, max(0.0, grams / g_per_l_per_bar - ATMOSPHERE_BAR), "bar", 2)


def stop_bar(work: Working, asked: Asked) -> float:
    """The pressure never to be passed: the marked limit, and the general stop in any case."""
    stop = float(work.figure("pressure_stop_bar"))
    if asked.has("limit_bar"):
        return min(stop, asked.number("limit_bar"))
    work.caution("limit_not_known")
    return stop


def warn_of(work: Working, most_bar: float, stop: float) -> None:
    """Warns before it is dangerous, and says so when it is."""
    share = work.setting("pressure_warn_pct_of_limit") / 100
    if most_bar >= stop:
        work.caution("pressure_at_limit")
    elif most_bar >= min(work.setting("pressure_warn_bar"), share * stop):
        work.caution("pressure_high")


def asked_sealed(work: Working, asked: Asked, total_vol: float) -> dict[str, float]:
    """Pressure in the cellar and on a warm dray, with the warnings that go with them."""
    cellar_c = asked.number("cellar_temp_c")
    given = asked.has("dray_temp_c")
    dray_c = asked.number("dray_temp_c") if given else work.setting("warm_dray_temp_c")
    cellar = sealed_bar(work, total_vol, cellar_c, "Sealed, cellar: c / (H M) - 1 atm")
    dray = sealed_bar(work, total_vol, dray_c, "Sealed, warm dray: c / (H M) - 1 atm")
    work.caution("sealed_pressure_is_estimate")
    if cellar_c > work.figure("vigorous_secondary_above_c"):
        work.caution("secondary_too_warm")
    warn_of(work, max(cellar, dray), stop_bar(work, asked))
    return {
        "cellar_bar": half_up(cellar, 2),
        "dray_bar": half_up(dray, 2),
        "dray_temp_c": half_up(dray_c, 1),
    }


def sealed_pressure(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """PRESS-1: pressure to be expected in a sealed, full container.

    Asked: total_vol, cellar_temp_c; dray_temp_c, else the brewery's; limit_bar as marked, if any.
    """
    asked, work = Asked(inputs, "total_vol", *SEALED_FIELDS), Working(settings)
    return work.done(dict(asked_sealed(work, asked, asked.number("total_vol"))))


def keg_bar(work: Working, temp_c: float, vol: float) -> float:
    """Pressure above atmosphere that carbonates beer at rest, by the published chart."""
    k, f = work.figure("keg_pressure_curve"), fahrenheit(temp_c)
    psi = k["one"] + k["f"] * f + k["ff"] * f**2 + k["fv"] * f * vol + k["v"] * vol
    psi += k["vv"] * vol**2
    says = "Pressure = a + b F + c F² + d F V + e V + f V², in psi"
    return work.step(says, psi, "psi", 2) * PSI_BAR


def keg_pressure(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """PRESS-2: pressure that brings a keg to so many volumes of CO2.

    None is named when it would be above the container's marked limit. Asked: keg_temp_c, keg_vol,
    limit_bar as marked, if any.
    """
    asked, work = Asked(inputs, "keg_temp_c", "keg_vol", "limit_bar"), Working(settings)
    bar = keg_bar(work, asked.number("keg_temp_c"), asked.number("keg_vol"))
    bar = work.step("The same in bar", max(0.0, bar), "bar", 2)
    stop = stop_bar(work, asked)
    work.caution("regulator_and_relief")
    warn_of(work, bar, stop)
    allowed = half_up(bar, 2) <= stop
    return work.done(
        {
            "pressure_bar": half_up(bar, 2) if allowed else None,
            "pressure_psi": half_up(bar / PSI_BAR, 1) if allowed else None,
            "limit_bar": stop,
        }
    )
