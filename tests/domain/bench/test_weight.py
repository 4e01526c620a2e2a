"""Fill by weight, held to published tolerances and densities."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.bench.gravity import beer_g_per_ml
from cellarapp.domain.working import Working

from .asking import ask, result, unhurried


def weighed(**other: Any) -> dict[str, Any]:
    usual = {"gross_g": 51_000, "tare_g": 9_600, "present_gravity": 1.010, "beer_temp_c": 12}
    return {**usual, "capacity_ml": 40915, "method": "weighed", **other}


def test_a_firkin_by_weight() -> None:
    """FILL-1, by hand: (51.0 - 9.6) kg / 1.0095 kg/L is 41.01 L, 0.10 L over."""
    found = result("fill_by_weight", **weighed())
    assert found["volume_ml"] == pytest.approx(41_010, abs=5)
    assert found["over_ml"] == pytest.approx(96, abs=5)
    assert found["excise"] == "within"


# By hand from the CIPM table of water: kg in a container at SG 1.010.
@pytest.mark.parametrize(
    ("litres", "at_10", "at_12", "at_20"),
    [(20.457405, 20.656, 20.652, 20.625), (40.91481, 41.312, 41.303, 41.250),
     (81.82962, 82.623, 82.607, 82.500), (30, 30.29, 30.28, 30.25), (50, 50.48, 50.47, 50.41)],
)  # fmt: skip
def test_beer_weighs_what_was_worked_out_by_hand(
    litres: float, at_10: float, at_12: float, at_20: float
) -> None:
    for temp_c, kg in ((10, at_10), (12, at_12), (20, at_20)):
        weight = litres * beer_g_per_ml(Working(), 1.010, temp_c)
        assert weight == pytest.approx(kg, abs=0.006)


def test_what_a_point_eight_degrees_and_a_pint_weigh() -> None:
    """By hand: a point is 41 g of a firkin, 20 to 12 °C 53 g, a pint 574 g."""
    litres = 40.91481
    here = litres * beer_g_per_ml(Working(), 1.010, 12)
    assert litres * beer_g_per_ml(Working(), 1.011, 12) - here == pytest.approx(0.041, abs=0.0005)
    assert here - litres * beer_g_per_ml(Working(), 1.010, 20) == pytest.approx(0.053, abs=0.0015)
    assert 0.56826125 * beer_g_per_ml(Working(), 1.010, 12) == pytest.approx(0.574, abs=0.0005)


# OIML R 22 (1975): 5 % vol ethanol in water weighs 992.394 at 12 °C and 991.055 at 20 °C. Beer is
# taken to swell as water does: off by 0.006 %, 2 g in a firkin.
def test_beer_swells_nearly_as_water_does() -> None:
    ours = beer_g_per_ml(Working(), 1, 12) / beer_g_per_ml(Working(), 1, 20)
    assert ours == pytest.approx(992.394 / 991.055, rel=0.00006)


# SI 2023/806, Schedule 1: 0.5 L, or 0.5 % above 100 L, if measured; else 1, 2 or 3 L.
@pytest.mark.parametrize(
    ("capacity_ml", "method", "allowed_ml"),
    [
        (40_915, "weighed", 500),
        (40_915, "metered", 500),
        (40_915, "by_eye", 1000),
        (81_830, "by_eye", 1000),
        (100_000, "metered", 500),
        (100_014, "metered", 500.1),
        (163_659, "metered", 818.3),
        (163_659, "by_eye", 2000),
        (245_489, "by_eye", 3000),
        (10_000, "weighed", None),
    ],
)
def test_overfill_that_the_excise_allows(
    capacity_ml: int, method: str, allowed_ml: float | None
) -> None:
    found = result("fill_by_weight", **weighed(capacity_ml=capacity_ml, method=method))
    assert found["allowed_over_ml"] == allowed_ml


# By hand: a firkin may hold 41.41 L if weighed, 41.91 L by eye.
@pytest.mark.parametrize(
    ("method", "litres", "verdict"),
    [("weighed", 41.41, "within"), ("weighed", 41.42, "over"), ("by_eye", 41.91, "within"),
     ("by_eye", 41.92, "over")],
)  # fmt: skip
def test_a_firkin_against_the_excise(method: str, litres: float, verdict: str) -> None:
    gross_g = 9_600 + litres * 1000 * beer_g_per_ml(Working(), 1.010, 12)
    worked = ask("fill_by_weight", **weighed(gross_g=gross_g, method=method))
    assert worked["result"]["excise"] == verdict
    assert ("excise_overfilled" in worked["cautions"]) is (verdict == "over")


# SI 2006/659: a pin is a sealed pack of at most 25 L, tolerable error 204.6 mL, none below
# 20.048 L; a 20 L keg 200 mL, 19.6 L; 10 L 150 mL. A firkin is outside it.
@pytest.mark.parametrize(
    ("capacity_ml", "least_ml"),
    [(20_457, 20_047.8), (20_000, 19_600), (12_000, 11_700), (10_000, 9_700), (40_915, None)],
)
def test_least_that_a_sealed_pack_may_hold(capacity_ml: int, least_ml: float | None) -> None:
    """10 L itself falls into the 1.5 % of the row below, which is the same 150 mL."""
    found = result("fill_by_weight", **weighed(capacity_ml=capacity_ml))
    assert found["least_ml"] == least_ml


def test_an_underfilled_pin_must_not_be_sold() -> None:
    worked = ask("fill_by_weight", **weighed(gross_g=25_000, tare_g=5_000, capacity_ml=20_457))
    assert worked["result"]["packer"] == "under"
    assert "pack_underfilled" in worked["cautions"]


# HSE INDG143: 25 and 16 kg at waist height, close in.
@pytest.mark.parametrize(
    ("gross_g", "caution"),
    [(15_000, None), (16_001, "lifting_near_filter"), (25_001, "lifting_beyond_filter")],
)
def test_lifting_is_warned_of(gross_g: float, caution: str | None) -> None:
    cautions = ask("fill_by_weight", **weighed(gross_g=gross_g, tare_g=5_000))["cautions"]
    assert [name for name in cautions if name.startswith("lifting")] == ([caution] * bool(caution))


@unhurried
@given(st.floats(20_000, 60_000), st.floats(0, 40), st.floats(0.99, 1.05))
def test_warmer_or_lighter_beer_fills_more(gross_g: float, temp_c: float, gravity: float) -> None:
    """The same weight is more litres of lighter beer."""
    asked = weighed(gross_g=gross_g, beer_temp_c=temp_c, present_gravity=gravity)
    lighter = weighed(gross_g=gross_g, beer_temp_c=temp_c, present_gravity=gravity - 0.005)
    assert (
        result("fill_by_weight", **lighter)["volume_ml"]
        >= result("fill_by_weight", **asked)["volume_ml"]
    )
