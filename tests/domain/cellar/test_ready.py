"""From when a container is fit for what, and why."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.cellar.times import at_ms, ms_of
from cellarapp.domain.errors import NotATime, OutOfRange

from .asking import ask, result, unhurried

FILLED = "2026-03-06T10:00:00.000Z"
NOW = "2026-03-18T09:00:00.000Z"
STORE_AT_16 = [{"since_at": FILLED, "place_temp_c": 16}]


def ready(own: dict[str, Any] | None = None, **asked: Any) -> dict[str, Any]:
    usual = {"now": NOW, "filled_at": FILLED, "best_before_on": "2026-04-17"}
    return result("ready", own, **{**usual, **asked})


def why(found: dict[str, Any], of: str) -> dict[str, Any]:
    return next(each for each in found["reasons"] if each["of"] == of)


def test_a_conditioned_cask_in_the_cellar_takes_the_brewery_s_hours() -> None:
    """STEP-2: stillage to venting 6, to the hard spile 12, to sale 24: 42 hours."""
    found = ready()
    assert found["conditioned_from_at"] == "2026-03-13T10:00:00.000Z"
    assert found["settled_from_at"] == "2026-03-19T21:00:00.000Z"
    assert found["ready_from_at"] == "2026-03-20T03:00:00.000Z"
    assert why(found, "ready_from_at")["reason"] == "steps"
    assert why(found, "settled_from_at")["reason"] == "if_stillaged_now"


# Murphy & Son: at least 24 h on the stillage, better 36; vent within 6 h of delivery and tap with
# it. Sterling Stock Auditors: at least 3 days.
@pytest.mark.parametrize(
    ("own", "ready_from_at"),
    [
        (
            {"settle_hours": 24, "vent_after_stillage_hours": 6, "soft_spile_hours": 0,
             "sale_after_venting_hours": 0, "sale_after_tapping_hours": 0},
            "2026-03-19T09:00:00.000Z",
        ),
        ({"settle_hours": 72}, "2026-03-21T09:00:00.000Z"),
        ({"sale_after_tapping_hours": 48}, "2026-03-21T03:00:00.000Z"),
    ],
)  # fmt: skip
def test_houses_differ_and_the_brewery_s_hours_decide(
    own: dict[str, Any], ready_from_at: str
) -> None:
    """STEP-1."""
    assert ready(own)["ready_from_at"] == ready_from_at


def test_a_setting_is_shown_with_its_source() -> None:
    """STEP-1: whatever a range left open is listed."""
    found = ask("ready", now=NOW, filled_at=FILLED)
    assert {"settle_hours", "soft_spile_hours", "sale_after_venting_hours"} <= {*found["figures"]}


def test_a_cask_is_vented_only_once_it_has_conditioned() -> None:
    """STEP-2: and the reason named is the conditioning, not the rest that follows it."""
    found = ready(filled_at="2026-03-16T10:00:00.000Z")
    assert found["conditioned_from_at"] == "2026-03-23T10:00:00.000Z"
    assert found["ready_from_at"] == "2026-03-24T22:00:00.000Z"
    assert why(found, "ready_from_at")["reason"] == "conditioning"
    assert why(found, "ready_from_at")["says"] == (
        "It can be sold from Tue 24 Mar 22:00: it conditions until Mon 23 Mar 10:00, and is vented "
        "and tapped after that."
    )


def test_a_warm_cask_cools_in_the_cellar_first() -> None:
    """FIT-2. 16 to 13 °C in air of 12: tau ln 4 = 27.3 hours from the stillage on."""
    found = ready(stays=STORE_AT_16)
    assert found["cool_from_at"] == "2026-03-19T12:17:00.000Z"
    assert why(found, "cool_from_at")["reason"] == "after_stillage"
    assert why(found, "cool_from_at")["sure"] == "estimate"
    assert why(found, "ready_from_at")["reason"] == "temperature"
    assert why(found, "ready_from_at")["sure"] == "estimate"


def test_a_cask_that_cools_where_it_stands_is_in_range_from_then_on() -> None:
    """FIT-2: filled at 18 °C into a cellar of 12: 35.2 hours."""
    on_the_way = ready(now="2026-03-07T09:00:00.000Z", fill_temp_c=18)
    assert why(on_the_way, "cool_from_at")["reason"] == "coming_into_range"
    there = ready(fill_temp_c=18)
    assert there["cool_from_at"][:16] == on_the_way["cool_from_at"][:16] == "2026-03-07T21:15"
    assert why(there, "cool_from_at")["reason"] == "in_range_by_estimate"


def test_a_thermometer_in_the_beer_makes_it_sure() -> None:
    """BEER-1: also of a cask thought to be cool."""
    read = {"at": "2026-03-18T08:00:00.000Z", "of": "beer"}
    sure = ready(fill_temp_c=18, readings=[{**read, "reading_temp_c": 12.1}])
    assert why(sure, "cool_from_at")["reason"] == "in_range_since"
    warm = ready(readings=[{**read, "reading_temp_c": 15}])
    assert why(warm, "cool_from_at")["reason"] == "coming_into_range"
    assert warm["cool_from_at"] > NOW


def test_too_cold_a_store_has_its_beer_warmed() -> None:
    """FIT-2. 5 to 11 °C in 12: 38.3 hours."""
    found = ready(stays=[{"since_at": FILLED, "place_temp_c": 5}])
    assert found["cool_from_at"] == "2026-03-19T23:17:00.000Z"


def test_a_cellar_out_of_range_is_said_to_be() -> None:
    """FIT-2: it stands on the stillage, and the thermometer shows 16."""
    found = ready(stillaged_at="2026-03-15T09:00:00.000Z", stays=STORE_AT_16)
    assert why(found, "cool_from_at")["reason"] == "cellar_out_of_range"


def test_stillaged_and_settled() -> None:
    """STEP-2."""
    found = ready(stillaged_at="2026-03-17T09:00:00.000Z", vented_at="2026-03-17T15:00:00.000Z")
    assert found["settled_from_at"] == "2026-03-18T21:00:00.000Z"
    assert why(found, "settled_from_at")["reason"] == "stillaged"
    assert found["ready_from_at"] == "2026-03-19T09:00:00.000Z"
    assert why(found, "ready_from_at")["reason"] == "tapping"


def test_a_move_or_finings_start_the_settling_again() -> None:
    """STEP-2."""
    steps = {"stillaged_at": "2026-03-15T09:00:00.000Z", "tapped_at": "2026-03-16T09:00:00.000Z"}
    disturbed_at = "2026-03-17T12:00:00.000Z"
    for field in ("last_moved_at", "fined_at"):
        found = ready(**steps, **{field: disturbed_at})
        assert found["settled_from_at"] == "2026-03-19T00:00:00.000Z"
        assert why(found, "settled_from_at")["reason"] == "disturbed"
        assert why(found, "ready_from_at")["reason"] == "settling"


# craftbrews.uk: unfined one to two days longer; the longer is taken.
def test_unfined_beer_settles_two_days_longer() -> None:
    """STEP-1."""
    found = ask("ready", now=NOW, filled_at=FILLED, fined=False)
    assert found["result"]["settled_from_at"] == "2026-03-21T21:00:00.000Z"
    assert "unfined_may_not_clear" in found["cautions"]


@pytest.mark.parametrize(("moves", "warned"), [(3, False), (4, True)])
def test_moves_after_fining_are_counted(moves: int, warned: bool) -> None:
    """FIT-3: three to five are said; from memory, so the brewery's to set."""
    found = ask("ready", now=NOW, filled_at=FILLED, moves=moves)
    assert ("moved_often_after_fining" in found["cautions"]) is warned


