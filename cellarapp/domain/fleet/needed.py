"""NEED: how many containers of a kind it takes, from how long they stay out and what is filled."""

import math
from itertools import accumulate
from typing import Any, NamedTuple

from cellarapp.domain.figures import Settings
from cellarapp.domain.fleet.survival import Curve, asked_trips, curve, last_watched, median_days
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

MOST_OUT = 5000
WEEK_DAYS = 7
TURN_DIGITS = 1


class MeanTime(NamedTuple):
    """How long a trip lasts on average within so many days, and its standard error."""

    days: float
    error: float


def restricted_mean(seen: Curve, until: int) -> MeanTime:
    """NEED-1: the area below the curve up to a day, and Greenwood's error of it.

    Trips that last longer count as that long: nothing is known of how long they really do.
    """
    shares = [seen.still_out(day) for day in range(until)]
    ahead = [0.0] * (until + 1)
    for day in range(until - 1, -1, -1):
        ahead[day] = ahead[day + 1] + shares[day]
    variance = 0.0
    for fall in seen.falls:
        left = fall.at_risk - fall.returned
        if fall.day < until and left > 0:
            # Multiplied by itself: what ** makes of it differs between languages in the last bit.
            squared = ahead[fall.day] * ahead[fall.day]
            variance += squared * fall.returned / (fall.at_risk * left)
    return MeanTime(ahead[0], math.sqrt(variance))


def enough_for(mean: float, certainty: float) -> int:
    """NEED-3: the least number that so many are not more than, with that certainty.

    Containers that leave about as they come, each for its own time, are out in Poisson's numbers
    about their mean, whatever the times are (Palm's theorem; Carrillo, Management Science 1991).
    """
    middle, spread = math.floor(mean), math.ceil(10 * math.sqrt(mean)) + 10
    first = max(0, middle - spread)
    weights = [1.0]
    for k in range(middle, first, -1):
        weights.append(weights[-1] * k / mean)
    weights.reverse()
    for k in range(middle + 1, middle + spread + 1):
        weights.append(weights[-1] * mean / k)
    # Added one by one: from Python 3.12 on `sum` makes good what is lost on the way.
    found = list(accumulate(weights))
    wanted = found[-1] * certainty
    return first + next(k for k, so_far in enumerate(found) if so_far >= wanted)


def ahead_by_week(seen: Curve, out: list[int], home: int, fills: float, weeks: int) -> list[float]:
    """NEED-4: how many are likely at the brewery after each week, filled and empty ones.

    Those out now come back by the chances of their days, those sent from now on from the start.
    """
    found, sent_back = [], 0.0
    for day in range(1, weeks * WEEK_DAYS + 1):
        sent_back += 1 - seen.still_out(day - 1)
        if day % WEEK_DAYS == 0:
            back = 0.0
            for days_out in out:
                now = seen.still_out(days_out)
                back += 0.0 if now == 0 else 1 - seen.still_out(days_out + day) / now
            found.append(home + back + fills * sent_back - fills * day)
    return found


def turns_a_year(work: Working, turn_days: float) -> float | None:
    """NEED-5: how often one goes round in a year; None for a turn that is shown as no time."""
    if half_up(turn_days, TURN_DIGITS) == 0:
        return None
    return half_up(work.figure("days_in_year") / turn_days, 1)


def fleet_needed(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """NEED-2: containers needed = fills a day x days for a whole turn, and a margin (Little's law).

    Asked: trips (as in return_chance), out (the days of those out), at_home, fills_a_week,
    home_days (at the brewery between return and sending), lost_a_year, value_pounds.
    Twin: static/src/domain/fleet/needed.ts.
    Source: Little and Graves, Little's Law, in Building Intuition (Springer 2008), chapter 5.
    """
    names = (
        "trips", "out", "at_home", "fills_a_week", "home_days", "lost_a_year", "value_pounds",
    )  # fmt: skip
    asked, work = Asked(inputs, *names), Working(settings)
    trips = asked_trips(asked, "trips")
    out = [
        Asked(part, "days_out", at=f"out[{n}].").whole("days_out")
        for n, part in enumerate(asked.parts("out", MOST_OUT, "containers"))
    ]
    home, fills = asked.whole("at_home"), asked.number("fills_a_week") / WEEK_DAYS
    seen, until = curve(trips), int(work.setting("lost_after_days"))
    until = min(until, last_watched(trips))
    mean = restricted_mean(seen, until)
    work.step("Days out on average = area below the share still out", mean.days, "days", 1)
    turn = work.step("Days of a whole turn = out + at the brewery",
                     mean.days + asked.number("home_days"), "days", TURN_DIGITS)  # fmt: skip
    expected = work.step("Containers in the round = fills a day x days of a turn",
                         fills * turn, "containers", 1)  # fmt: skip
    certainty = work.setting("fleet_certainty_pct") / 100
    needed = enough_for(expected, certainty) if expected > 0 else 0
    work.step("Needed, so that there are enough with the certainty chosen", needed,
              "containers", 0)  # fmt: skip
    weeks = int(work.setting("fleet_weeks_ahead"))
    ahead = ahead_by_week(seen, out, home, fills, weeks)
    short = next((n + 1 for n, left in enumerate(ahead) if half_up(left, 6) < 0), None)
    width = work.setting("interval_errors") * mean.error
    result: dict[str, Any] = {
        "trips": sum(one.returned for one in trips),
        "median_days": median_days(seen.falls),
        "mean_days": half_up(mean.days, 1),
        "mean_low_days": half_up(max(0.0, mean.days - width), 1),
        "mean_high_days": half_up(mean.days + width, 1),
        "turns_a_year": turns_a_year(work, turn),
        "expected": half_up(expected, 1),
        "needed": needed,
        "have": home + len(out),
        "lost_pounds": half_up_whole(asked.number("lost_a_year") * asked.number("value_pounds")),
        "short_in_weeks": short,
        "at_home_by_week": [half_up(left, 1) for left in ahead],
    }
    return work.done(result)
