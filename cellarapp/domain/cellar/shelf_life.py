"""SHELF: how long a beer keeps, and what is left of that when it is delivered.

Printed dates are days on London's calendar and are counted in days, never in months.
"""

from cellarapp.domain.calendar import add_days, days_between
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.days import window_days
from cellarapp.domain.cellar.times import say_day
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Worked, Working

COUNTED_FROM = ("racking", "relabelling", "despatch")
COUNTED_FROM_WHY = "Brewers differ in where the days begin; say which it is."
LIFE_ON_DELIVERY = {"cask": "life_on_delivery_cask_days", "keg": "life_on_delivery_keg_days"}


def best_before(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """SHELF-2: the day to which a beer keeps, counted from racking unless said otherwise.

    Asked: from_on; counted_from, shape, abv_tenths and window_days where they are known.
    Twin: static/src/domain/cellar/shelf_life.ts.
    """
    asked = CellarAsked(inputs, "from_on", "counted_from", "shape", "abv_tenths", "window_days")
    work = Working(settings)
    from_on = asked.day("from_on")
    counted_from = "racking"
    if asked.has("counted_from"):
        counted_from = asked.choice("counted_from", COUNTED_FROM, COUNTED_FROM_WHY)
    abv_tenths, own = asked.maybe_whole("abv_tenths"), asked.maybe_whole("window_days")
    days = window_days(work, asked.shape() if asked.has("shape") else None, abv_tenths, own)
    best_before_on = add_days(from_on, days)
    says = f"Best before = {counted_from} {say_day(from_on)} + window: {say_day(best_before_on)}"
    work.step(says, days, "days", 0)
    work.caution("best_before_is_no_use_by")
    return work.done(
        {
            "best_before_on": best_before_on,
            "window_days": days,
            "from_on": from_on,
            "counted_from": counted_from,
        }
    )


def life_left(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """SHELF-3: days left on the day of delivery, against what customers expect.

    Asked: best_before_on, delivered_on, shape; expected_days where a customer has its own.
    """
    fields = ("best_before_on", "delivered_on", "shape", "expected_days")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    best_before_on, shape = asked.day("best_before_on"), asked.shape()
    left = days_between(asked.day("delivered_on"), best_before_on)
    own = asked.maybe_whole("expected_days")
    expected = int(work.setting(LIFE_ON_DELIVERY[shape])) if own is None else own
    work.step("Days left = best before - delivery", left, "days", 0)
    work.step("Expected on delivery", expected, "days", 0)
    if left < expected:
        work.caution("short_life_on_delivery")
    return work.done(
        {
            "left_days": left,
            "expected_days": expected,
            "short_by_days": max(0, expected - left),
            "deliver_by_on": add_days(best_before_on, -expected),
        }
    )
