"""Sizes of containers against the imperial gallon."""

from fractions import Fraction

import pytest

from cellarapp.domain.containers import CONTAINER_KINDS, LARGEST_ML, most_that_fits_ml
from cellarapp.domain.figures import figure

GALLON_L = Fraction("4.54609")
"""Weights and Measures Act 1985, section 1 and Schedule 1 Part IV."""

GALLONS = {
    "pin": Fraction("4.5"),
    "firkin": Fraction(9),
    "ten": Fraction(10),
    "eleven": Fraction(11),
    "kilderkin": Fraction(18),
    "twenty_two": Fraction(22),
    "barrel": Fraction(36),
    "hogshead": Fraction(54),
}
"""Rankin Brothers & Sons, Cask Beer Containers & Closure Selection, Bristol, 16 February 2017."""

LITRES = {
    "pin": "20.457405",
    "firkin": "40.91481",
    "ten": "45.4609",
    "eleven": "50.00699",
    "kilderkin": "81.82962",
    "twenty_two": "100.01398",
    "barrel": "163.65924",
    "hogshead": "245.48886",
}
"""Gallons times 4.54609, worked by hand."""


@pytest.mark.parametrize("kind", sorted(GALLONS))
def test_cask_holds_its_gallons(kind: str) -> None:
    """SIZE: to the nearest whole millilitre of the exact volume."""
    litres = GALLONS[kind] * GALLON_L
    assert litres == Fraction(LITRES[kind])
    assert CONTAINER_KINDS[kind]["capacity_ml"] == int(litres * 1000 + Fraction(1, 2))
    assert CONTAINER_KINDS[kind]["gallons"] == GALLONS[kind]
    assert CONTAINER_KINDS[kind]["shape"] == "cask"


@pytest.mark.parametrize(("kind", "litres"), [("keg_20", 20), ("keg_30", 30), ("keg_50", 50)])
def test_keg_holds_its_litres(kind: str, litres: int) -> None:
    """SIZE: a keg is named for them. The 50 L keg and the eleven are not the same."""
    assert CONTAINER_KINDS[kind]["capacity_ml"] == litres * 1000
    assert CONTAINER_KINDS[kind]["shape"] == "keg"
    assert CONTAINER_KINDS["eleven"]["capacity_ml"] != CONTAINER_KINDS["keg_50"]["capacity_ml"]


def test_gallon_is_the_one_in_the_act() -> None:
    """SIZE: 4.54609 litres exactly, and eight pints to it."""
    assert Fraction(str(figure("imperial_gallon_ml"))) == GALLON_L * 1000


def test_kind_of_no_usual_size_is_bounded_by_the_largest() -> None:
    """SIZE: what is registered as another cask or keg says itself what it holds."""
    unusual = {k for k, kind in CONTAINER_KINDS.items() if kind["capacity_ml"] is None}
    assert unusual == {"other_cask", "other_keg"}
    assert most_that_fits_ml(None) == most_that_fits_ml(LARGEST_ML)
