"""AGE: how much of its life warm days have cost a beer. Advice: no printed date moves with it."""

import math

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.temperatures import HISTORY_FIELDS, asked_history, pieces
from cellarapp.domain.cellar.times import hours_between, ms_of
from cellarapp.domain.cellar.units import DAY_HOURS
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

TEN_DEGREES = 10
"""By which a Q10 is defined."""
LEAST_APART_C = 1
"""Nearer to each other two trials say nothing."""
LEAST_Q10, MOST_Q10 = 1, 100
"""Beyond these no beer ages."""


def speed(q10: float, temp_c: float, reference_c: float) -> float:
    """AGE-1: how many days at the reference one day at the temperature is worth."""
    return float(q10 ** ((temp_c - reference_c) / TEN_DEGREES))


def ageing(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """AGE-2: days spent against days passed, by where the beer stood and what was read there.

    Asked: from_at, until_at; stays, readings. Twin: static/src/domain/cellar/ageing.ts.
    """
    asked, work = CellarAsked(inputs, "from_at", "until_at", *HISTORY_FIELDS), Working(settings)
    from_at = asked.instant("from_at")
    until_at = asked.instant("until_at", from_at, "Not before it began.")
    q10, reference_c = work.setting("ageing_q10"), work.setting("cellar_temp_c")
    passed = spent = 0.0
    for piece in pieces(work, asked_history(asked), ms_of(from_at), ms_of(until_at)):
        days = hours_between(piece.from_ms, piece.until_ms) / DAY_HOURS
        passed += days
        spent += days * speed(q10, piece.air_c, reference_c)
    work.step("Days passed", passed, "days", 2)
    work.step("Days spent = sum of days x Q10^((T - cellar) / 10)", spent, "days", 2)
    work.caution("ageing_is_advice")
    return work.done(
        {
            "passed_days": half_up(passed, 2),
            "spent_days": half_up(spent, 2),
            "lost_days": half_up(max(0.0, spent - passed), 2),
        }
    )


def q10_between(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """AGE-3: the Q10 that a brewery's own two keeping trials give, to set its own figure by.

    Asked: first_days, first_temp_c, second_days, second_temp_c.
    """
    fields = ("first_days", "first_temp_c", "second_days", "second_temp_c")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    first_days, second_days = asked.number("first_days"), asked.number("second_days")
    apart = asked.number("second_temp_c") - asked.number("first_temp_c")
    if abs(apart) < LEAST_APART_C:
        raise OutOfRange(
            field="second_temp_c", given=asked.number("second_temp_c"), low=None, high=None,
            unit="°C", why="The two trials lie at least a degree apart.",
        )  # fmt: skip
    q10 = math.pow(first_days / second_days, TEN_DEGREES / apart)
    if not LEAST_Q10 <= q10 <= MOST_Q10:
        raise OutOfRange(
            field="second_days", given=second_days, low=None, high=None, unit="days",
            why="Warmer beer would keep longer, or a hundred times less: a trial is mistaken.",
        )  # fmt: skip
    work.step("Q10 = (first days / second days)^(10 / (second T - first T))", q10, "times", 2)
    return work.done({"q10": half_up(q10, 2)})
