"""Numbers: one way of writing, whatever is typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.errors import DomainError, NotANumber
from cellarapp.domain.numbers import (
    bare_digits,
    is_number,
    matches,
    normal_number,
    run_of_numbers,
)

numbers = st.from_regex(r"[A-Z0-9]{1,8}", fullmatch=True).filter(is_number)


@given(numbers, st.sampled_from(["", " ", "-", ".", "  "]))
def test_number_is_the_same_however_it_is_typed(number: str, between: str) -> None:
    """NUM: small letters, and anything between that people put there."""
    assert normal_number(between.join(number.lower())) == number


@given(st.text(max_size=12))
def test_text_is_a_number_or_is_refused(text: str) -> None:
    """NUM: nothing else comes of it."""
    try:
        number = normal_number(text)
    except NotANumber:
        return
    assert is_number(number)
    assert normal_number(number) == number


@given(numbers)
def test_number_is_found_by_itself_and_by_its_digits(number: str) -> None:
    """NUM: the pad offers every container with these digits."""
    assert matches(number, number)
    assert matches(bare_digits(number), number)


@given(numbers, numbers)
def test_run_holds_numbers_only(first: str, last: str) -> None:
    """NUM: two to a hundred of them, each once, the first first."""
    try:
        run = run_of_numbers(first, last)
    except NotANumber:
        return
    assert run[0] == first
    assert 2 <= len(run) == len(set(run)) <= 100
    assert all(map(is_number, run))


def test_run_of_a_hundred_is_the_longest() -> None:
    """NUM: 1 to 100."""
    assert run_of_numbers("1", "100") == [str(n) for n in range(1, 101)]


def test_refusal_says_what_it_was_given() -> None:
    """NUM: each refusal is a DomainError with a slug that the phone and the API both know."""
    with pytest.raises(DomainError, match="not-a-number") as refusal:
        normal_number("firkin")
    assert refusal.value.facts == {"text": "firkin"}
