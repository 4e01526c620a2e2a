"""The phone works out of the fleet what the server works out; a planted fault in it is found."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.fleet.calculations import FLEET

from .fleet_trade_arguments import RULES, inputs, own_settings
from .planting import assert_found
from .trade_answers import for_the_wire, worked
from .twin import Twin

PLANTED = [
    ("return_chance", "survival", "one.entered_day < day", "one.entered_day <= day"),
    ("return_chance", "survival", "one.days >= day", "one.days > day"),
    ("call_worth", "call-worth", "daysOut <= agreedDays", "daysOut < agreedDays"),
    ("fleet_needed", "needed", "found >= wanted", "found > wanted * 1.01"),
    ("fleet_needed", "needed", "fills * sentBack - ", "0 * sentBack - "),
    ("call_worth", "call-worth", "Math.max(...stays", "Math.min(...stays"),
    ("round_order", "stops", "turned < now", "turned < now - 2000"),
    ("round_order", "stops", "this.legM(here, n) < ", "this.legM(here, n) > "),
]


def compare(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Result, steps, cautions and figures; refusals with their facts."""
    asked, own = data.draw(inputs(rule)), data.draw(own_settings())
    answer = twin.ask(rule, for_the_wire(asked), for_the_wire(own))
    assert answer == ("value", worked(rule, asked, own))


def test_every_rule_of_the_fleet_is_asked_and_has_a_planted_fault() -> None:
    """A rule that is offered and not compared would go its own way."""
    assert RULES.keys() == FLEET.keys() == {rule for rule, *_ in PLANTED}


@pytest.mark.parametrize("rule", sorted(RULES))
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_phone_and_server_work_out_the_same(twin: Twin, rule: str, data: st.DataObject) -> None:
    """To the last shown digit."""
    compare(twin, rule, data)


@pytest.mark.parametrize(("rule", "file", "right", "wrong"), PLANTED)
def test_a_planted_fault_is_found(
    tmp_path: Path, rule: str, file: str, right: str, wrong: str
) -> None:
    """The comparison of this rule can fail."""
    assert_found(
        tmp_path,
        f"fleet/{file}.ts",
        right,
        wrong,
        lambda twin, data: compare(twin, rule, data),
    )