def test_a_later_step_implies_the_earlier_ones() -> None:
    """STEP-2: what is tapped has been vented, and stands on the stillage."""
    found = ready(tapped_at="2026-03-16T09:00:00.000Z")
    assert found["stillaged_at"] == "2026-03-16T09:00:00.000Z"
    assert found["ready_from_at"] == "2026-03-17T21:00:00.000Z"
    assert found["is_ready"]


def test_a_keg_is_neither_settled_nor_cooled() -> None:
    """STEP-1: conditioned, tapped and tasted."""
    found = ready(shape="keg", stays=STORE_AT_16, filled_at="2026-03-16T10:00:00.000Z")
    assert found["ready_from_at"] == "2026-03-23T11:00:00.000Z"
    assert why(found, "cool_from_at")["reason"] == "not_needed"
    assert why(found, "settled_from_at")["reason"] == "keg"


def test_best_until_the_end_of_its_day() -> None:
    """FIT-4: the best-before day itself is still good; its midnight is a summer one."""
    assert ready()["best_until_at"] == "2026-04-17T23:00:00.000Z"
    assert why(ready(best_before_on=None), "best_until_at")["reason"] == "no_date"


def test_off_by_counts_from_the_first_draw_or_else_from_tapping() -> None:
    """SALE-2."""
    tapped = {"tapped_at": "2026-03-16T12:00:00.000Z"}
    assert ready()["off_by_at"] is None
    assert ready(**tapped)["off_by_at"] == "2026-03-19T12:00:00.000Z"
    drawn = ready(**tapped, first_drawn_at="2026-03-17T12:00:00.000Z")
    assert drawn["off_by_at"] == "2026-03-20T12:00:00.000Z"
    assert why(drawn, "off_by_at")["reason"] == "first_draw"


