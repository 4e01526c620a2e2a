"""FIT: everything that is reckoned of one container before it is said or planned."""

from typing import NamedTuple

from cellarapp.domain.cellar.beer_temperature import Course, Serving, asked_serving, course
from cellarapp.domain.cellar.cask import Cask
from cellarapp.domain.cellar.conditioning import conditioned_at
from cellarapp.domain.cellar.cooling import tau_hours
from cellarapp.domain.cellar.temperatures import air_at, pieces
from cellarapp.domain.cellar.times import hours_ms, ms_of
from cellarapp.domain.cellar.timing import Gaps, Limits, Reasons, Steps, earliest, gaps_of
from cellarapp.domain.working import Working

FOLLOWS = ("venting", "tapping")
FORECAST = ("coming_into_range", "cellar_out_of_range", "after_stillage")
ESTIMATED = ("in_range_by_estimate", *FORECAST)


class Outlook(NamedTuple):
    """A container's way to the glass. `by` says how conditioning was reckoned."""

    conditioned_at: str
    by: str
    course: Course
    air_c: float
    air_how: str
    temperature: str
    gaps: Gaps
    limits: Limits
    steps: Steps
    reasons: Reasons
    vent_waits: bool

    def held_by(self) -> tuple[str, int]:
        """What the sale waits for, and until when: the first cause, not what merely follows it.

        A cask that may be vented only once it has conditioned is held by conditioning, though it
        is the rest after tapping that ends last.
        """
        times = self.reasons._asdict()
        last = next(name for name, time in times.items() if time == self.steps.sale)
        if last not in FOLLOWS or not self.vent_waits:
            return last, times[last]
        if self.steps.vent == self.reasons.conditioning:
            return "conditioning", self.reasons.conditioning
        if self.steps.vent == self.reasons.temperature:
            return "temperature", self.reasons.temperature
        return "steps", self.steps.vent

    def is_estimate(self) -> bool:
        """Whether the first cause is more than what was noted and the brewery's hours and days."""
        cause, _ = self.held_by()
        if cause == "temperature":
            return self.temperature in ESTIMATED
        return cause == "conditioning" and self.by == "temperature"


def outlook(work: Working, cask: Cask, now: str) -> Outlook:
    """FIT-1: how far the container has come, and the earliest it can be sold."""
    conditioned, by = conditioned_at(
        work, cask.filled_at, cask.conditioning_days, cask.history, now
    )
    serving = asked_serving(work)
    start, tau = ms_of(cask.filled_at), tau_hours(work, cask.holds_ml)
    time = max(start, ms_of(now))
    air = pieces(work, cask.history, start, time + 1)
    gone = course(serving, cask.history, air, cask.fill_temp_c, tau)
    air_c, how = air_at(work, cask.history, time)
    in_range_ms, after, temperature = _in_range(cask, serving, gone, air_c, tau, time)
    limits = Limits(ms_of(conditioned), in_range_ms, after)
    gaps = gaps_of(work, cask.shape, fined=cask.fined)
    steps, reasons = earliest(cask, gaps, limits, ms_of(now))
    return Outlook(
        conditioned,
        by,
        gone,
        air_c,
        how,
        temperature,
        gaps,
        limits,
        steps,
        reasons,
        vent_waits=cask.shape == "cask" and cask.vented_at is None,
    )


def _in_range(
    cask: Cask, serving: Serving, gone: Course, air_c: float, tau: float, now: int
) -> tuple[int, int | None, str]:
    """FIT-2: when the beer comes to the cellar's temperature, how long after stillage, and how.

    Where it stands too warm or too cold it has the whole way to go once it is in the cellar; what
    is on its stillage already is taken to be in a cellar that comes right now.
    """
    if cask.shape == "keg":
        return ms_of(cask.filled_at), None, "not_needed"
    if serving.low_c <= air_c <= serving.high_c:
        since = gone.in_range_since_ms
        if since is not None:
            read = any(r.of == "beer" and since <= r.at_ms <= now for r in cask.history.readings)
            sure = read or since == ms_of(cask.filled_at)
            return since, None, "in_range_since" if sure else "in_range_by_estimate"
        hours = serving.hours_from(gone.beer_c, air_c, tau) or 0.0
        return now + hours_ms(hours), None, "coming_into_range"
    cellar_c = serving.cellar_c
    if cask.stillaged_at is not None:
        hours = serving.hours_from(gone.beer_c, cellar_c, tau) or 0.0
        return now + hours_ms(hours), None, "cellar_out_of_range"
    farthest_c = max(gone.beer_c, air_c, key=lambda temp_c: abs(temp_c - cellar_c))
    hours = serving.hours_from(farthest_c, cellar_c, tau) or 0.0
    return ms_of(cask.filled_at), hours_ms(hours), "after_stillage"
