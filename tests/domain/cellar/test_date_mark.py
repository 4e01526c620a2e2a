"""The date as the law writes it; the lot beside it."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.cellar.date_mark import FORMS, months_after
from cellarapp.domain.errors import NotAmong

from .asking import ask, result


def marked(days_on: str, **other: Any) -> dict[str, Any]:
    usual = {"packed_on": "2026-03-06", "best_before_on": days_on, "abv_tenths": 42}
    return result("date_mark", **{**usual, **other})


# Regulation (EU) No 1169/2011, Annex X point 1: up to 3 months day and month, up to 18 months
# month and year, beyond that the year is enough.
@pytest.mark.parametrize(
    ("best_before_on", "enough"),
    [("2026-04-17", "day_month"), ("2026-06-06", "day_month"), ("2026-06-07", "month_year"),
     ("2026-07-04", "month_year"), ("2027-09-06", "month_year"), ("2027-09-07", "year"),
     ("2027-10-27", "year"), ("2026-03-06", "day_month")],
)  # fmt: skip
def test_length_decides_how_much_of_the_date_is_enough(best_before_on: str, enough: str) -> None:
    """MARK-1."""
    assert marked(best_before_on)["enough"] == enough


@pytest.mark.parametrize(
    ("best_before_on", "form", "words"),
    [
        ("2026-04-17", "day_month", "Best before 17 April"),
        ("2026-04-17", "day_month_year", "Best before 17 April 2026"),
        ("2026-07-04", "month_year", "Best before end June 2026"),
        ("2027-10-27", "year", "Best before end 2026"),
        ("2026-07-31", "month_year", "Best before end July 2026"),
        ("2027-12-31", "year", "Best before end 2027"),
        ("2027-01-04", "month_year", "Best before end December 2026"),
    ],
)
def test_the_words_are_those_of_the_law(best_before_on: str, form: str, words: str) -> None:
    """MARK-2: a day shown is "before", a month or a year alone "before end"."""
    assert marked(best_before_on, form=form)["words"] == words


# Worked by hand: "end July" would promise 27 days more than 4 July, "end 2027" 65 more than
# 27 October 2027.
@pytest.mark.parametrize(
    ("best_before_on", "form", "more", "given_up"),
    [("2026-07-04", "month_year", 27, 4), ("2027-10-27", "year", 65, 300)],
)
def test_the_month_or_year_itself_would_promise_more(
    best_before_on: str, form: str, more: int, given_up: int
) -> None:
    """MARK-2: so the one before is named, and what that gives up is said."""
    found = marked(best_before_on, form=form)
    assert found["itself_would_promise_more_days"] == more
    assert found["gives_up_days"] == given_up


def test_a_cask_shows_day_month_and_year_unless_told_otherwise() -> None:
    """MARK-3: more is always allowed."""
    found = marked("2027-10-27")
    assert found["words"] == "Best before 27 October 2027"
    assert [each["form"] for each in found["allowed"]] == list(FORMS)


def test_a_barer_form_than_its_class_is_refused() -> None:
    """MARK-3."""
    with pytest.raises(NotAmong) as refused:
        marked("2026-04-17", form="month_year")
    assert refused.value.facts["choices"] == ["day_month_year", "day_month"]


# Annex X point 1(d): 10 % vol or more needs no date.
@pytest.mark.parametrize(("abv_tenths", "needed"), [(99, True), (100, False), (101, False)])
def test_strong_beer_needs_no_date(abv_tenths: int, needed: bool) -> None:
    """MARK-3."""
    assert marked("2026-04-17", abv_tenths=abv_tenths)["needed"] is needed


def test_above_ten_per_cent_is_a_reading_that_a_brewery_may_take() -> None:
    """MARK-3: one brewery's page says above 10 %."""
    own = {"date_mark_exempt_from_abv_tenths": 101}
    asked = {"packed_on": "2026-03-06", "best_before_on": "2026-04-17", "abv_tenths": 100}
    assert result("date_mark", own, **asked)["needed"] is True


@pytest.mark.parametrize(
    ("day", "months", "on"),
    [("2026-11-30", 3, "2027-02-28"), ("2027-11-30", 3, "2028-02-29"),
     ("2026-01-31", 1, "2026-02-28"),
     ("2026-12-06", 1, "2027-01-06"), ("2026-03-06", 18, "2027-09-06")],
)  # fmt: skip
def test_a_month_ends_on_the_same_day_or_its_last(day: str, months: int, on: str) -> None:
    """MARK-1."""
    assert months_after(day, months) == on


@given(st.integers(0, 1200))
def test_no_form_ever_promises_more_than_the_date(days: int) -> None:
    """MARK-2: whatever form is allowed; and a barer form never promises more than a fuller one."""
    on = result("best_before", from_on="2026-03-06", window_days=days + 1)["best_before_on"]
    forms = marked(on)["allowed"]
    assert all(each["promises_until_on"] <= on for each in forms)
    assert all(each["gives_up_days"] >= 0 for each in forms)
    assert forms[0]["promises_until_on"] == on


@pytest.mark.parametrize(
    ("gyle", "racked_on", "mark"),
    [("128", "2026-03-06", "L128-060326"), ("g 12/3", "2026-03-06", "LG12/3-060326"),
     ("a", "2027-12-31", "LA-311227"), ("2026 - 7", "2026-03-07", "L2026-7-070326")],
)  # fmt: skip
def test_a_lot_is_one_day_s_racking_of_one_gyle(gyle: str, racked_on: str, mark: str) -> None:
    """LOT-1: with the letter that Directive 2011/91/EU gives."""
    assert result("lot_mark", gyle_number=gyle, racked_on=racked_on)["mark"] == mark


@pytest.mark.parametrize(
    ("dated", "must"),
    [("day_month_year", False), ("day_month", False), ("month_year", True), ("year", True),
     ("none", True)],
)  # fmt: skip
def test_a_date_with_day_and_month_stands_for_the_lot(dated: str, must: bool) -> None:
    """LOT-1: it is printed all the same."""
    found = result("lot_mark", gyle_number="128", racked_on="2026-03-06", dated=dated)
    assert found["must_be_shown"] is must
    assert found["mark"] == "L128-060326"


@pytest.mark.parametrize("gyle", ["", " 128", "128\n", "x" * 21, "12é", None, 128])
def test_a_gyle_s_number_is_letters_and_digits(gyle: object) -> None:
    """LOT-1: it is printed, and read out on the telephone."""
    with pytest.raises(NotAmong) as refused:
        ask("lot_mark", gyle_number=gyle, racked_on="2026-03-06")
    assert refused.value.facts["field"] == "gyle_number"
