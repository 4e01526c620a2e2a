"""The phone works out what the server works out: figures, words, cautions, refusals."""

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain import bench
from cellarapp.domain.bench.calculations import BENCH
from cellarapp.domain.figures import FIGURES

from .trade_answers import UNROUNDED, for_the_wire, worked
from .trade_arguments import RULES, SETTINGS, inputs, own_settings
from .twin import Twin

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
}


def test_every_rule_of_the_bench_is_asked() -> None:
    """A rule that is offered and not compared would go its own way."""
    assert RULES.keys() == BENCH.keys()
    assert OVER.keys() == UNROUNDED.keys()


def test_every_setting_of_the_bench_is_tried() -> None:
    """A brewery's own value is taken alike on both sides."""
    files = Path(bench.__file__).parent.glob("*.py")
    used = {name for path in files for name in re.findall(r'setting\("(\w+)"', path.read_text())}
    assert used == {name for names in SETTINGS.values() for name in names}
    assert all("low" in FIGURES[name] for name in used)


@pytest.mark.parametrize("rule", sorted(RULES))
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_phone_and_server_work_out_the_same(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Result, steps, cautions and figures to the last shown digit; refusals with their facts."""
    asked, own = data.draw(inputs(rule)), data.draw(own_settings(rule))
    sort, answer = twin.ask(rule, for_the_wire(asked), for_the_wire(own))
    assert sort == "value", answer
    assert answer == worked(rule, asked, own)


def ends(low: float, high: float) -> st.SearchStrategy[float]:
    """Whole numbers where both ends are whole and near, as digits are; else any number."""
    return st.integers(int(low), int(high)) if (low, high) == (0, 4) else st.floats(low, high)


@pytest.mark.parametrize("rule", sorted(UNROUNDED))
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_unrounded_values_agree(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Within a billionth, before rounding hides a difference."""
    asked = [data.draw(ends(low, high)) for low, high in OVER[rule]]
    sort, answer = twin.ask(rule, *asked)
    assert sort == "value", answer
    assert answer == pytest.approx(UNROUNDED[rule](*asked), rel=1e-9, abs=1e-12)
