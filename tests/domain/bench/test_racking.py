"""The racking plan is exact and at once; the bench's sheet adds up."""

import time
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.bench.racking import fullest
from cellarapp.domain.errors import OutOfRange

from .asking import FIRKIN, ask, result, unhurried

PIN, FIRKIN_ML, KILDERKIN, KEG = 20457, 40915, 81830, 30000


def size(capacity_ml: int, available: int, wished: int = 0) -> dict[str, int]:
    return {"capacity_ml": capacity_ml, "available": available, "wished": wished}


def plan(vessel_ml: int, *sizes: dict[str, int], loss_ml: int = 0) -> dict[str, Any]:
    return result("racking_plan", vessel_ml=vessel_ml, loss_ml=loss_ml, sizes=list(sizes))


def fills(found: dict[str, Any]) -> list[int]:
    return [row["fill"] for row in found["sizes"]]


def test_a_batch_short_of_its_container_is_said_plainly() -> None:
    """RACK-1: 40 L in a firkin of 40.915 L would leave 0.9 L of air."""
    worked = ask("racking_plan", vessel_ml=40000, loss_ml=0, sizes=[size(FIRKIN_ML, 3, 1)])
    assert worked["result"]["short"] == {
        "capacity_ml": 40915, "volume_ml": 40000, "headspace_ml": 915,
    }  # fmt: skip
    assert worked["cautions"] == ["wishes_unmet", "short_of_a_container"]


def test_wishes_come_first_and_the_rest_leaves_least() -> None:
    """Six firkins and two kegs are wished; by hand, 785 mL is the least of what is left."""
    found = plan(
        1_000_000,
        size(FIRKIN_ML, 30, 6),
        size(PIN, 10),
        size(KILDERKIN, 4),
        size(KEG, 8, 2),
        size(50000, 3),
        loss_ml=20_000,
    )
    assert fills(found)[0] >= 6
    assert fills(found)[3] >= 2
    assert found["left_ml"] == 785


def test_wishes_are_met_in_the_order_written() -> None:
    """What cannot be met is counted."""
    found = plan(100_000, size(FIRKIN_ML, 5, 2), size(KEG, 5, 2))
    assert fills(found) == [2, 0]
    assert [row["unmet"] for row in found["sizes"]] == [0, 2]


def test_what_fills_everything_leaves_the_rest_with_no_container() -> None:
    worked = ask("racking_plan", vessel_ml=100_000, loss_ml=0, sizes=[size(FIRKIN_ML, 2)])
    assert worked["result"]["left_ml"] == 100_000 - 2 * FIRKIN_ML
    assert worked["result"]["short"] is None
    assert worked["cautions"] == ["no_container_left"]


def test_taking_the_largest_first_would_leave_more() -> None:
    """60 L: a 50 L keg leaves 10 L, two of 30 L leave none."""
    assert fills(plan(60_000, size(50_000, 1), size(KEG, 2))) == [0, 2]


def test_of_equal_plans_the_one_with_larger_containers_is_taken() -> None:
    assert fills(plan(60_000, size(KEG, 2), size(60_000, 1))) == [0, 1]


small_sizes = st.lists(st.tuples(st.integers(1, 40), st.integers(0, 4)), max_size=4)


@unhurried
@given(small_sizes, st.integers(0, 200))
def test_no_other_choice_would_leave_less(sizes: list[tuple[int, int]], room_ml: int) -> None:
    """Every choice is tried by hand and compared."""
    chosen = fullest(sizes, room_ml)
    assert all(0 <= n <= most for n, (_, most) in zip(chosen, sizes, strict=True))

    def filled(counts: tuple[int, ...]) -> int:
        return sum(n * ml for n, (ml, _) in zip(counts, sizes, strict=True))

    every = product(*(range(available + 1) for _, available in sizes))
    assert filled(tuple(chosen)) == max(ml for ml in map(filled, every) if ml <= room_ml)


@unhurried
@given(
    st.integers(1, 3_000_000),
    st.lists(
        st.builds(
            size,
            st.sampled_from([PIN, FIRKIN_ML, 50007, KILDERKIN, KEG]),
            st.integers(0, 40),
            st.integers(0, 9),
        ),
        max_size=5,
    ),
)
def test_a_plan_adds_up(vessel_ml: int, sizes: list[dict[str, int]]) -> None:
    """Nothing is filled that is not here, and no more than there is."""
    found = plan(vessel_ml, *sizes)
    assert found["racked_ml"] + found["left_ml"] == vessel_ml
    assert found["left_ml"] >= 0
    for row, asked in zip(found["sizes"], sizes, strict=True):
        assert 0 <= row["fill"] <= asked["available"]
        assert row["unmet"] == max(0, row["unmet"])
        assert row["fill"] + row["unmet"] >= asked["wished"]
    assert found["containers"] == sum(fills(found))


def test_two_hundred_containers_are_planned_at_once() -> None:
    """40 sizes, 80 hL: a fraction of a second of work; two leave room for a slow machine."""
    sizes = [size(20_011 + 1_499 * n, 5) for n in range(40)]
    began = time.process_time()
    found = plan(8_000_000, *sizes)
    assert time.process_time() - began < 2
    assert found["left_ml"] <= 1
    assert found["containers"] <= 200


def test_more_than_two_hundred_are_refused() -> None:
    with pytest.raises(OutOfRange) as refused:
        plan(1_000_000, size(PIN, 150), size(KEG, 51))
    assert refused.value.facts["given"] == 201


def test_more_left_behind_than_there_is_is_refused() -> None:
    with pytest.raises(OutOfRange) as refused:
        plan(1000, loss_ml=1001)
    assert refused.value.facts["field"] == "loss_ml"


def test_additions_are_inside_the_fill() -> None:
    """RACK-2, by hand: 4 pints of isinglass and 1 of auxiliary are 710 mL of a firkin."""
    additions = [{"per_l": 4000 / 288, "unit": "mL"}, {"per_l": 1000 / 288, "unit": "mL"}]
    found = result("bench_sheet", containers=FIRKIN, additions=additions)
    assert found["containers"][0]["doses"] == [568.2, 142.0]
    assert found["containers"][0]["liquid_ml"] == pytest.approx(710, abs=0.5)
    assert found["containers"][0]["beer_ml"] == pytest.approx(40910 - 710.2, abs=0.1)


@unhurried
@given(
    st.lists(st.tuples(st.integers(1000, 200_000), st.integers(1, 50)), min_size=1, max_size=5),
    st.floats(0, 20),
    st.floats(0, 20),
)
def test_totals_to_draw_are_the_sum_of_the_doses(
    rows: list[tuple[int, int]], per_l: float, grams_per_l: float
) -> None:
    """Grams take up no room."""
    containers = [{"volume_ml": ml, "count": count} for ml, count in rows]
    additions = [{"per_l": per_l, "unit": "mL"}, {"per_l": grams_per_l, "unit": "g"}]
    found = result("bench_sheet", containers=containers, additions=additions)
    drawn = sum(row["doses"][0] * row["count"] for row in found["containers"])
    assert found["totals"][0] == pytest.approx(drawn, abs=1e-6)
    rounded_ml = 0.051 * found["count"] + 0.1
    assert found["beer_ml"] == pytest.approx(
        found["volume_ml"] - found["totals"][0], abs=rounded_ml
    )
