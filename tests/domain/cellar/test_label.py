"""Strength and allergens on a label."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from .asking import ask, result


def label(**other: Any) -> dict[str, Any]:
    usual = {"abv_tenths": 42, "cereals": ["barley"], "milk": False, "isinglass": False}
    return {**usual, **other}


# Regulation (EU) No 1169/2011, Annex XII: half a per cent either way up to 5.5 % vol, one above.
@pytest.mark.parametrize(
    ("shown", "true", "within"),
    [(40, 3.5, True), (40, 4.5, True), (40, 4.6, False), (40, 3.49, False),
     (60, 7.0, True), (60, 7.01, False), (55, 5.0, True), (55, 5.9, True), (55, 6.1, False),
     (56, 5.2, True)],
)  # fmt: skip
def test_strength_on_the_label_is_near_enough(shown: int, true: float, within: bool) -> None:
    """LABEL-4."""
    found = result("label_strength", label_abv_tenths=shown, measured_abv=true)
    assert found["within"] is within


def test_the_stricter_row_counts_below_the_label_too() -> None:
    """LABEL-4: 6.0 for a true 5.0 passes by the label's row and fails by the true strength's.

    Going by the label alone it would pass; the stricter is followed, as where the label is 5.5.
    """
    found = result("label_strength", label_abv_tenths=60, measured_abv=5.0)
    assert (found["within"], found["unsettled"]) == (False, True)


def test_rows_that_differ_are_flagged() -> None:
    """LABEL-4: 5.5 for a true 6.1 fails at a half and passes at one; the text settles neither."""
    found = ask("label_strength", label_abv_tenths=55, measured_abv=6.1)
    assert found["result"] == {
        "within": False, "unsettled": True, "allowed_abv": 0.5, "off_by_abv": 0.6,
    }  # fmt: skip
    assert "strength_row_unsettled" in found["cautions"]


@pytest.mark.parametrize(
    ("abv_tenths", "words", "needed"),
    [(42, "Alc. 4.2 % vol", True), (100, "Alc. 10.0 % vol", True), (12, "Alc. 1.2 % vol", False),
     (13, "Alc. 1.3 % vol", True), (0, "Alc. 0.0 % vol", False)],
)  # fmt: skip
def test_strength_has_one_decimal_and_is_needed_above_1_2(
    abv_tenths: int, words: str, needed: bool
) -> None:
    """LABEL-1: Article 9(1)(k)."""
    found = result("label", **label(abv_tenths=abv_tenths))
    assert (found["strength_words"], found["strength_needed"]) == (words, needed)


def test_each_cereal_is_named() -> None:
    """LABEL-3: Annex II points 1 and 7; each once, whatever the order."""
    asked = label(cereals=["wheat", "oats", "barley", "wheat"], milk=True, sulphites_mg_per_l=12)
    found = result("label", **asked)
    assert found["contains"] == [
        "barley (gluten)", "oats (gluten)", "wheat (gluten)", "milk", "sulphites",
    ]  # fmt: skip
    assert found["contains_words"] == (
        "Contains barley (gluten), oats (gluten), wheat (gluten), milk, sulphites"
    )


# Annex II point 12: above 10 mg/L in the drink as offered.
@pytest.mark.parametrize(("mg_per_l", "declared"), [(9.9, False), (10.0, False), (10.1, True)])
def test_sulphites_are_declared_above_ten(mg_per_l: float, declared: bool) -> None:
    """LABEL-2."""
    found = result("label", **label(sulphites_mg_per_l=mg_per_l))
    assert ("sulphites" in found["contains"]) is declared


def test_sulphites_not_known_are_said_to_be_not_known() -> None:
    """LABEL-2: nothing is declared, and a person is told."""
    found = ask("label", **label())
    assert "sulphites_not_known" in found["cautions"]
    assert found["result"]["contains"] == ["barley (gluten)"]


def test_isinglass_is_no_allergen_in_beer_and_still_not_vegan() -> None:
    """LABEL-3: Annex II point 4(b)."""
    found = ask("label", **label(isinglass=True, sulphites_mg_per_l=0))
    assert found["result"]["contains"] == ["barley (gluten)"]
    assert found["result"]["may_be_vegan"] is False
    assert "fined_is_not_vegan" in found["cautions"]


def test_a_beer_without_allergens_says_nothing() -> None:
    found = result("label", **label(cereals=[], sulphites_mg_per_l=0))
    assert (found["contains_words"], found["may_be_vegan"]) == ("", True)


def test_what_must_stand_on_the_cask_is_listed() -> None:
    """LABEL-3: Article 8(7), supplies to caterers."""
    assert result("label", **label())["on_the_cask"] == ["name", "best_before", "maker"]


@given(st.integers(0, 300), st.integers(0, 3000))
def test_a_label_nearer_to_the_truth_never_fails_first(shown: int, true_hundredths: int) -> None:
    """LABEL-4: on one side of the truth, and within one row."""
    true = true_hundredths / 100
    here = result("label_strength", label_abv_tenths=shown, measured_abv=true)
    if here["within"]:
        assert here["off_by_abv"] <= here["allowed_abv"]
