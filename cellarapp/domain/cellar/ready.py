"""FIT: from when a container is fit for what, until when, and why, each in a sentence."""

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.cask import CASK_FIELDS, Cask, asked_cask
from cellarapp.domain.cellar.days import after_days, days_on_sale
from cellarapp.domain.cellar.outlook import FORECAST, Outlook, outlook
from cellarapp.domain.cellar.reasons import (
    conditioned_reason,
    cool_reason,
    end_reasons,
    ready_reason,
    settled_reason,
)
from cellarapp.domain.cellar.times import at_ms, end_of, ms_of
from cellarapp.domain.cellar.units import HOUR_MS
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working


def warn(work: Working, cask: Cask, seen: Outlook) -> None:
    """FIT-3: what has happened to the container that a person should mind."""
    warmest = seen.course.warmest_c
    if warmest > work.figure("vigorous_secondary_above_c") and cask.vented_at is None:
        work.caution("too_warm_for_venting")
    if cask.fined and warmest > work.setting("finings_ruined_above_c"):
        work.caution("finings_may_be_ruined")
    if cask.fined and cask.moves > work.setting("resettles_most"):
        work.caution("moved_often_after_fining")
    if seen.temperature in FORECAST:
        work.caution("cooling_is_estimate")
    if cask.shape == "cask":
        work.caution("beer_decides")
        if not cask.fined:
            work.caution("unfined_may_not_clear")


def ready(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FIT-4: conditioned, cool, settled and ready from; best until, off by; each with a reason.

    Asked: now, filled_at and whatever else is known of the container (cask.py).
    Twin: static/src/domain/cellar/ready.ts.
    """
    asked, work = CellarAsked(inputs, "now", *CASK_FIELDS), Working(settings)
    now, cask = asked.instant("now"), asked_cask(work, asked)
    seen = outlook(work, cask, now)
    warn(work, cask, seen)
    days = days_on_sale(work, cask.shape, cask.on_sale_days)
    since_at = cask.first_drawn_at or cask.tapped_at
    off_at = after_days(since_at, days) if since_at else None
    best_until_at = end_of(cask.best_before_on) if cask.best_before_on else None
    cool_at = at_ms(seen.reasons.temperature)
    if off_at and best_until_at and ms_of(off_at) > ms_of(best_until_at):
        work.caution("best_before_ends_on_sale")
    work.step("Days of conditioning", cask.conditioning_days, "days", 0)
    work.step("Beer now, following the air with its lag", seen.course.beer_c, "°C", 1)
    work.step("Settles on the stillage", seen.gaps.settle / HOUR_MS, "hours", 1)
    work.step("From venting to sale", seen.gaps.sale_after_vent / HOUR_MS, "hours", 1)
    work.step("From tapping to sale", seen.gaps.sale_after_tap / HOUR_MS, "hours", 1)
    return work.done(
        {
            "conditioned_from_at": seen.conditioned_at,
            "cool_from_at": cool_at,
            "stillaged_at": cask.stillaged_at,
            "settled_from_at": at_ms(seen.reasons.settling),
            "ready_from_at": at_ms(seen.steps.sale),
            "is_ready": seen.steps.sale <= ms_of(now),
            "best_until_at": best_until_at,
            "off_by_at": off_at,
            "beer_temp_c": half_up(seen.course.beer_c, 1),
            "warmest_temp_c": half_up(seen.course.warmest_c, 1),
            "reasons": [
                conditioned_reason(cask, seen),
                cool_reason(cask, seen, cool_at),
                settled_reason(cask, seen),
                ready_reason(seen),
                *end_reasons(cask, days, best_until_at, off_at),
            ],
        }
    )
