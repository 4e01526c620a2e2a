"""OUT: from dips and time, when a cask runs out, and when the next one must be vented for that."""

from typing import Any, NamedTuple

from cellarapp.domain.bench.units import pint_ml
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.open_hours import OpenHours, asked_open_hours
from cellarapp.domain.cellar.sediment import pints
from cellarapp.domain.cellar.times import at_ms, hours_between, hours_ms_down, ms_of, say_at
from cellarapp.domain.cellar.timing import Limits, gaps_of, latest
from cellarapp.domain.cellar.units import DAY_HOURS, HOUR_MS
from cellarapp.domain.cellar.working_day import asked_working_day
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

MOST_DIPS = 500
IN_ORDER = "After the dip above it."
FALLS = "Beer does not come back into a cask: no more than at the dip above it."
NEXT_FINED_WHY = "Whether the next cask was fined."


class Dip(NamedTuple):
    """What was left at a time."""

    at: int
    left_ml: float


def asked_dips(asked: CellarAsked) -> list[Dip]:
    """At least two dips, in the order of time, none above the one before."""
    dips: list[Dip] = []
    given = asked.parts("dips", MOST_DIPS, "dips")
    for n, part in enumerate(given):
        dip = CellarAsked(part, "at", "left_ml", at=f"dips[{n}].")
        low = {"low": at_ms(dips[-1].at + 1), "why": IN_ORDER} if dips else {}
        time, left_ml = ms_of(dip.instant("at", **low)), dip.number("left_ml")
        if dips and left_ml > dips[-1].left_ml:
            raise OutOfRange(
                field=f"dips[{n}].left_ml", given=left_ml, low=0, high=dips[-1].left_ml,
                unit="whole mL", why=FALLS,
            )  # fmt: skip
        dips.append(Dip(time, left_ml))
    if len(dips) < 2:
        raise OutOfRange(
            field="dips", given=len(dips), low=2, high=MOST_DIPS, unit="whole dips",
            why="A pace takes two dips.",
        )  # fmt: skip
    return dips


def pace_ml_per_hour(dips: list[Dip], least_hours: float, bar: OpenHours) -> float | None:
    """OUT-1: what is drawn in an hour that the bar is open; None of dips too close to tell."""
    first, last = dips[0], dips[-1]
    hours = bar.hours_between(first.at, last.at)
    return (first.left_ml - last.left_ml) / hours if hours >= least_hours else None


def latest_dips(dips: list[Dip], least_hours: float, bar: OpenHours) -> list[Dip]:
    """The last dip and the one that it tells the latest pace with, if any is so long before."""
    last = dips[-1]
    for dip in reversed(dips):
        if bar.hours_between(dip.at, last.at) >= least_hours:
            return [dip, last]
    return [last]


def runs_out_ms(
    work: Working, last: Dip, drinkable_ml: float, pace: float | None, bar: OpenHours
) -> int | None:
    """OUT-2: when nothing drinkable is left; None at a pace that would last beyond belief.

    Beer is drawn while the bar is open only.
    """
    if drinkable_ml <= 0:
        return last.at
    if pace is None:
        return None
    believed_ms = hours_ms_down(work.setting("run_out_believed_days") * DAY_HOURS)
    if pace * bar.hours_between(last.at, last.at + believed_ms) < drinkable_ml:
        return None
    return bar.after_ms(last.at, hours_ms_down(drinkable_ml / pace))


def next_cask(work: Working, sale: int, now: int, *, fined: bool) -> dict[str, Any]:
    """OUT-3: the steps of the next cask, back from the hour at which it is wanted.

    `sold_from_at` is the sale that a cask set on the stillage now would make.
    """
    day = asked_working_day(work)
    by = latest(gaps_of(work, "cask", fined=fined), Limits(now, now, None), sale)
    sold_from_at = at_ms(max(sale, now + sale - by.stillage))
    vent = day.do_at(now, by.vent) if by.vent >= now else now
    says = f"Vent the next one {say_at(at_ms(vent))}, by {say_at(at_ms(by.vent))} at the latest"
    if by.stillage < now:
        says += "; it must be on the stillage already"
    if by.vent < now:
        says = "Vent the next one at once; set on the stillage now it can be sold from "
        says += say_at(sold_from_at)
    return {
        "stillage_by_at": at_ms(by.stillage),
        "vent_by_at": at_ms(by.vent),
        "vent_at": at_ms(vent),
        "tap_by_at": at_ms(by.tap),
        "late": by.vent < now,
        "sold_from_at": sold_from_at,
        "says": f"{says}.",
    }


def run_out(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """OUT-4: when it runs out at its pace since the first dip, and at the latest pace.

    The earlier of the two decides about the next cask, or the time by which this one is to be off;
    the next one is wanted then, or when the bar opens next.
    Asked: now, dips (at, left_ml); sediment_ml, off_by_at, next_fined.
    Twin: static/src/domain/cellar/run-out.ts.
    """
    asked = CellarAsked(inputs, "now", "dips", "sediment_ml", "off_by_at", "next_fined")
    work = Working(settings)
    now, dips = ms_of(asked.instant("now")), asked_dips(asked)
    off_by = asked.maybe_instant("off_by_at")
    fined = asked.yes("next_fined", NEXT_FINED_WHY, default=True)
    last = dips[-1]
    drinkable_ml = max(0.0, last.left_ml - (asked.maybe_number("sediment_ml") or 0))
    work.step("Drinkable at the last dip = left - sediment", drinkable_ml, "mL", 0)
    least_hours, bar = work.setting("run_out_least_hours"), asked_open_hours(work)
    overall = pace_ml_per_hour(dips, least_hours, bar)
    lately = pace_ml_per_hour(latest_dips(dips, least_hours, bar), least_hours, bar)
    hours = "open hours" if bar.spans else "hours"
    if overall is not None and lately is not None:
        work.step(f"Pace = drawn between first and last dip / {hours} between", overall, "mL/h", 0)
        work.step(
            f"Latest pace = drawn since the last dip far enough back / {hours}", lately, "mL/h", 0
        )
    if hours_between(dips[0].at, last.at) < work.setting("run_out_span_hours"):
        work.caution("pace_from_short_span")
    by_overall = runs_out_ms(work, last, drinkable_ml, overall, bar)
    by_lately = runs_out_ms(work, last, drinkable_ml, lately, bar)
    ends = [time for time in (by_overall, by_lately) if time is not None]
    soonest = min(ends) if ends else None
    off = None if off_by is None else ms_of(off_by)
    leaves = [time for time in (soonest, off) if time is not None]
    gone = min(leaves) if leaves else None
    wanted = None if gone is None else bar.next_open(gone)
    if gone is not None:
        work.caution("beer_decides")
    return work.done(
        {
            "drinkable_ml": int(drinkable_ml),
            "drinkable_pints": pints(drinkable_ml),
            "pints_a_day": None
            if overall is None
            else half_up(overall * bar.a_day() / pint_ml(), 1),
            "runs_out_at": None if by_overall is None else at_ms(by_overall),
            "soonest_at": None if soonest is None else at_ms(soonest),
            "left_hours": None if soonest is None else half_up((soonest - now) / HOUR_MS, 1),
            "gone_at": None if gone is None else at_ms(gone),
            "next_wanted_at": None if wanted is None else at_ms(wanted),
            "next": None if wanted is None else next_cask(work, wanted, now, fined=fined),
        }
    )
