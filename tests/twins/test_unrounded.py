"""What stands behind the rounded figures agrees before rounding hides a difference."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from .trade_answers import UNROUNDED
from .twin import Twin

INSIDE = ((50, 2000), (0.1, 1), (50, 2000))
OVER: dict[str, tuple[tuple[float, float], ...]] = {
    "half_up": ((-1e9, 1e9), (0, 4)),
    "cut": ((0, 1e9), (0, 4)),
    "plato": ((0.98, 1.18),),
    "water_g_per_ml": ((0, 40),),
    "extract_g_per_l": ((0.98, 1.18),),
    "residual_vol": ((0, 30),),
    "from_extract_vol": ((0.98, 1.18), (0.98, 1.1)),
    "sealed_bar": ((0, 5), (0, 45)),
    "keg_bar": ((0, 20), (2, 3)),
    "co2_per_gram": ((0.1, 1.1),),
    "strength_rise_pct": ((0.1, 1.1), (0, 40)),
    "hours_to": ((0.01, 60), (-30, 60), (0.001, 1)),
    "temp_after": ((-5, 60), (-30, 60), (0, 1000)),
    "full_ml": INSIDE,
    "lying_ml": (*INSIDE, (0.001, 1)),
    "standing_ml": (*INSIDE, (0.001, 1)),
}


def ends(low: float, high: float) -> st.SearchStrategy[float]:
    """Whole numbers where both ends are whole and near, as digits are; else any number."""
    return st.integers(int(low), int(high)) if (low, high) == (0, 4) else st.floats(low, high)


def test_all_of_them_are_asked() -> None:
    assert OVER.keys() == UNROUNDED.keys()


@pytest.mark.parametrize("rule", sorted(UNROUNDED))
@settings(max_examples=100, deadline=None)
@given(data=st.data())
def test_unrounded_values_agree(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Within a billionth."""
    asked = [data.draw(ends(low, high)) for low, high in OVER[rule]]
    sort, answer = twin.ask(rule, *asked)
    assert sort == "value", answer
    assert answer == pytest.approx(UNROUNDED[rule](*asked), rel=1e-9, abs=1e-9)
