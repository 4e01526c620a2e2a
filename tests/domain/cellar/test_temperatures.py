"""Air and beer temperature, cooling, ageing and conditioning by them."""

import math
from datetime import datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]
from scipy.optimize import fsolve  # type: ignore[import-untyped]

from cellarapp.domain.errors import OutOfRange

from .asking import ask, result, unhurried

START = "2026-03-06T10:00:00.000Z"


# From the two published points of a keg, fitted with a constant air temperature: 50 to 38 °F in
# 25 hours and 40 to 38 °F in 7 (US draught quality guide, read second-hand).
def test_the_cooling_time_follows_from_the_published_points() -> None:
    """COOL-1: 19.7 hours, with air of 33.3 °F."""

    def points(guess: Any) -> list[float]:
        tau, air = guess
        return [
            tau * math.log((50 - air) / (38 - air)) - 25,
            tau * math.log((40 - air) / (38 - air)) - 7,
        ]

    tau, air = fsolve(points, (20, 33))
    assert tau == pytest.approx(19.67, abs=0.01)
    assert air == pytest.approx(33.3, abs=0.05)


# Worked by hand with 19.67 hours. 25 to 13 is 50.45, printed 50.4 with a longer tau and 50.5 here.
@pytest.mark.parametrize(
    ("beer", "air", "to", "hours"),
    [(20, 12, 13, 40.9), (18, 12, 13, 35.2), (25, 12, 13, 50.4), (20, 12, 12.5, 54.5),
     (5, 12, 11, 38.3)],
)  # fmt: skip
def test_hours_to_cool_or_warm(beer: float, air: float, to: float, hours: float) -> None:
    """COOL-4."""
    found = result("cooling", from_temp_c=beer, air_temp_c=air, to_temp_c=to)
    assert found["hours"] == pytest.approx(hours, abs=0.11)


# The trade's "about 24 hours to 11-13 °C" (Stepping into Management, page 459) gets 18 °C beer in a
# cellar of 12 within two degrees, not one.
@pytest.mark.parametrize(("hours", "temp_c"), [(24, 13.77), (48, 12.52)])
def test_beer_a_day_and_two_days_after_it_came_in(hours: float, temp_c: float) -> None:
    """COOL-5."""
    found = result("cooled", from_temp_c=18, air_temp_c=12, after_hours=hours)
    assert found["temp_c"] == temp_c


def test_cooling_agrees_with_newton_s_law_integrated() -> None:
    """COOL-2: scipy, solving dT/dt = (air - T) / tau step by step."""
    solved = solve_ivp(lambda _, temp: (12 - temp) / 19.67, (0, 30), [20], rtol=1e-10, atol=1e-10)
    found = result("cooled", from_temp_c=20, air_temp_c=12, after_hours=30)
    assert found["temp_c"] == pytest.approx(solved.y[0, -1], abs=0.0051)


# 17.4 h for a firkin and 22.0 h for a kilderkin by the cube root; a firkin keeps the longer 19.67.
@pytest.mark.parametrize(
    ("holds_ml", "tau"), [(20457, 19.67), (40915, 19.67), (81830, 21.97), (163659, 27.68)]
)
def test_larger_containers_take_longer(holds_ml: int, tau: float) -> None:
    """COOL-1."""
    found = ask("cooling", from_temp_c=20, air_temp_c=12, to_temp_c=13, holds_ml=holds_ml)
    assert found["steps"][0]["value"] == pytest.approx(tau, abs=0.006)


@pytest.mark.parametrize(
    ("beer", "air", "to"), [(20, 12, 12), (20, 12, 11), (20, 12, 21), (12, 12, 12)]
)
def test_the_air_s_own_temperature_is_never_asked_for(beer: float, air: float, to: float) -> None:
    """COOL-4: it would take for ever."""
    with pytest.raises(OutOfRange) as refused:
        result("cooling", from_temp_c=beer, air_temp_c=air, to_temp_c=to)
    assert refused.value.facts["field"] == "to_temp_c"


# Equivalent days at 12 °C of one day, Q10^((T - 12) / 10), worked by hand.
TABLE = {
    2: {5: 0.62, 8: 0.76, 10: 0.87, 14: 1.15, 16: 1.32, 18: 1.52, 20: 1.74, 25: 2.46, 30: 3.48},
    2.5: {5: 0.53, 8: 0.69, 10: 0.83, 14: 1.20, 16: 1.44, 18: 1.73, 20: 2.08, 25: 3.29, 30: 5.20},
    3: {5: 0.46, 8: 0.64, 10: 0.80, 14: 1.25, 16: 1.55, 18: 1.93, 20: 2.41, 25: 4.17, 30: 7.22},
}


