"""What a rule is asked is looked at first: field, range and reason come with every refusal."""

from contextlib import nullcontext
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.errors import NotAmong, OutOfRange
from cellarapp.domain.inputs import (
    Asked,
    choice_of,
    day_of,
    number_in,
    number_of,
    whole_in,
    yes_or_no,
)

# What people and broken senders give for a number, and how the refusal shows it.
WRONG: list[tuple[object, object]] = [
    (None, None),
    ("", ""),
    ("20", "20"),
    ("20 °C", "20 °C"),
    (True, True),
    (float("nan"), "NaN"),
    (float("inf"), "infinite"),
    (float("-inf"), "infinite"),
    (10**400, "infinite"),
    (-0.001, -0.001),
    (30.001, 30.001),
    ([20], "not a number"),
    ({"value": 20}, "not a number"),
]


@pytest.mark.parametrize(("given_value", "shown"), WRONG)
def test_what_is_no_number_in_range_is_refused(given_value: object, shown: object) -> None:
    with pytest.raises(OutOfRange) as refused:
        number_in("temp_c", given_value, 0, 30, "°C", "The curve ends there.")
    assert refused.value.facts == {
        "field": "temp_c",
        "given": shown,
        "low": 0,
        "high": 30,
        "unit": "°C",
        "why": "The curve ends there.",
    }


@pytest.mark.parametrize("value", [0, 30, 12.5, 1e-300])
def test_either_end_is_inside(value: float) -> None:
    assert number_in("temp_c", value, 0, 30, "°C", "") == value


def test_a_range_may_be_open() -> None:
    assert number_in("x", -1e300, None, None, "", "") == -1e300


@pytest.mark.parametrize("value", [2.5, "3", None, 0, 6, float("nan")])
def test_a_whole_number_is_whole(value: object) -> None:
    with pytest.raises(OutOfRange) as refused:
        whole_in("count", value, 1, 5, "casks", "")
    assert refused.value.facts["unit"] == "whole casks"


def test_a_whole_number_may_come_as_a_decimal() -> None:
    """JSON from JavaScript does not tell 3 from 3.0."""
    assert whole_in("count", 3.0, 1, 5, "casks", "") == 3


@pytest.mark.parametrize("value", [None, "", "c", 1, True, ["a"]])
def test_a_choice_is_one_of_those_named(value: object) -> None:
    with pytest.raises(NotAmong) as refused:
        choice_of("sugar", value, ("a", "b"), "Known sugars.")
    assert refused.value.facts["choices"] == ["a", "b"]
    assert refused.value.facts["why"] == "Known sugars."


@pytest.mark.parametrize("value", [None, 0, 1, "yes", "true"])
def test_yes_and_no_are_said_as_such(value: object) -> None:
    with pytest.raises(NotAmong):
        yes_or_no("vegan", value, "")


@pytest.mark.parametrize("value", [None, "", "2026-02-29", "25/11/2026", "1999-12-31", 20261125])
def test_a_day_is_a_day(value: object) -> None:
    with pytest.raises(OutOfRange) as refused:
        day_of("today", value)
    assert refused.value.facts["field"] == "today"
    assert refused.value.facts["unit"] == "day"


def test_a_day_is_handed_on() -> None:
    assert day_of("today", "2024-02-29") == "2024-02-29"


def test_a_place_in_a_list_is_named() -> None:
    with pytest.raises(OutOfRange) as refused:
        number_of("count", 0, at="containers[2].")
    assert refused.value.facts["field"] == "containers[2].count"


def test_an_unknown_field_is_refused() -> None:
    """A volume in pints must not be passed over in silence."""
    with pytest.raises(NotAmong) as refused:
        Asked({"volume_pints": 72}, "volume_ml")
    assert refused.value.facts["field"] == "volume_pints"
    assert refused.value.facts["choices"] == ["volume_ml"]


@pytest.mark.parametrize("inputs", [None, [], "volume_ml", 3])
def test_fields_come_by_name(inputs: object) -> None:
    with pytest.raises(NotAmong):
        Asked(inputs, "volume_ml")


@pytest.mark.parametrize("value", [None, "a list", {}, [1, 2, 3]])
def test_a_list_is_no_longer_than_it_may_be(value: object) -> None:
    with pytest.raises(OutOfRange) as refused:
        Asked({"rows": value}, "rows").parts("rows", 2, "rows")
    assert refused.value.facts["high"] == 2


@settings(deadline=None)
@given(st.recursive(st.none() | st.booleans() | st.floats() | st.text(), st.lists))
def test_whatever_comes_a_number_or_a_refusal_comes_of_it(value: Any) -> None:
    """Nothing else, and no other error."""
    right = isinstance(value, float) and 0 <= value <= 1
    with nullcontext() if right else pytest.raises(OutOfRange):
        assert number_in("x", value, 0, 1, "", "") == value