def test_a_date_that_falls_before_the_days_on_sale_are_over_is_warned_of() -> None:
    """FIT-4."""
    asked = {"now": NOW, "filled_at": FILLED, "tapped_at": "2026-03-17T12:00:00.000Z"}
    found = ask("ready", **asked, best_before_on="2026-03-19")
    assert "best_before_ends_on_sale" in found["cautions"]


def test_temperature_never_moves_the_printed_date() -> None:
    """AGE: it is advice."""
    hot = [{"since_at": FILLED, "place_temp_c": 30}]
    assert ready(stays=hot)["best_until_at"] == ready()["best_until_at"]


# Racked at 10:00 on the Friday before the clocks change, in spring and in autumn.
@pytest.mark.parametrize(
    ("filled_at", "conditioned"),
    [
        ("2026-03-27T10:00:00.000Z", "2026-04-03T09:00:00.000Z"),
        ("2026-10-23T09:00:00.000Z", "2026-10-30T10:00:00.000Z"),
    ],
)
def test_days_of_conditioning_are_days_on_a_london_clock(filled_at: str, conditioned: str) -> None:
    """COND-2: at ten o'clock, whatever the clocks did."""
    found = ready(now=filled_at, filled_at=filled_at)
    assert found["conditioned_from_at"] == conditioned
    assert " 10:00." in why(found, "conditioned_from_at")["says"]


@pytest.mark.parametrize(
    ("field", "value"),
    [("filled_at", None), ("filled_at", "2026-03-06"), ("now", "now"), ("now", 12),
     ("tapped_at", "2026-03-06T09:59:59.999Z"), ("stillaged_at", "soon"),
     ("fined_at", "2101-01-01T00:00:00.000Z")],
)  # fmt: skip
def test_a_time_that_cannot_be_is_refused(field: str, value: object) -> None:
    """With the field, the range and the reason."""
    with pytest.raises(NotATime) as refused:
        ready(**{field: value})
    facts = refused.value.facts
    assert facts["field"] == field
    assert {"low", "high", "why", "given"} <= facts.keys()


def test_readings_out_of_order_are_refused() -> None:
    """AIR-1: with their place in the list."""
    readings = [
        {"at": at, "reading_temp_c": 12}
        for at in ("2026-03-08T10:00:00.000Z", "2026-03-07T10:00:00.000Z")
    ]
    with pytest.raises(NotATime) as refused:
        ready(readings=readings)
    assert refused.value.facts["field"] == "readings[1].at"


def test_a_serving_range_turned_round_is_refused() -> None:
    """BEER-1."""
    with pytest.raises(OutOfRange) as refused:
        ready({"cellar_low_c": 14, "cellar_high_c": 12})
    assert refused.value.facts["field"] == "cellar_low_c"


@given(st.integers(0, 30), st.integers(0, 30), st.integers(0, 20))
@unhurried
def test_longer_conditioning_is_never_ready_sooner(days: int, more: int, now_day: int) -> None:
    """STEP-2."""
    now = f"2026-03-{10 + now_day}T10:00:00.000Z"
    sooner = ready(now=now, conditioning_days=days)["ready_from_at"]
    assert sooner <= ready(now=now, conditioning_days=days + more)["ready_from_at"]


HOURS = st.integers(0, 24 * 20)


@given(st.lists(HOURS, min_size=4, max_size=4), st.integers(0, 4), HOURS, st.floats(4, 20))
@unhurried
def test_a_step_done_never_makes_it_later_than_doing_it_now(
    hours: list[int], done: int, now_h: int, temp_c: float
) -> None:
    """STEP-2: the next step done now is where the earliest sale came from."""

    def at(hour: int) -> str:
        return at_ms(ms_of(FILLED) + hour * 3_600_000)

    now_h += max(hours)
    names = ("stillaged_at", "vented_at", "hard_spile_at", "tapped_at")
    steps = {name: at(hour) for name, hour in zip(names[:done], sorted(hours), strict=False)}
    asked = {"filled_at": at(0), "now": at(now_h)}
    before = ready(**asked, **steps, fill_temp_c=temp_c)
    if done < len(names):
        more = {names[done]: at(now_h)}
        after = ready(**asked, **steps, **more, fill_temp_c=temp_c)
        assert after["ready_from_at"] <= before["ready_from_at"]