@pytest.mark.parametrize(
    ("q10", "temp_c", "days"), [(q, t, d) for q, row in TABLE.items() for t, d in row.items()]
)
def test_a_day_at_a_temperature_is_worth_so_many_at_twelve(
    q10: float, temp_c: float, days: float
) -> None:
    """AGE-1."""
    stays = [{"since_at": START, "place_temp_c": temp_c}]
    asked = {"from_at": START, "until_at": "2026-03-07T10:00:00.000Z", "stays": stays}
    assert result("ageing", {"ageing_q10": q10}, **asked)["spent_days"] == days


def test_three_days_at_twenty_cost_three_more() -> None:
    """AGE-2. A 42-day beer, Q10 2.5: 6.2 days spent, 3.2 lost."""
    stays = [{"since_at": START, "place_temp_c": 20}]
    found = ask("ageing", from_at=START, until_at="2026-03-09T10:00:00.000Z", stays=stays)
    assert found["result"]["passed_days"] == 3
    assert found["result"]["spent_days"] == pytest.approx(6.2, abs=0.05)
    assert found["result"]["lost_days"] == pytest.approx(3.2, abs=0.05)
    assert "ageing_is_advice" in found["cautions"]


def test_cold_days_are_not_given_back() -> None:
    """AGE-2: the date stays as it is printed, and nothing is promised beyond it."""
    stays = [{"since_at": START, "place_temp_c": 4}]
    found = result("ageing", from_at=START, until_at="2026-03-16T10:00:00.000Z", stays=stays)
    assert found["spent_days"] < found["passed_days"]
    assert found["lost_days"] == 0


# Bamforth and Lentini (2009), Q10 = 2: 2 weeks at 30 °C = 4 at 20 = 8 at 10 = 16 at 0.
# "3-30-300" days at 90, 72 and 38 °F gives 10.0 when warm, 3.38 when cool and 4.92 over all, so
# Q10 is not one number; Li et al.: 14.2, 30.0 and 59.1 times room temperature at 40, 50, 60 °C.
@pytest.mark.parametrize(
    ("first_days", "first_c", "second_days", "second_c", "q10"),
    [
        (56, 10, 14, 30, 2.0), (112, 0, 28, 20, 2.0),
        (30, 22.22, 3, 32.22, 10.0), (300, 3.33, 30, 22.22, 3.38), (300, 3.33, 3, 32.22, 4.92),
        (30.0, 40, 14.2, 50, 2.11), (59.1, 50, 30.0, 60, 1.97),
    ],
)  # fmt: skip
def test_q10_of_published_pairs(
    first_days: float, first_c: float, second_days: float, second_c: float, q10: float
) -> None:
    """AGE-3: days of keeping; Li's speeds are turned round."""
    asked = {"first_days": first_days, "second_days": second_days}
    found = result("q10_between", **asked, first_temp_c=first_c, second_temp_c=second_c)
    assert found["q10"] == pytest.approx(q10, abs=0.011)


@pytest.mark.parametrize(("second_days", "second_c"), [(3, 12.5), (30, 12), (31, 22), (0.1, 22)])
def test_trials_that_say_nothing_are_refused(second_days: float, second_c: float) -> None:
    """AGE-3: too near each other, warmer keeping longer, or a hundred times less."""
    with pytest.raises(OutOfRange):
        result(
            "q10_between", first_days=30, first_temp_c=12, second_days=second_days,
            second_temp_c=second_c,
        )  # fmt: skip


@given(st.lists(st.floats(-5, 30), min_size=1, max_size=6), st.floats(0.1, 5))
@unhurried
def test_warmer_never_ages_less(temps: list[float], warmer: float) -> None:
    """AGE-2."""

    def spent(more: float) -> float:
        stays = [
            {"since_at": f"2026-03-{6 + n:02d}T10:00:00.000Z", "place_temp_c": temp + more}
            for n, temp in enumerate(temps)
        ]
        asked = {"from_at": START, "until_at": "2026-03-20T10:00:00.000Z", "stays": stays}
        return float(result("ageing", **asked)["spent_days"])

    assert spent(warmer) >= spent(0)


def beer_temp(own: dict[str, Any] | None = None, **asked: Any) -> dict[str, Any]:
    usual = {"now": "2026-03-20T09:00:00.000Z", "filled_at": START}
    return result("ready", own, **{**usual, **asked})


def test_a_place_without_a_temperature_is_taken_as_the_cellar() -> None:
    """AIR-1."""
    found = beer_temp(stays=[{"since_at": START, "place_temp_c": None}])
    assert found["beer_temp_c"] == 12
    assert found["reasons"][1]["facts"]["air_known_by"] == "cellar"


