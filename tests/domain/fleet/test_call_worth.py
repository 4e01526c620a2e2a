"""CALL: what a call is worth, by hand, and as it has to be whatever the trips say."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calculations import calculate

from ..cellar.asking import unhurried

Trip = dict[str, int]


def trip(days: int, returned: int = 0, still_open: int = 0) -> Trip:
    return {"entered_day": 0, "days": days, "returned": returned, "open": still_open}


# Of a hundred, 40 are back by day 20, 40 more by day 40, 15 by day 60; five are out for two years.
USUAL = [trip(20, 40), trip(40, 40), trip(60, 15), trip(700, 0, 5)]


def out(days: int, agreed: int = 30, **more: Any) -> dict[str, Any]:
    return {"days_out": days, "agreed_days": agreed, "value_pounds": 100, **more}


def worth(
    *containers: dict[str, Any],
    own: list[Trip] | None = None,
    every: list[Trip] | None = None,
    settings: dict[str, Any] | None = None,
) -> dict[str, Any]:
    asked = {"own": own or [], "all": USUAL if every is None else every, "out": list(containers)}
    return calculate("call_worth", asked, settings)["result"]


def test_what_is_not_late_is_not_asked_for() -> None:
    """CALL-2: on the agreed day it is not late yet."""
    found = worth(out(30))
    assert (found["worth_pence"], found["late"], found["worth_calling"]) == (0, 0, False)
    assert found["out"][0]["propose_missing"] is False


def test_what_is_late_counts_by_its_chance_to_stay() -> None:
    """CALL-2, CALL-3. By hand: of 60 out after 31 days, 20 are after 45: a third of £100 stays.

    Five of the 60 are never back: £8.33.
    """
    found = worth(out(31))
    assert found["out"][0]["back_pct"] == 67
    assert found["worth_pence"] == 3333
    assert found["loss_pence"] == 833


def test_a_deposit_that_we_hold_is_no_loss() -> None:
    """CALL-4. By hand: a third of £100 less £40; above the value it leaves nothing to lose."""
    assert worth(out(31, deposit_pounds=40))["worth_pence"] == 2000
    assert worth(out(31, deposit_pounds=40))["loss_pence"] == 500
    assert worth(out(31, deposit_pounds=150))["worth_pence"] == 0


def test_hire_goes_on_while_it_is_out() -> None:
    """CALL-4. By hand: 14 days at 50p are £7; a lost one costs it for 334 days up to a year."""
    found = worth(out(31, hire_pounds_a_day=0.5))
    assert found["worth_pence"] == 3567  # a third of £107
    assert found["loss_pence"] == 2225  # a twelfth of £267


def test_the_longer_it_is_late_the_more_is_at_stake() -> None:
    """CALL-2: after day 46 a fortnight would bring 15 of 20 back; it is no better than before.

    The chance that is told is the one that is reckoned with, and none of the 20 is back by day 59.
    """
    assert worth(out(46))["out"][0]["back_pct"] == worth(out(45))["least_back_pct"] == 0
    assert worth(out(46, agreed=60))["out"][0]["back_pct"] == 75
    assert worth(out(46))["worth_pence"] == worth(out(45))["worth_pence"]


def test_after_the_time_that_trips_last_nothing_good_is_believed() -> None:
    """CALL-3: none that was out for 61 days came back; missing is proposed, no more than that."""
    found = worth(out(61))
    assert found["worth_pence"] == found["loss_pence"] == 10_000
    assert found["out"][0]["propose_missing"] is True


def test_a_year_out_is_lost() -> None:
    """CALL-3: even where others have come back later."""
    found = worth(out(365), every=[trip(500, 10)])
    assert found["loss_pence"] == 10_000
    assert found["out"][0]["back_pct"] == 0


def test_a_customer_with_trips_enough_is_judged_by_them() -> None:
    """CALL-1: from ten on; by then it is known for bringing everything within 35 days."""
    assert worth(out(31), own=[trip(35, 9)])["judged_by"] == "all"
    found = worth(out(31), own=[trip(35, 10)])
    assert found["judged_by"] == "own"
    assert found["worth_pence"] == 0


def test_a_kind_has_its_value_and_the_brewery_its_own() -> None:
    """£75 a firkin unless the brewery says otherwise, or the customer has agreed another."""
    firkin = {"kind": "firkin", "days_out": 400, "agreed_days": 30}
    assert worth(firkin)["worth_pence"] == 7500
    found = worth(firkin, settings={"firkin_value_pounds": 90})
    assert found["worth_pence"] == 9000
    assert worth(firkin | {"value_pounds": 20})["worth_pence"] == 2000


def test_a_call_that_brings_little_is_not_proposed() -> None:
    """CALL-4: below £10 there is better to do."""
    assert worth(out(61, value_pounds=9.99))["worth_calling"] is False
    assert worth(out(61, value_pounds=10))["worth_calling"] is True


def test_the_chance_that_is_told_and_the_money_say_the_same() -> None:
    """CALL-2. By hand: all ten come back by day 40, six of them by day 28.

    A fortnight after day 15 four of ten are out, so two fifths of £100 are at stake. A month late
    they would all be back by themselves by day 40, yet no less is at stake, nor is 100 % told.
    """
    own = [trip(28, 6), trip(40, 4)]
    for days in (15, 30):
        found = worth(out(days, agreed=14), own=own)
        assert (found["worth_pence"], found["least_back_pct"]) == (4000, 60)
    two = worth(out(30, agreed=14), out(30, agreed=26), own=own)
    assert [row["back_pct"] for row in two["out"]] == [60, 100]
    assert (two["worth_pence"], two["least_back_pct"]) == (4000, 60)


trips = st.lists(
    st.builds(trip, st.integers(0, 90), st.integers(0, 9), st.integers(0, 3)), max_size=8
)
containers = st.lists(
    st.fixed_dictionaries(
        {
            "days_out": st.integers(0, 500),
            "agreed_days": st.integers(0, 60),
            "value_pounds": st.integers(0, 200),
        }
    ),
    min_size=1,
    max_size=4,
)


@pytest.mark.parametrize("more", ["days_out", "value_pounds", "count"])
@unhurried
@given(own=trips, every=trips, has=containers, by=st.integers(0, 200))
def test_more_of_anything_never_makes_a_call_worth_less(
    more: str, own: list[Trip], every: list[Trip], has: list[dict[str, Any]], by: int
) -> None:
    """CALL-2 to CALL-4: so it never lowers a customer's place, whatever the trips were."""
    first, *rest = has
    raised = [*has, first] if more == "count" else [first | {more: first[more] + by}, *rest]
    before = worth(*has, own=own, every=every)
    after = worth(*raised, own=own, every=every)
    assert after["worth_pence"] >= before["worth_pence"]
    assert after["loss_pence"] >= before["loss_pence"]
    assert after["worth_calling"] >= before["worth_calling"]
