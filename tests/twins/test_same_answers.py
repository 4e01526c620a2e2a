"""The phone's rules give the same answer as the server's, error for error."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.calculations import CALCULATIONS

from ..domain.histories import canonical
from . import reference
from .arguments import ARGUMENTS
from .twin import Twin

# The calculations have comparisons of their own, with arguments by name.
assert ARGUMENTS.keys() == reference.RULES.keys() - CALCULATIONS.keys()


@pytest.mark.parametrize("rule", sorted(ARGUMENTS))
@settings(max_examples=300, deadline=None)  # the machine may be busy with something else
@given(data=st.data())
def test_phone_and_server_say_the_same(twin: Twin, rule: str, data: st.DataObject) -> None:
    """Every rule, over its whole range and beyond."""
    args = data.draw(ARGUMENTS[rule])
    assert canonical(twin.ask(rule, *args)) == canonical(reference.answer(rule, *args))


def test_an_unknown_rule_is_an_error(twin: Twin) -> None:
    """A rule that the twin lacks is noticed, not taken for agreement."""
    assert twin.ask("no_such_rule") == ("error", "no rule no_such_rule")