def test_a_reading_stands_until_it_grows_old() -> None:
    """AIR-1: then the place's usual temperature is taken again."""
    stays = [{"since_at": START, "place_temp_c": 12}]
    reading = {"at": "2026-03-20T08:00:00.000Z", "reading_temp_c": 14}
    old = {**reading, "at": "2026-03-19T20:59:00.000Z"}
    assert beer_temp(stays=stays, readings=[reading])["reasons"][1]["facts"]["air_temp_c"] == 14
    assert beer_temp(stays=stays, readings=[old])["reasons"][1]["facts"]["air_temp_c"] == 12


def test_a_reading_does_not_follow_the_cask_to_another_place() -> None:
    """AIR-1."""
    readings = [{"at": "2026-03-20T07:00:00.000Z", "reading_temp_c": 20}]
    stays = [
        {"since_at": START, "place_temp_c": 18},
        {"since_at": "2026-03-20T08:00:00.000Z", "place_temp_c": 11},
    ]
    assert beer_temp(stays=stays, readings=readings)["reasons"][1]["facts"]["air_temp_c"] == 11


def test_the_beer_lags_behind_its_air() -> None:
    """BEER-1: 18 °C beer, a day in 12 °C, is at 13.8."""
    found = beer_temp(now="2026-03-07T10:00:00.000Z", fill_temp_c=18)
    assert found["beer_temp_c"] == 13.8


def test_a_reading_of_the_beer_sets_it_right() -> None:
    """BEER-1: from then on it is reckoned anew."""
    readings = [{"at": "2026-03-20T09:00:00.000Z", "reading_temp_c": 14.6, "of": "beer"}]
    found = beer_temp(fill_temp_c=18, readings=readings)
    assert found["beer_temp_c"] == 14.6
    assert found["warmest_temp_c"] == 18


@pytest.mark.parametrize(
    ("temp_c", "cautions"),
    [(19, set()), (19.5, {"too_warm_for_venting"}), (22, {"too_warm_for_venting"}),
     (23, {"too_warm_for_venting", "finings_may_be_ruined"})],
)  # fmt: skip
def test_warmth_is_warned_of(temp_c: float, cautions: set[str]) -> None:
    """FIT-3. Murphy & Son: above about 19 °C; Great Newsome Brewery: above 22 to 23 °C."""
    stays = [{"since_at": START, "place_temp_c": temp_c}]
    found = ask("ready", now="2026-03-20T09:00:00.000Z", filled_at=START, stays=stays)
    assert {"too_warm_for_venting", "finings_may_be_ruined"} & {*found["cautions"]} == cautions


# 7 days at 13 °C are 4.3 at 20 °C with a Q10 of 2, 3.2 with 3: a guess that a brewery may set.
@pytest.mark.parametrize(("q10", "days"), [(2, 4.3), (3, 3.2)])
def test_conditioning_by_temperature_where_a_brewery_wants_it(q10: float, days: float) -> None:
    """COND-3."""
    stays = [{"since_at": START, "place_temp_c": 20}]
    found = ask(
        "ready", {"conditioning_q10": q10}, now=START, filled_at=START, stays=stays,
        conditioning_days=7,
    )  # fmt: skip
    until = datetime.fromisoformat(found["result"]["conditioned_from_at"])
    gone = until - datetime.fromisoformat(START)
    assert gone.total_seconds() / 86_400 == pytest.approx(days, abs=0.05)
    assert "conditioning_rate_is_guess" in found["cautions"]
    assert found["result"]["reasons"][0]["sure"] == "estimate"


def test_conditioning_goes_by_the_days_unless_a_brewery_says_otherwise() -> None:
    """COND-3: at any temperature, to the same time on a London clock."""
    stays = [{"since_at": START, "place_temp_c": 20}]
    found = beer_temp(filled_at="2026-03-26T10:00:00.000Z", stays=stays, conditioning_days=7)
    assert found["conditioned_from_at"] == "2026-04-02T09:00:00.000Z"
    assert found["reasons"][0]["reason"] == "by_days"


@given(st.floats(0, 30), st.floats(0, 10), st.integers(0, 30), st.floats(1, 3))
@unhurried
def test_warmer_never_conditions_later(temp_c: float, warmer: float, days: int, q10: float) -> None:
    """COND-3."""

    def until(place_c: float) -> str:
        stays = [{"since_at": START, "place_temp_c": place_c}]
        own = {"conditioning_q10": q10}
        asked = {"now": START, "filled_at": START, "conditioning_days": days, "stays": stays}
        return str(result("ready", own, **asked)["conditioned_from_at"])

    assert until(temp_c + warmer) <= until(temp_c)
