"""MARK: the date as the law of Great Britain writes it.

How long a beer keeps decides how much of the date must be shown; more is always allowed. A cask
should show day, month and year. Where a month or a year stands alone it promises its last day, so
the last one that ends no later than the date itself is named.
"""

from typing import Any

from cellarapp.domain.calendar import add_days, days_between
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.times import MONTHS, day_and_month
from cellarapp.domain.cellar.units import YEAR_MONTHS
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Worked, Working

FORMS = ("day_month_year", "day_month", "month_year", "year")
"""From the fullest to the barest."""
FORM_WHY = "The date shows day and month, month and year, or the year; barer than its class is not."
ENOUGH = {"day_month": 2, "month_year": 3, "year": 4}
"""How many of the forms each class of length may use."""


def month_start(day: str, months: int) -> str:
    """The first of the month that many months after the day's own."""
    ahead = int(day[:4]) * YEAR_MONTHS + int(day[5:7]) - 1 + months
    return f"{ahead // YEAR_MONTHS:04d}-{ahead % YEAR_MONTHS + 1:02d}-01"


def month_end(day: str) -> str:
    """The last day of its month."""
    return add_days(month_start(day, 1), -1)


def months_after(day: str, months: int) -> str:
    """The same day of a later month, or its last where it has no such day."""
    last = month_end(month_start(day, months))
    return f"{last[:8]}{min(day[8:], last[8:])}"


def length_class(work: Working, packed_on: str, best_before_on: str) -> str:
    """MARK-1: the barest form that is enough: up to 3 months, up to 18 months, or beyond."""
    months = work.figure("date_mark_months")
    if best_before_on <= months_after(packed_on, months["day_month_up_to"]):
        return "day_month"
    if best_before_on <= months_after(packed_on, months["month_year_up_to"]):
        return "month_year"
    return "year"


def named_until(form: str, best_before_on: str) -> str:
    """MARK-2: the day that the form promises: never later than the date itself."""
    if form == "month_year":
        end = month_end(best_before_on)
        return end if end == best_before_on else add_days(f"{best_before_on[:7]}-01", -1)
    if form == "year":
        year = int(best_before_on[:4])
        whole_year = best_before_on.endswith("-12-31")
        return f"{year if whole_year else year - 1:04d}-12-31"
    return best_before_on


def words_of(form: str, until: str) -> str:
    """The words for a form that promises that day."""
    if form == "day_month_year":
        return f"Best before {day_and_month(until)} {until[:4]}"
    if form == "day_month":
        return f"Best before {day_and_month(until)}"
    if form == "month_year":
        return f"Best before end {MONTHS[int(until[5:7]) - 1]} {until[:4]}"
    return f"Best before end {until[:4]}"


def _own_end(form: str, best_before_on: str) -> str:
    if form == "month_year":
        return month_end(best_before_on)
    return f"{best_before_on[:4]}-12-31" if form == "year" else best_before_on


def _form(form: str, best_before_on: str) -> dict[str, Any]:
    until = named_until(form, best_before_on)
    return {
        "form": form,
        "words": words_of(form, until),
        "promises_until_on": until,
        "gives_up_days": days_between(until, best_before_on),
        "itself_would_promise_more_days": days_between(
            best_before_on, _own_end(form, best_before_on)
        ),
    }


def date_mark(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """MARK-3: whether a date is needed, the forms that may be used, and the words of one of them.

    Asked: packed_on, best_before_on, abv_tenths; form, else the fullest. Twin: date_mark.ts.
    """
    asked = CellarAsked(inputs, "packed_on", "best_before_on", "abv_tenths", "form")
    work = Working(settings)
    packed_on = asked.day("packed_on")
    best_before_on = asked.day("best_before_on", packed_on, "Not before it was packed.")
    strength = asked.whole("abv_tenths")
    needed = strength < work.setting("date_mark_exempt_from_abv_tenths")
    enough = length_class(work, packed_on, best_before_on)
    allowed = FORMS[: ENOUGH[enough]]
    form = asked.choice("form", allowed, FORM_WHY) if asked.has("form") else allowed[0]
    kept = days_between(packed_on, best_before_on)
    work.step("Keeps = best before - packed", kept, "days", 0)
    forms = [_form(each, best_before_on) for each in allowed]
    chosen = next(each for each in forms if each["form"] == form)
    if form in ("month_year", "year"):
        work.step("Given up = date - last day promised", chosen["gives_up_days"], "days", 0)
        work.caution("month_alone_promises_more")
    work.caution("check_food_law")
    return work.done({**chosen, "needed": needed, "enough": enough, "allowed": forms})
