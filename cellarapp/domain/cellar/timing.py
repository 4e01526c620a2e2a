"""STEP: the steps from the stillage to the glass, each no earlier than the ones before allow.

One set of gaps is read in both directions: forward it gives the earliest sale, backward from a
sale the latest time of each step. So what can be ready is what can be planned, and no other.
"""

from typing import NamedTuple

from cellarapp.domain.cellar.cask import Cask
from cellarapp.domain.cellar.times import hours_ms, ms_of
from cellarapp.domain.working import Working


class Gaps(NamedTuple):
    """Milliseconds that must lie between one step and the next."""

    settle: int
    vent: int
    soft: int
    sale_after_vent: int
    sale_after_tap: int
    taste: int


class Limits(NamedTuple):
    """From when a container may be vented and sold at the earliest, and how long after stillage.

    `in_range_ms` is when its beer comes to the cellar's temperature where it stands; where it
    stands too warm or too cold `cool_after_stillage` is how long it takes from the stillage on.
    """

    conditioned_ms: int
    in_range_ms: int
    cool_after_stillage: int | None

    def cool(self, stillage: int) -> int:
        """When its beer is at the cellar's temperature, set on the stillage at that time."""
        if self.cool_after_stillage is None:
            return self.in_range_ms
        return stillage + self.cool_after_stillage

    def before_vent(self, gaps: Gaps) -> int:
        """How long before venting it must be on the stillage."""
        return max(gaps.vent, self.cool_after_stillage or 0)


class Steps(NamedTuple):
    """When each step is done."""

    stillage: int
    vent: int
    spile: int
    tap: int
    sale: int


class Reasons(NamedTuple):
    """What holds the sale back, and until when; the latest of them decides."""

    conditioning: int
    temperature: int
    settling: int
    venting: int
    tapping: int


def gaps_of(work: Working, shape: str, *, fined: bool) -> Gaps:
    """STEP-1: the brewery's hours; unfined beer settles longer, a keg is only tapped and tasted."""
    taste = hours_ms(work.setting("taste_before_sale_hours"))
    if shape == "keg":
        return Gaps(0, 0, 0, 0, taste, taste)
    more = 0.0 if fined else work.setting("unfined_more_hours")
    return Gaps(
        settle=hours_ms(work.setting("settle_hours") + more),
        vent=hours_ms(work.setting("vent_after_stillage_hours")),
        soft=hours_ms(work.setting("soft_spile_hours")),
        sale_after_vent=hours_ms(work.setting("sale_after_venting_hours")),
        sale_after_tap=hours_ms(work.setting("sale_after_tapping_hours")),
        taste=taste,
    )


def _done(instant: str | None) -> int | None:
    return None if instant is None else ms_of(instant)


def _settles_from(cask: Cask, stillage: int) -> int:
    """Finings and moves that come after the stillage start the settling again."""
    return max(stillage, _done(cask.fined_at) or stillage, _done(cask.last_moved_at) or stillage)


def earliest(cask: Cask, gaps: Gaps, limits: Limits, now: int) -> tuple[Steps, Reasons]:
    """STEP-2: each step at its earliest, or when it was done, and what decides the sale."""
    if cask.shape == "keg":
        stillage = vent = ms_of(cask.filled_at)
        spile = max(vent, limits.conditioned_ms)
    else:
        stillage = _or(_done(cask.stillaged_at), now)
        soonest = max(now, stillage + gaps.vent, limits.conditioned_ms, limits.cool(stillage))
        vent = _or(_done(cask.vented_at), soonest)
        spile = _or(_done(cask.hard_spile_at), max(now, vent + gaps.soft))
    tap = _or(_done(cask.tapped_at), max(now, spile))
    reasons = Reasons(
        conditioning=limits.conditioned_ms,
        temperature=limits.cool(stillage),
        settling=_settles_from(cask, stillage) + gaps.settle,
        venting=vent + gaps.sale_after_vent,
        tapping=tap + gaps.sale_after_tap,
    )
    return Steps(stillage, vent, spile, tap, max(reasons)), reasons


def latest(gaps: Gaps, limits: Limits, sale: int) -> Steps:
    """STEP-3: each step at its latest for a sale at that time."""
    tap = sale - gaps.sale_after_tap
    vent = min(sale - gaps.sale_after_vent, tap - gaps.soft)
    stillage = min(sale - gaps.settle, vent - limits.before_vent(gaps))
    return Steps(stillage, vent, tap, tap, sale)


def _or(done: int | None, earliest_ms: int) -> int:
    return earliest_ms if done is None else done
