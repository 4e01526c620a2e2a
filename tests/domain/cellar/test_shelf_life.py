"""How long a beer keeps, what is left on delivery, and the clock after tapping."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calendar import days_between

from .asking import ask, result

# Days by strength: common practice, no source. On the line between two the shorter is taken.
CLASSES = [(0, 28), (39, 28), (40, 42), (50, 42), (51, 56), (70, 56), (71, 84), (300, 84)]


@pytest.mark.parametrize(("abv_tenths", "days"), CLASSES)
def test_window_goes_by_strength(abv_tenths: int, days: int) -> None:
    """SHELF-1."""
    found = result("best_before", from_on="2026-03-06", shape="cask", abv_tenths=abv_tenths)
    assert found["window_days"] == days


def test_beer_s_own_window_comes_first() -> None:
    """SHELF-1."""
    found = result("best_before", from_on="2026-03-06", shape="keg", abv_tenths=80, window_days=21)
    assert found["window_days"] == 21


def test_keg_keeps_eight_weeks() -> None:
    """SHELF-1. Inn Doctor, stock rotation: some kegs eight weeks."""
    assert result("best_before", from_on="2026-03-06", shape="keg")["window_days"] == 56


def test_beer_of_unknown_strength_has_any_beer_s_window() -> None:
    """SHELF-1: the figure that the ledger uses where a beer says nothing."""
    found = ask("best_before", from_on="2026-03-06", shape="cask")
    assert found["result"]["window_days"] == 42
    assert found["figures"] == ["best_before_days"]


def test_brewery_sets_its_own_windows() -> None:
    """SHELF-1: what no source gives is the brewery's to set."""
    own = {"window_4_to_5_days": 35}
    assert result("best_before", own, from_on="2026-03-06", abv_tenths=42)["window_days"] == 35


# Worked by hand on the calendar: 6 March and so many days.
@pytest.mark.parametrize(
    ("days", "on"), [(42, "2026-04-17"), (120, "2026-07-04"), (600, "2027-10-27")]
)
def test_days_are_counted_on_the_calendar(days: int, on: str) -> None:
    """SHELF-2: across a leap day and the nights the clocks change alike."""
    assert result("best_before", from_on="2026-03-06", window_days=days)["best_before_on"] == on


def test_a_leap_day_counts() -> None:
    """SHELF-2."""
    found = result("best_before", from_on="2028-02-01", window_days=29)
    assert found["best_before_on"] == "2028-03-01"


def test_the_answer_says_from_where_it_counts() -> None:
    """SHELF-2: brewers differ; Wishbone Brewery, 14 June 2020."""
    found = result("best_before", from_on="2026-03-10", counted_from="despatch")
    assert (found["from_on"], found["counted_from"]) == ("2026-03-10", "despatch")
    assert result("best_before", from_on="2026-03-10")["counted_from"] == "racking"


@given(st.integers(1, 3999), st.dates().filter(lambda day: 2000 <= day.year <= 2100).map(str))
def test_a_longer_window_never_ends_earlier(days: int, on: str) -> None:
    """SHELF-2: and one day more is one day later."""
    shorter = result("best_before", from_on=on, window_days=days)["best_before_on"]
    longer = result("best_before", from_on=on, window_days=days + 1)["best_before_on"]
    assert days_between(shorter, longer) == 1


@given(st.integers(0, 299))
def test_a_stronger_beer_never_keeps_shorter(abv_tenths: int) -> None:
    """SHELF-1."""
    weaker, stronger = (
        result("best_before", from_on="2026-03-06", abv_tenths=abv_tenths + more)["window_days"]
        for more in (0, 1)
    )
    assert weaker <= stronger


# BII and Cask Marque cellar checklist: cask 14 days, keg 20 days to go on delivery.
@pytest.mark.parametrize(
    ("shape", "delivered_on", "left", "short_by"),
    [("cask", "2026-04-03", 14, 0), ("cask", "2026-04-04", 13, 1), ("keg", "2026-03-28", 20, 0),
     ("keg", "2026-04-03", 14, 6)],
)  # fmt: skip
def test_life_left_is_held_against_what_customers_expect(
    shape: str, delivered_on: str, left: int, short_by: int
) -> None:
    """SHELF-3."""
    asked = {"best_before_on": "2026-04-17", "delivered_on": delivered_on, "shape": shape}
    found = ask("life_left", **asked)
    assert found["result"]["left_days"] == left
    assert found["result"]["short_by_days"] == short_by
    assert ("short_life_on_delivery" in found["cautions"]) == (short_by > 0)


def test_the_last_day_to_deliver_is_said() -> None:
    """SHELF-3: Stringers Beer, 2009: 22 days is typical from retailers."""
    asked = {"best_before_on": "2026-04-17", "delivered_on": "2026-03-20", "shape": "cask"}
    assert result("life_left", **asked)["deliver_by_on"] == "2026-04-03"
    assert result("life_left", **asked, expected_days=22)["deliver_by_on"] == "2026-03-26"


def test_three_days_on_sale_from_monday_noon_end_on_thursday() -> None:
    """SALE-3. Cask Marque: three days; Hook Norton Brewery: four at most."""
    asked = {"tapped_at": "2026-03-09T12:00:00.000Z", "shape": "cask"}
    assert result("off_by", **asked)["off_by_at"] == "2026-03-12T12:00:00.000Z"
    four = result("off_by", **asked, on_sale_days=4)
    assert four["off_by_at"] == "2026-03-13T12:00:00.000Z"


def test_the_clock_starts_at_the_first_draw() -> None:
    """SALE-3: not when it was tapped the day before."""
    asked = {"tapped_at": "2026-03-08T12:00:00.000Z", "shape": "cask"}
    found = result("off_by", **asked, first_drawn_at="2026-03-09T12:00:00.000Z")
    assert found["off_by_at"] == "2026-03-12T12:00:00.000Z"
    assert found["counted_from"] == "first_draw"


def test_a_keg_stands_five_days() -> None:
    """SALE-1. Ed's Beer Site: five days after broaching; Inn Doctor: a week at most."""
    found = result("off_by", tapped_at="2026-03-09T12:00:00.000Z", shape="keg")
    assert found["off_by_at"] == "2026-03-14T12:00:00.000Z"


# Tapped at noon before the night the clocks change, off at noon three days later.
@pytest.mark.parametrize(
    ("tapped_at", "off_by_at"),
    [
        ("2026-03-28T12:00:00.000Z", "2026-03-31T11:00:00.000Z"),
        ("2026-10-24T11:00:00.000Z", "2026-10-27T12:00:00.000Z"),
    ],
)
def test_the_night_the_clocks_change_moves_no_noon(tapped_at: str, off_by_at: str) -> None:
    """SALE-2: the same time on a London clock."""
    assert result("off_by", tapped_at=tapped_at, shape="cask")["off_by_at"] == off_by_at
