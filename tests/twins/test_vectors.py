"""The phone's rules against the vectors that the server's rules are held to."""

import pytest

from ..vectors.reading import Case, cases, faults
from .twin import Twin


@pytest.mark.parametrize("case", list(cases()), ids=lambda c: f"{c.rule}.{c.twin}.{c.case['id']}")
def test_phone_answers_as_the_vectors_say(twin: Twin, case: Case) -> None:
    """ORD, LIFE, READY, TRIP, NUM, CAL, SIZE, TEMP: the same cases, asked of the phone."""
    assert faults(case, twin.ask) == []
