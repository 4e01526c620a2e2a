"""JOB: what is still to do to a container for a sale, by when, and when in the working day."""

from typing import Any, NamedTuple

from cellarapp.domain.cellar.cask import Cask
from cellarapp.domain.cellar.outlook import Outlook
from cellarapp.domain.cellar.times import at_ms, ms_of, say_at
from cellarapp.domain.cellar.timing import latest
from cellarapp.domain.cellar.working_day import WorkingDay

STEPS = ("stillage", "vent", "spile", "tap", "taste")
DOES = {
    "stillage": "Set on the stillage",
    "vent": "Vent with a soft spile",
    "spile": "Change to a hard spile",
    "tap": "Tap",
    "taste": "Taste",
}


class Job(NamedTuple):
    """A step that is still to do: by when at the latest, and when it falls in the working day."""

    step: str
    by: int
    do: int
    late: bool


def jobs_for(cask: Cask, seen: Outlook, day: WorkingDay, sale: int, now: int) -> list[Job]:
    """JOB-1: what is still to do for a sale, each at the last working time that is early enough.

    Late is what can no longer be done in time; it is then put at its earliest.
    """
    gaps, first, by = seen.gaps, seen.steps, latest(seen.gaps, seen.limits, sale)
    tap = _do(day, first.tap, by.tap, cask.tapped_at)
    spile = _do(day, first.spile, min(by.spile, tap), cask.hard_spile_at)
    vent = _do(day, first.vent, min(by.vent, spile - gaps.soft), cask.vented_at)
    set_by = min(by.stillage, vent - seen.limits.before_vent(gaps))
    stillage = _do(day, first.stillage, set_by, cask.stillaged_at)
    taste_by = sale - gaps.taste
    taste = _do(day, max(tap, now), taste_by, cask.tasted_at)
    rows = (
        ("stillage", by.stillage, stillage, cask.stillaged_at),
        ("vent", by.vent, vent, cask.vented_at),
        ("spile", by.spile, spile, cask.hard_spile_at),
        ("tap", by.tap, tap, cask.tapped_at),
        ("taste", taste_by, taste, cask.tasted_at),
    )
    wanted = STEPS if cask.shape == "cask" else STEPS[STEPS.index("tap") :]
    return [
        Job(step, last, time, late=time > last)
        for step, last, time, done_at in rows
        if done_at is None and step in wanted
    ]


def _do(day: WorkingDay, earliest: int, by: int, done_at: str | None) -> int:
    if done_at is not None:
        return ms_of(done_at)
    return day.do_at(earliest, by) if earliest <= by else earliest


def said(job: Job) -> str:
    """A job in words."""
    do, by = say_at(at_ms(job.do)), say_at(at_ms(job.by))
    if job.late:
        return f"{DOES[job.step]}, due by {by}; {do} at the earliest"
    return f"{DOES[job.step]} {do}" + ("" if job.do == job.by else f", by {by} at the latest")


def shown_jobs(jobs: list[Job], number: str) -> list[dict[str, Any]]:
    """Jobs as a screen lists them."""
    return [
        {
            "number": number,
            "step": job.step,
            "by_at": at_ms(job.by),
            "do_at": at_ms(job.do),
            "late": job.late,
            "says": f"{number}: {said(job)}.",
        }
        for job in jobs
    ]
