"""Finings and cask hops: published rates, order, windows, sulphite, life and moves."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calculations import calculate
from cellarapp.domain.errors import OutOfRange

from .asking import FIRKIN, ask, result, unhurried


def dose_ml(product: str, rate: float, unit: str = "pints_per_barrel") -> float:
    found = result("finings_dose", product=product, rate=rate, rate_unit=unit, containers=FIRKIN)
    first: dict[str, float] = found["containers"][0]
    return first["dose_ml"]


# Murphy & Son, Function of Isinglass Finings (3-4 pints per barrel) and of Auxiliary Finings
# (1/4-1 pint); a pint of 568.26 mL in a barrel of 163.659 L, times 40.91 L.
@pytest.mark.parametrize(
    ("product", "pints", "per_l", "per_firkin"),
    [("isinglass", 3, 10.417, 426), ("isinglass", 4, 13.889, 568),
     ("auxiliary", 0.25, 0.868, 36), ("auxiliary", 0.5, 1.736, 71),
     ("auxiliary", 1, 3.472, 142)],
)  # fmt: skip
def test_published_rates_in_every_unit(
    product: str, pints: float, per_l: float, per_firkin: float
) -> None:
    """FINE-1: the supplier prints 11, 14, 0.9 and 3.5 mL/L, rounded; the pint decides."""
    worked = ask(
        "finings_dose",
        product=product,
        rate=pints,
        rate_unit="pints_per_barrel",
        containers=FIRKIN,
    )
    found = worked["result"]
    assert found["ml_per_l"] == per_l
    assert found["ml_per_hl"] == pytest.approx(per_l * 100, abs=0.051)
    assert found["containers"][0]["dose_ml"] == per_firkin
    assert worked["cautions"] == []


def test_a_rate_can_be_written_for_a_container() -> None:
    """A quarter of a pint in each firkin is 1 pint per barrel."""
    found = result(
        "finings_dose",
        product="auxiliary",
        rate=142.065,
        rate_unit="ml_per_container",
        per_ml=40915,
        containers=[{"volume_ml": 81830, "count": 3}],
    )
    assert found["pints_per_barrel"] == 1
    assert found["containers"][0]["dose_ml"] == 284
    assert found["total_ml"] == 852


@pytest.mark.parametrize(("product", "pints"), [("isinglass", 2.9), ("auxiliary", 1.1)])
def test_a_rate_outside_the_published_one_is_said(product: str, pints: float) -> None:
    worked = ask(
        "finings_dose",
        product=product,
        rate=pints,
        rate_unit="pints_per_barrel",
        containers=FIRKIN,
    )
    assert worked["cautions"] == ["finings_rate_unusual"]


@unhurried
@given(st.floats(0, 5), st.integers(1000, 200_000))
def test_finings_scale_with_litres(pints: float, volume_ml: int) -> None:
    found = result(
        "finings_dose",
        product="isinglass",
        rate=pints,
        rate_unit="pints_per_barrel",
        containers=[{"volume_ml": volume_ml, "count": 1}, {"volume_ml": 2 * volume_ml, "count": 4}],
    )
    one, two = (row["dose_ml"] for row in found["containers"])
    assert two == pytest.approx(2 * one, abs=1.51)
    assert found["total_ml"] == one + 4 * two


# Murphy & Son, Hop Requirements: usual 0.5-2 oz per barrel (3.5-14.2 g in a firkin), at most 8
# (57 g); 1 oz per barrel is 17.32 g/hL. Prints 9-35 and 140 g/hL, rounded.
@pytest.mark.parametrize(
    ("ounces", "per_hl", "per_firkin"),
    [(0.5, 8.66, 3.5), (1, 17.32, 7.1), (2, 34.64, 14.2), (8, 138.58, 56.7)],
)
def test_published_hop_rates(ounces: float, per_hl: float, per_firkin: float) -> None:
    found = result("cask_hops", rate=ounces, rate_unit="oz_per_barrel", containers=FIRKIN)
    assert found["g_per_hl"] == pytest.approx(per_hl, abs=0.006)
    assert found["containers"][0]["dose_g"] == per_firkin


# 57 g in a firkin is the most published; one brewer kept to 75 g before taps clogged.
@pytest.mark.parametrize(
    ("grams", "caution"),
    [(2, "hops_rate_unusual"), (20, "hops_rate_unusual"), (58, "hops_beyond_published"),
     (76, "hops_clog_tap")],
)  # fmt: skip
def test_many_hops_are_warned_of(grams: float, caution: str) -> None:
    """FINE-2: and any hops may set more sugar free."""
    asked = {"rate": grams, "rate_unit": "g_per_container", "per_ml": 40915}
    assert ask("cask_hops", containers=FIRKIN, **asked)["cautions"] == ["hops_may_add_co2", caution]


def order(product: str, *earlier: tuple[str, float], **other: Any) -> dict[str, Any]:
    rows = [{"product": name, "minutes_ago": minutes} for name, minutes in earlier]
    return result("finings_order", **{"product": product, "earlier": rows, "vegan": False, **other})


# Murphy & Son, Function of Auxiliary Finings: alginate at least 4 hours before isinglass.
@pytest.mark.parametrize(
    ("minutes", "allowed", "wait"), [(0, False, 240), (239, False, 1), (240, True, 0)]
)
def test_isinglass_waits_four_hours_for_alginate(minutes: float, allowed: bool, wait: int) -> None:
    """FINE-3: the minutes still to wait are said."""
    found = order("isinglass", ("auxiliary_alginate", minutes), ("auxiliary_silica", 5))
    assert (found["allowed"], found["wait_min"]) == (allowed, wait)


def test_the_last_alginate_decides() -> None:
    assert order("isinglass", ("auxiliary_alginate", 900), ("auxiliary_alginate", 60))[
        "because"
    ] == ["too_soon_after_alginate"]


def test_alginate_never_follows_isinglass_but_silica_may() -> None:
    """Murphy & Son, Operation of Finings Machines: auxiliary before isinglass."""
    assert order("auxiliary_alginate", ("isinglass", 600))["because"] == [
        "auxiliary_after_isinglass"
    ]
    assert order("auxiliary_silica", ("isinglass", 1))["allowed"]


@pytest.mark.parametrize(
    ("product", "other"),
    [("isinglass", "auxiliary_silica"), ("auxiliary_alginate", "isinglass")],
)
def test_finings_never_share_a_vessel(product: str, other: str) -> None:
    """Murphy & Son; Lallemand."""
    assert order(product, mixed_with=other)["because"] == ["one_vessel"]
    assert order(product, mixed_with=product)["allowed"]
    asked = {"product": product, "vegan": False, "earlier": []}
    assert "two_vessels" in ask("finings_order", **asked)["cautions"]


def test_a_vegan_beer_refuses_isinglass() -> None:
    """It is made of fish; auxiliary leaves a beer vegan."""
    assert order("isinglass", vegan=True)["because"] == ["vegan_beer"]
    assert order("auxiliary_silica", vegan=True)["still_vegan"]
    assert not order("auxiliary_silica", ("isinglass", 9), vegan=True)["still_vegan"]


@pytest.mark.parametrize(
    ("recipe", "fined", "vegan"), [(True, False, True), (True, True, False), (False, False, False)]
)
def test_vegan_needs_recipe_and_no_isinglass(recipe: bool, fined: bool, vegan: bool) -> None:
    """FINE-8."""
    assert result("vegan", recipe_vegan=recipe, isinglass_used=fined) == {"vegan": vegan}


# Murphy & Son: 0.5-2 million cells/mL, pH 3.7-4.1, 12-14 °C; either end is inside.
@pytest.mark.parametrize(
    ("field", "name", "value", "side", "caution"),
    [
        ("yeast_million_per_ml", "yeast_million_per_ml", 0.5, "inside", None),
        ("yeast_million_per_ml", "yeast_million_per_ml", 2, "inside", None),
        ("yeast_million_per_ml", "yeast_million_per_ml", 2.1, "above", "fining_at_risk"),
        ("yeast_million_per_ml", "yeast_million_per_ml", 0.4, "below", "conditioning_at_risk"),
        ("ph", "ph", 3.7, "inside", None),
        ("ph", "ph", 4.2, "above", "ph_outside"),
        ("fining_temp_c", "temp_c", 14, "inside", None),
        ("fining_temp_c", "temp_c", 11, "below", "fining_cold"),
        ("fining_temp_c", "temp_c", 15, "above", "fining_warm"),
    ],
)
def test_conditions_against_their_windows(
    field: str, name: str, value: float, side: str, caution: str | None
) -> None:
    """FINE-4: what was not measured is not judged.

    beer-brewing.com, chapter 13, allows 2-4 million cells: the supplier of the finings is
    followed, and above it is a risk, not a refusal.
    """
    worked = calculate("finings_conditions", {field: value})
    assert worked["result"][name] == side
    assert worked["cautions"] == ([caution] if caution else [])
    assert [one for one in worked["result"].values() if one is not None] == [side]


@pytest.mark.parametrize(("ph", "verdict"), [(4.05, "like"), (3.9, "like"), (4.06, "unlike")])
def test_ph_away_from_the_beers_own(ph: float, verdict: str) -> None:
    """Murphy & Son, pH of Beer: the brand's own within 0.15."""
    assert result("finings_conditions", ph=ph, brand_ph=3.9)["brand_ph"] == verdict


