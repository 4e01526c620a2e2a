"""PLAN: back from a sale to what has to be done to which cask by when, and today's jobs."""

from typing import Any

from cellarapp.domain.calendar import days_between, london_date
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.cask import CASK_FIELDS, Cask, asked_cask
from cellarapp.domain.cellar.days import after_days, days_on_sale
from cellarapp.domain.cellar.jobs import STEPS, jobs_for, shown_jobs
from cellarapp.domain.cellar.outlook import Outlook, outlook
from cellarapp.domain.cellar.ready import warn
from cellarapp.domain.cellar.reasons import held_back
from cellarapp.domain.cellar.times import at_ms, end_of, ms_of, say_at, say_day
from cellarapp.domain.cellar.working_day import WorkingDay, asked_working_day
from cellarapp.domain.errors import NotAmong
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.numbers import is_number
from cellarapp.domain.working import Worked, Working

MOST_CASKS = 200
NUMBER_WHY = "A container's number in its normal form."


def why_not(cask: Cask, seen: Outlook, sale_at: str) -> tuple[str | None, str]:
    """PLAN-1: what stands against the sale, and a sentence; None when nothing does."""
    best = cask.best_before_on
    if best is not None and london_date(sale_at) > best:
        return "past_best_before", f"Its best before is {say_day(best)}."
    if cask.first_drawn_at is not None and cask.first_drawn_at < sale_at:
        return "on_sale_already", f"It has been on sale since {say_at(cask.first_drawn_at)}."
    if seen.steps.sale > ms_of(sale_at):
        ready_at = at_ms(seen.steps.sale)
        return seen.held_by()[0], f"Not before {say_at(ready_at)}: {held_back(seen)}."
    return None, f"Ready for {say_at(sale_at)}."


def _number_of(asked: CellarAsked) -> str:
    number = asked.given.get("number")
    if not isinstance(number, str) or not is_number(number):
        raise NotAmong(
            field=f"{asked.at}number", given=None if number is None else str(number),
            choices=["a container's number"], why=NUMBER_WHY,
        )  # fmt: skip
    return number


def planned(
    work: Working, asked: CellarAsked, day: WorkingDay, sale_at: str, now: str
) -> dict[str, Any]:
    """PLAN-2: one cask for one sale."""
    number, own = _number_of(asked), Working(work.settings)
    cask = asked_cask(own, asked)
    seen = outlook(own, cask, now)
    warn(own, cask, seen)
    against, says = why_not(cask, seen, sale_at)
    off_at = after_days(sale_at, days_on_sale(own, cask.shape, cask.on_sale_days))
    best = cask.best_before_on
    if against is None and best is not None and ms_of(off_at) > ms_of(end_of(best)):
        own.caution("best_before_ends_on_sale")
    _list_all(work, own)
    jobs = jobs_for(cask, seen, day, ms_of(sale_at), ms_of(now))
    return {
        "number": number,
        "can": against is None,
        "against": against,
        "says": says,
        "sale_at": sale_at,
        "ready_from_at": at_ms(seen.steps.sale),
        "best_before_on": best,
        "left_days": None if best is None else days_between(london_date(sale_at), best),
        "off_by_at": off_at,
        "estimated": seen.is_estimate(),
        "cautions": own.cautions,
        "jobs": shown_jobs(jobs, number),
    }


def _list_all(work: Working, own: Working) -> None:
    for name in own.figures:
        work.figure(name)
    for name in own.cautions:
        work.caution(name)


def first_out(row: dict[str, Any]) -> tuple[bool, bool, str, str, str]:
    """PLAN-3: what can be sold first, of that what is best before soonest, then what is ready."""
    best = row["best_before_on"]
    return not row["can"], best is None, best or "", row["ready_from_at"], row["number"]


def plan_back(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """PLAN-4: for a sale at a time, every candidate: whether it can, and what is to do by when.

    Asked: now, sale_at, casks: each a number and what is known of it (cask.py). Twin: plan.ts.
    """
    asked, work = CellarAsked(inputs, "now", "sale_at", "casks"), Working(settings)
    day, now = asked_working_day(work), asked.instant("now")
    sale_at = asked.instant("sale_at", now, "Not before now.")
    rows = [
        planned(work, each, day, sale_at, now) for each in _parts(asked, "number", *CASK_FIELDS)
    ]
    can = sum(row["can"] for row in rows)
    work.step(f"Can be on sale by {say_at(sale_at)}", can, "casks", 0)
    if can:
        work.caution("vent_with_air")
    return work.done({"sale_at": sale_at, "casks": sorted(rows, key=first_out)})


def todays_jobs(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """PLAN-5: what is to do today, in order of time, for the casks that were picked for sales.

    Today ends with the London day; what was to be done before now is late and comes first.
    Asked: now, casks: each a number, its sale_at, and what is known of it.
    """
    asked, work = CellarAsked(inputs, "now", "casks"), Working(settings)
    day, now = asked_working_day(work), asked.instant("now")
    jobs: list[dict[str, Any]] = []
    for each in _parts(asked, "number", "sale_at", *CASK_FIELDS):
        jobs += planned(work, each, day, each.instant("sale_at"), now)["jobs"]
    midnight = ms_of(end_of(london_date(now)))
    today = [job for job in jobs if ms_of(job["do_at"]) < midnight]
    today.sort(key=lambda job: (job["do_at"], STEPS.index(job["step"]), job["number"]))
    work.step("Jobs today", len(today), "jobs", 0)
    return work.done({"jobs": today, "later": len(jobs) - len(today)})


def _parts(asked: CellarAsked, *names: str) -> list[CellarAsked]:
    given = asked.parts("casks", MOST_CASKS, "casks")
    return [CellarAsked(part, *names, at=f"casks[{n}].") for n, part in enumerate(given)]
