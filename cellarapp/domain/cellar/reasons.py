"""FIT: why each time is what it is: an id and facts for a screen's words, and a sentence."""

from typing import Any

from cellarapp.domain.cellar.cask import Cask
from cellarapp.domain.cellar.outlook import ESTIMATED, Outlook
from cellarapp.domain.cellar.times import at_ms, plain, say_at, say_day
from cellarapp.domain.cellar.units import HOUR_MS
from cellarapp.domain.rounding import half_up

HELD_BACK_BY = {
    "conditioning": "it conditions until {at}",
    "temperature": "its beer comes to the cellar's temperature {at}",
    "settling": "it settles until {at}",
    "steps": "it takes that long from the stillage to the glass",
    "venting": "it works after venting until {at}",
    "tapping": "it rests after tapping until {at}",
}


def held_back(seen: Outlook) -> str:
    """What the sale waits for, in words."""
    why, until = seen.held_by()
    says = HELD_BACK_BY[why].replace("{at}", say_at(at_ms(until)))
    more = ", and is vented and tapped after that" if why in ("conditioning", "temperature") else ""
    return says + (more if until < seen.steps.sale else "")


def reason(
    of: str, why: str, says: str, facts: dict[str, Any], *, estimate: bool = False
) -> dict[str, Any]:
    """Why a time is what it is: an id and facts for a screen's own words, and ours in English.

    `sure` is "counted" from what was noted and the brewery's hours and days, or "estimate".
    """
    sure = "estimate" if estimate else "counted"
    return {"of": of, "reason": why, "sure": sure, "facts": facts, "says": says}


def conditioned_reason(cask: Cask, seen: Outlook) -> dict[str, Any]:
    """Why it has conditioned from then on."""
    days = cask.conditioning_days
    says = f"Racked {say_at(cask.filled_at)}, {days} days of conditioning"
    if seen.by == "temperature":
        says += ", warm days counting for more and cold ones for less"
    says = f"{says}: conditioned from {say_at(seen.conditioned_at)}."
    facts = {"filled_at": cask.filled_at, "days": days}
    estimate = seen.by == "temperature"
    return reason("conditioned_from_at", f"by_{seen.by}", says, facts, estimate=estimate)


def cool_reason(cask: Cask, seen: Outlook, cool_at: str) -> dict[str, Any]:
    """Why its beer is at the cellar's temperature from then on."""
    beer_c, air_c = half_up(seen.course.beer_c, 1), half_up(seen.air_c, 1)
    here = f"The beer is at about {plain(beer_c)} °C in air of {plain(air_c)} °C"
    there, at = "at the cellar's temperature", say_at(cool_at)
    hours = plain(half_up((seen.limits.cool_after_stillage or 0) / HOUR_MS, 1))
    says = {
        "not_needed": "A keg is cooled on its way to the tap.",
        "in_range_since": f"{here}: {there} since {at}.",
        "in_range_by_estimate": f"{here}: {there} since about {at}.",
        "coming_into_range": f"{here}: {there} from {at}.",
        "cellar_out_of_range": f"{here}, too far off to serve: put right now, {there} from {at}.",
        "after_stillage": f"{here}: {there} {hours} hours after stillage, {at} at the earliest.",
    }[seen.temperature]
    facts = {"beer_temp_c": beer_c, "air_temp_c": air_c, "air_known_by": seen.air_how}
    estimate = seen.temperature in ESTIMATED
    return reason("cool_from_at", seen.temperature, says, facts, estimate=estimate)


def settled_reason(cask: Cask, seen: Outlook) -> dict[str, Any]:
    """Why it has settled from then on."""
    hours = seen.gaps.settle / HOUR_MS
    settled_at = at_ms(seen.reasons.settling)
    fined = "fined" if cask.fined else "not fined"
    facts = {"hours": hours, "fined": cask.fined, "stillaged_at": cask.stillaged_at}
    if cask.shape == "keg":
        return reason("settled_from_at", "keg", "A keg has nothing to settle.", facts)
    if cask.stillaged_at is None:
        says = f"Not on the stillage yet; {fined}, it settles {plain(hours)} hours: if set there "
        says += f"now, settled from {say_at(settled_at)}."
        return reason("settled_from_at", "if_stillaged_now", says, facts)
    since_at = at_ms(seen.reasons.settling - seen.gaps.settle)
    why = "stillaged" if since_at == cask.stillaged_at else "disturbed"
    begun = "On the stillage" if why == "stillaged" else "Fined or moved"
    says = f"{begun} since {say_at(since_at)}; {fined}, it settles {plain(hours)} hours: settled "
    says += f"from {say_at(settled_at)}."
    return reason("settled_from_at", why, says, {**facts, "since_at": since_at})


def ready_reason(seen: Outlook) -> dict[str, Any]:
    """What the sale waits for."""
    says = f"It can be sold from {say_at(at_ms(seen.steps.sale))}: {held_back(seen)}."
    facts = {f"{name}_until_at": at_ms(time) for name, time in seen.reasons._asdict().items()}
    return reason("ready_from_at", seen.held_by()[0], says, facts, estimate=seen.is_estimate())


def end_reasons(
    cask: Cask, days: int, best_until_at: str | None, off_at: str | None
) -> list[dict[str, Any]]:
    """Why it is at its best until then, and off by then."""
    best = reason("best_until_at", "no_date", "It carries no best-before date.", {})
    if cask.best_before_on is not None:
        says = f"Best before {say_day(cask.best_before_on)}; that day itself is still good."
        best = reason("best_until_at", "best_before", says, {"best_before_on": cask.best_before_on})
    says = f"Not tapped yet; it is on sale {days} days from its first draw."
    off = reason("off_by_at", "not_tapped", says, {"on_sale_days": days})
    since_at = cask.first_drawn_at or cask.tapped_at
    if off_at is not None and since_at is not None:
        why = "first_draw" if cask.first_drawn_at else "tapping"
        begun = "First drawn" if cask.first_drawn_at else "Tapped"
        says = f"{begun} {say_at(since_at)}, on sale {days} days: off by {say_at(off_at)}."
        off = reason("off_by_at", why, says, {"since_at": since_at, "on_sale_days": days})
    return [best, off]
