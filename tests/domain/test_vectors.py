"""The rules against the vectors: values from sources, or worked out by hand from the rule."""

import pytest

from ..twins import reference
from ..vectors.reading import Case, cases, faults


@pytest.mark.parametrize("case", list(cases()), ids=lambda c: f"{c.rule}.{c.twin}.{c.case['id']}")
def test_rule_answers_as_its_vectors_say(case: Case) -> None:
    """ORD, LIFE, READY, TRIP, NUM, CAL, SIZE: each case is named in the failing test's id."""
    assert faults(case, reference.answer) == []
