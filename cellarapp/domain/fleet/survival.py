"""KM: how long containers stay out, from trips that have ended and trips that have not.

Kaplan and Meier's estimate. A trip that is still open, or that ended without a return, counts for
as long as it was watched; one that was out already when the records began counts only from then
on. Taking the returned ones alone would make every customer look quick.
"""

import math
from typing import NamedTuple

from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

MOST_TRIPS = 20_000


class Trips(NamedTuple):
    """Trips that are alike: on record from the same day out, and watched for as many days."""

    entered_day: int
    days: int
    returned: int
    open: int
    """Not returned by then: still out, or ended in another way."""


class Fall(NamedTuple):
    """A day out on which containers came back, and the share that is still out after it."""

    day: int
    at_risk: int
    returned: int
    still_out: float
    greenwood: float
    """Greenwood's sum up to this day; infinite once none is left out."""


def asked_trips(asked: Asked, field: str) -> list[Trips]:
    """The trips in a field, by days."""
    trips = []
    for n, part in enumerate(asked.parts(field, MOST_TRIPS, "trips")):
        one = Asked(
            part, "entered_day", "days", "returned", "open", at=f"{asked.at}{field}[{n}]."
        )  # fmt: skip
        trips.append(
            Trips(
                one.whole("entered_day"),
                one.whole("days"),
                one.whole("returned"),
                one.whole("open"),
            )
        )
    return trips


class Curve(NamedTuple):
    """The falls, and the share still out after each day; the last of them holds ever after."""

    falls: list[Fall]
    shares: list[float]

    def still_out(self, day: int) -> float:
        """KM-1: the share still out after so many days."""
        return self.shares[min(day, len(self.shares) - 1)]


def curve(trips: list[Trips]) -> Curve:
    """KM-1: the share still out after each day on which any came back.

    At risk on a day are those out that long and on record before it; those that came back on the
    day on which the records began say nothing.
    """
    falls: list[Fall] = []
    shares = [1.0]
    still_out, greenwood = 1.0, 0.0
    for day in sorted({one.days for one in trips if one.returned}):
        watched = [
            one
            for one in trips
            if one.days >= day and (one.entered_day == 0 or one.entered_day < day)
        ]
        at_risk = sum(one.returned + one.open for one in watched)
        returned = sum(one.returned for one in watched if one.days == day)
        if returned == 0:
            continue
        left = at_risk - returned
        shares += [still_out] * (day - len(shares))
        still_out *= left / at_risk
        greenwood += returned / (at_risk * left) if left else math.inf
        shares[day:] = [still_out]
        falls.append(Fall(day, at_risk, returned, still_out, greenwood))
    return Curve(falls, shares)


def last_watched(trips: list[Trips]) -> int:
    """The longest that any trip has been watched, days."""
    return max((one.days for one in trips), default=0)


def still_out_later(seen: Curve, day: int, within: int) -> float | None:
    """KM-2: the share of those out after `day` days that is out `within` days later too.

    None where by the records none stays out so long: then they say nothing of one that does.
    """
    now = seen.still_out(day)
    return None if now == 0 else seen.still_out(day + within) / now


def median_days(falls: list[Fall]) -> int | None:
    """KM-3: by when half are back; None while fewer than half are known to come back."""
    return next((fall.day for fall in falls if fall.still_out <= 1 / 2), None)


def standard_error(share: float, greenwood: float) -> float:
    """KM-4: Greenwood's standard error of a share."""
    return 0.0 if share == 0 else share * math.sqrt(greenwood)


def _between(falls: list[Fall], after: int, until: int) -> float:
    """Greenwood's sum over the days from one to another."""
    found = 0.0  # added one by one: from Python 3.12 on `sum` makes good what is lost on the way
    for fall in falls:
        if after < fall.day <= until and fall.at_risk > fall.returned:
            found += fall.returned / (fall.at_risk * (fall.at_risk - fall.returned))
    return found


def return_chance(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """KM-2: the chance that a container that has been out so long comes back within a fortnight.

    Asked: trips (entered_day, days, returned, open), days_out. Answers percentages; none where no
    trip was watched for long enough. Twin: static/src/domain/fleet/survival.ts.
    Source: Kaplan and Meier, Journal of the American Statistical Association 53 (1958) 457-481;
    the standard errors are Greenwood's.
    """
    asked, work = Asked(inputs, "trips", "days_out"), Working(settings)
    trips, day = asked_trips(asked, "trips"), asked.whole("days_out")
    within = int(work.setting("chance_within_days"))
    seen = curve(trips)
    falls = seen.falls
    later = still_out_later(seen, day, within)
    enough = later is not None and day + within <= last_watched(trips)
    work.step("Still out after as many days = product of (1 - returned / at risk)",
              seen.still_out(day), "of all", 4)  # fmt: skip
    work.step("Still out at the end of the time", seen.still_out(day + within), "of all", 4)
    back_pct = error_pct = None
    if later is not None and enough:
        back_pct = half_up(work.step("Back by then = 1 - later / now", 1 - later, "", 4) * 100, 3)
        error_pct = half_up(
            standard_error(later, _between(falls, day, day + within)) * 100, 3
        )  # fmt: skip
    return work.done(
        {
            "back_pct": back_pct,
            "error_pct": error_pct,
            "median_days": median_days(falls),
            "curve": [
                {
                    "day": fall.day,
                    "at_risk": fall.at_risk,
                    "returned": fall.returned,
                    "still_out_pct": half_up(fall.still_out * 100, 4),
                    "error_pct": half_up(standard_error(fall.still_out, fall.greenwood) * 100, 4),
                }
                for fall in falls
            ],
        }
    )
