"""COOL: how long a container takes to come to its cellar's temperature.

The way that is left shrinks by the same share every hour (Newton), so the air's own temperature is
never quite reached and never asked for.
"""

import math

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.times import plain
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

BETWEEN_WHY = "A temperature on the way from the beer's to the air's, and not the air's own."


def tau_hours(work: Working, volume_ml: float | None) -> float:
    """COOL-1: hours in which the way shrinks to 37 %: by the cube root of the size, or longer.

    A smaller container is given no less than the keg that was measured: late rather than early.
    """
    tau, of_ml = work.setting("cooling_hours"), work.figure("cooling_hours_of_ml")
    if volume_ml is None or volume_ml <= of_ml:
        return tau
    return float(tau * (volume_ml / of_ml) ** (1 / 3))


def temp_after(from_c: float, air_c: float, hours: float, tau: float) -> float:
    """COOL-2: the beer's temperature after so many hours in that air."""
    return air_c + (from_c - air_c) * math.exp(-hours / tau)


def hours_to(from_c: float, air_c: float, to_c: float, tau: float) -> float:
    """COOL-3: hours until the beer has come that far; the target lies between beer and air.

    Two logarithms, not one of the quotient: that is infinite for a target next to the air's own.
    """
    return tau * (math.log(abs(from_c - air_c)) - math.log(abs(to_c - air_c)))


def cooling(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """COOL-4: hours until beer of one temperature comes to another in air of a third.

    Asked: from_temp_c, air_temp_c, to_temp_c; holds_ml. Twin: static/src/domain/cellar/cooling.ts.
    """
    fields = ("from_temp_c", "air_temp_c", "to_temp_c", "holds_ml")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    from_c, air_c = asked.number("from_temp_c"), asked.number("air_temp_c")
    to_c = asked.number("to_temp_c")
    if not (from_c >= to_c > air_c or from_c <= to_c < air_c):
        raise OutOfRange(
            field="to_temp_c", given=to_c, low=min(from_c, air_c), high=max(from_c, air_c),
            unit="°C", why=BETWEEN_WHY,
        )  # fmt: skip
    tau = tau_hours(work, asked.maybe_number("holds_ml"))
    work.step("tau, for this size", tau, "hours", 2)
    hours = hours_to(from_c, air_c, to_c, tau)
    says = f"t = tau ln(({plain(from_c)} - {plain(air_c)}) / ({plain(to_c)} - {plain(air_c)}))"
    work.step(says, hours, "hours", 1)
    work.caution("cooling_is_estimate")
    return work.done({"hours": half_up(hours, 1)})


def cooled(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """COOL-5: the beer's temperature after so many hours.

    Asked: from_temp_c, air_temp_c, after_hours; holds_ml.
    """
    fields = ("from_temp_c", "air_temp_c", "after_hours", "holds_ml")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    from_c, air_c = asked.number("from_temp_c"), asked.number("air_temp_c")
    tau = tau_hours(work, asked.maybe_number("holds_ml"))
    temp_c = temp_after(from_c, air_c, asked.number("after_hours"), tau)
    work.step("T = air + (from - air) e^(-t / tau)", temp_c, "°C", 2)
    work.caution("cooling_is_estimate")
    return work.done({"temp_c": half_up(temp_c, 2)})