def test_nothing_measured_is_refused() -> None:
    with pytest.raises(OutOfRange):
        result("finings_conditions")


def test_sulphite_carried_in() -> None:
    """By hand: 13.9 mL/L x 500 mg/L + 3.47 x 300 = 8.0 mg/L (Murphy's upper figures)."""
    additions = [
        {"product": "isinglass", "ml_per_l": 13.9},
        {"product": "auxiliary", "ml_per_l": 3.47},
    ]
    found = result("sulphite", beer_so2_mg_per_l=0, additions=additions)
    assert found["carried_in_mg_per_l"] == pytest.approx(8.0, abs=0.01)


# Regulation 1169/2011, Annex II point 12: over 10 mg/L. 10.0 is not declared, 10.1 is.
@pytest.mark.parametrize(("own", "declare"), [(3.0, False), (3.1, True)])
def test_sulphite_is_declared_above_ten(own: float, declare: bool) -> None:
    """FINE-5: 7 mg/L carried in, as 14 mL/L of 500 mg/L."""
    additions = [{"product": "isinglass", "ml_per_l": 14, "so2_mg_per_l": 500}]
    worked = ask("sulphite", beer_so2_mg_per_l=own, additions=additions)
    assert worked["result"]["declare"] is declare
    assert ("declare_sulphites" in worked["cautions"]) is declare


