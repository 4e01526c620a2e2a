"""The one rounding rule, and its twin's reasons."""

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.rounding import cut, half_up, half_up_whole


@pytest.mark.parametrize(
    ("value", "digits", "rounded"),
    [
        (2.5, 0, 3),
        (3.5, 0, 4),
        (-2.5, 0, -3),
        (0.5, 0, 1),
        (1.005, 2, 1.01),  # held in binary as 1.00499999999999989...
        (2.675, 2, 2.68),
        (1.0049999, 2, 1.0),
        (-0.04, 1, 0),
        (4.35, 1, 4.4),
        (100.449, 1, 100.4),
    ],
)
def test_halves_go_away_from_nought(value: float, digits: int, rounded: float) -> None:
    found = half_up(value, digits)
    assert found == rounded
    assert math.copysign(1, found) == math.copysign(1, rounded)


def test_a_last_bit_does_not_decide() -> None:
    """Another language's exp may give the number before or after."""
    for value in (0.125, 2.345, 1234.565):
        before, after = math.nextafter(value, 0), math.nextafter(value, math.inf)
        assert half_up(before, 2) == half_up(value, 2) == half_up(after, 2)


@pytest.mark.parametrize(
    ("value", "digits", "kept"), [(4.1925, 1, 4.1), (4.2, 1, 4.2), (4.19999, 1, 4.1), (0.3, 1, 0.3)]
)
def test_cut_does_not_round(value: float, digits: int, kept: float) -> None:
    assert cut(value, digits) == kept


def test_cut_reaches_what_binary_holds_as_a_little_less() -> None:
    """0.1 + 0.7 is held as 0.7999999999999999."""
    assert cut(0.1 + 0.7, 1) == 0.8


@settings(deadline=None)
@given(st.integers(-(10**9), 10**9), st.integers(0, 4))
def test_decimals_as_written_round_as_on_paper(thousandths: int, digits: int) -> None:
    written = Decimal(thousandths) / 1000
    on_paper = written.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)
    assert half_up(float(written), digits) == float(on_paper)


@settings(deadline=None)
@given(st.floats(-1e9, 1e9))
def test_the_nearest_whole_number_is_near(value: float) -> None:
    assert abs(half_up_whole(value) - value) <= 0.5 + abs(value) * 2e-12
