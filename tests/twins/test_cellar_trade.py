"""The phone works out for the cellar what the server works out: figures, words and refusals."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.cellar import cooling
from cellarapp.domain.cellar.calculations import CELLAR
from cellarapp.domain.cellar.gauging import Inside

from .cellar_trade_arguments import CELLAR_SETTINGS, RULES, inputs, own_settings
from .trade_answers import for_the_wire, worked
from .twin import Twin

UNROUNDED = {
    "hours_to": lambda way, air, share: cooling.hours_to(air + way, air, air + way * share, 19.67),
    "temp_after": lambda from_c, air_c, hours: cooling.temp_after(from_c, air_c, hours, 19.67),
    "full_ml": lambda bung, head, length: Inside(bung, bung * head, length).full_ml(),
    "lying_ml": lambda bung, head, length, wet: Inside(bung, bung * head, length).lying_ml(
        wet * bung
    ),
    "standing_ml": lambda bung, head, length, wet: Inside(bung, bung * head, length).standing_ml(
        wet * length
    ),
}
INSIDE = ((50, 2000), (0.1, 1), (50, 2000))
OVER: dict[str, tuple[tuple[float, float], ...]] = {
    "hours_to": ((0.01, 60), (-30, 60), (0.001, 1)),
    "temp_after": ((-5, 60), (-30, 60), (0, 1000)),
    "full_ml": INSIDE,
    "lying_ml": (*INSIDE, (0.001, 1)),
    "standing_ml": (*INSIDE, (0.001, 1)),
}


def test_every_rule_of_the_cellar_is_asked() -> None:
    """A rule that is offered and not compared would go its own way."""
    assert RULES.keys() == CELLAR.keys()
    assert OVER.keys() == UNROUNDED.keys()
    assert "settle_hours" in CELLAR_SETTINGS


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
    assert answer == pytest.approx(UNROUNDED[rule](*asked), rel=1e-9, abs=1e-9)
