"""The phone's rules give the same answer as the server's, error for error."""

import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from cellarapp.domain import bench
from cellarapp.domain.figures import FIGURES

from . import reference
from .arguments import ARGUMENTS
from .comparing import assert_alike, assert_alike_where_known
from .trade_arguments import SETTINGS
from .twin import Twin

WINDING = {
    *("ledger", "records", "readiness", "ready", "plan_back", "read_log"),
    *("primings", "racking_plan", "fleet_needed", "call_worth"),
}
"""Rules of many branches, which take more examples."""


def test_every_rule_is_asked() -> None:
    """A rule that is offered and not compared would go its own way."""
    assert ARGUMENTS.keys() == reference.RULES.keys()
    assert ARGUMENTS.keys() >= WINDING


def test_every_setting_of_the_bench_is_tried() -> None:
    """A brewery's own value is taken alike on both sides."""
    files = Path(bench.__file__).parent.glob("*.py")
    asked = re.compile(r'setting(?:_list)?\("(\w+)"')
    used = {name for path in files for name in asked.findall(path.read_text())}
    assert used == {name for names in SETTINGS.values() for name in names}
    assert all("low" in FIGURES[name] for name in used)


@pytest.mark.parametrize("rule", sorted(ARGUMENTS))
def test_phone_and_server_say_the_same_of_what_is_known_to_tell(twin: Twin, rule: str) -> None:
    """Whatever finds a planted fault is asked of the rules as they are."""
    assert_alike_where_known(twin, rule)


@pytest.mark.parametrize("rule", sorted(ARGUMENTS))
def test_phone_and_server_say_the_same(twin: Twin, rule: str) -> None:
    """Every rule, over its whole range and beyond; of calculations also steps and cautions."""

    @settings(max_examples=200 if rule in WINDING else 80, deadline=None)
    @given(args=ARGUMENTS[rule])
    def compare(args: Any) -> None:
        assert_alike(twin, rule, args)

    compare()


@pytest.mark.parametrize("month", [3, 10])
def test_the_clocks_change_in_the_same_hour_in_every_year(twin: Twin, month: int) -> None:
    """London's time on every day that may be the night, to the end of what the calendar takes."""
    days = [date(year, month, day) for year in range(1995, 2200) for day in range(22, 32)]
    for day in days:
        for clock in ("00:59:59.999", "01:00:00.000"):
            assert_alike(twin, "london_minute", [f"{day}T{clock}Z"])


def test_an_unknown_rule_is_an_error(twin: Twin) -> None:
    """A rule that the twin lacks is noticed, not taken for agreement."""
    assert twin.ask("no_such_rule") == ("error", "no rule no_such_rule")