# By hand: 13.9 mL/L x 500 mg/L is 6.95 mg/L; 25 mL/L would carry in 12.5 and has to be declared.
@pytest.mark.parametrize(("ml_per_l", "declare"), [(13.9, False), (25, True)])
def test_with_the_beers_own_not_known_only_what_is_carried_in_is_judged(
    ml_per_l: float, declare: bool
) -> None:
    """FINE-5: there is no total then, and nothing says that there is none to declare."""
    additions = [{"product": "isinglass", "ml_per_l": ml_per_l}]
    worked = ask("sulphite", additions=additions)
    assert worked["result"]["total_mg_per_l"] is None
    assert worked["result"]["declare"] is declare
    assert "beer_sulphite_not_known" in worked["cautions"]


# Murphy & Son, Function of Isinglass Finings: below 4 °C 6 months, 13 °C 3-4 months, fluctuating
# a month; Hough et al.: within hours at 25-30 °C. The lower end of each is followed.
@pytest.mark.parametrize(
    ("temp_c", "days"), [(3, 182), (4, 182), (10, 91), (13, 91), (20, 30), (24, 30), (25, 0)]
)
def test_life_of_isinglass(temp_c: float, days: int) -> None:
    """FINE-6: from receipt, by the warmest that it was kept at."""
    found = result(
        "finings_life",
        product="isinglass",
        received_on="2026-11-25",
        storage_temp_c=temp_c,
        today="2026-11-25",
    )
    assert found["days_left"] == days


def test_finings_past_their_life_are_said_to_be() -> None:
    asked = {"product": "isinglass", "received_on": "2026-08-01", "storage_temp_c": 12}
    last = ask("finings_life", **asked, today="2026-10-31")
    assert last["result"] == {"use_by": "2026-10-31", "days_left": 0, "past": False}
    over = ask("finings_life", **asked, today="2026-11-01")
    assert over["result"]["past"]
    assert "finings_past" in over["cautions"]


def test_frozen_finings_are_doubted() -> None:
    asked = {"product": "isinglass", "received_on": "2026-11-01", "today": "2026-11-02"}
    assert "finings_frozen" in ask("finings_life", **asked, storage_temp_c=-1)["cautions"]


@unhurried
@given(st.floats(-20, 45), st.floats(0, 20))
def test_warmer_storage_never_lengthens_life(temp_c: float, more: float) -> None:
    asked = {"product": "isinglass", "received_on": "2026-11-01", "today": "2026-11-02"}
    warmer = result("finings_life", **asked, storage_temp_c=min(45, temp_c + more))
    assert (
        warmer["days_left"] <= result("finings_life", **asked, storage_temp_c=temp_c)["days_left"]
    )


def test_moves_after_fining_are_counted() -> None:
    """FINE-7: three by default, which is from memory; the beer's own trial comes first."""
    assert ask("moves_after_fining", moves=3)["cautions"] == ["no_more_moves"]
    assert ask("moves_after_fining", moves=4)["result"]["too_many"]
    assert result("moves_after_fining", moves=4, resettles_most=5)["moves_left"] == 1
    own = calculate("moves_after_fining", {"moves": 4}, {"resettles_most": 5})
    assert own["result"]["moves_left"] == 1
