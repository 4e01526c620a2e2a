"""The phone works out what the server works out: figures, words, cautions, refusals."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.bench.calculations import BENCH
from cellarapp.domain.inputs import RANGES

from .trade_answers import UNROUNDED, for_the_wire, worked
from .trade_arguments import RULES, inputs, own_settings
from .twin import Twin

OVER: dict[str, tuple[tuple[float, float], ...]] = {
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
    assert RANGES


@pytest.mark.parametrize("rule", sorted(RULES))
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_phone_and_server_work_out_the_same(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Result, steps, cautions and figures to the last shown digit; refusals with their facts."""
    asked, own = data.draw(inputs(rule)), data.draw(own_settings())
    sort, answer = twin.ask(rule, for_the_wire(asked), for_the_wire(own))
    assert sort == "value", answer
    assert answer == worked(rule, asked, own)


@pytest.mark.parametrize("rule", sorted(UNROUNDED))
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_unrounded_values_agree(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Within a billionth, before rounding hides a difference."""
    asked = [data.draw(st.floats(low, high)) for low, high in OVER[rule]]
    sort, answer = twin.ask(rule, *asked)
    assert sort == "value", answer
    assert answer == pytest.approx(UNROUNDED[rule](*asked), rel=1e-9, abs=1e-12)
