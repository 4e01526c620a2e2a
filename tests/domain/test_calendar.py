"""London's calendar against the law's own words, and written forms against themselves."""

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calendar import (
    add_days,
    days_between,
    london_date,
    parse_day,
    parse_instant,
    same_time_after,
    write_instant,
)
from cellarapp.domain.errors import NotADate, NotATime

moments = st.datetimes(datetime(2003, 1, 1), datetime(2037, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001
days = st.dates(date(2000, 1, 1), date(2090, 1, 1)).map(date.isoformat)


def last_sunday(year: int, month: int) -> datetime:
    """The Summer Time Order 2002: the last Sunday in March, and in October, at one o'clock UTC."""
    last = datetime(year, month, 31, 1, tzinfo=UTC)
    return last - timedelta(days=(last.weekday() + 1) % 7)


def london_by_the_order(moment: datetime) -> date:
    """The day in London, reckoned from the words of the order and from nothing else."""
    summer = last_sunday(moment.year, 3) <= moment < last_sunday(moment.year, 10)
    return (moment + timedelta(hours=1 if summer else 0)).date()


near_midnight = st.builds(
    lambda day, minutes: (
        datetime(day.year, day.month, day.day, tzinfo=UTC) + timedelta(minutes=minutes)
    ),
    st.dates(date(2003, 1, 1), date(2037, 12, 31)),
    st.integers(-90, 90),
)


@given(moments | near_midnight)
def test_day_in_london_is_the_one_by_the_order(moment: datetime) -> None:
    """CAL: the time zone files and the law say the same."""
    assert london_date(write_instant(moment)) == london_by_the_order(moment).isoformat()


@pytest.mark.parametrize("month", [3, 10])
def test_day_in_london_is_right_on_the_nights_the_clocks_change(month: int) -> None:
    """CAL: every quarter of an hour of the weekend, every year."""
    for year in range(2003, 2038):
        for quarter in range(-96, 96):
            moment = last_sunday(year, month) + timedelta(minutes=15 * quarter)
            assert london_date(write_instant(moment)) == london_by_the_order(moment).isoformat()


def test_clocks_change_in_2026_on_29_march_and_25_october() -> None:
    """CAL: the two Sundays of the vectors."""
    changes = [last_sunday(2026, month).date() for month in (3, 10)]
    assert changes == [date(2026, 3, 29), date(2026, 10, 25)]


@given(moments)
def test_instant_is_read_as_it_was_written(moment: datetime) -> None:
    """CAL: cut to the millisecond, never rounded up into the next one."""
    cut = moment.replace(microsecond=moment.microsecond // 1000 * 1000)
    assert parse_instant(write_instant(moment)) == cut


@given(moments, moments)
def test_instants_sort_as_text(one: datetime, other: datetime) -> None:
    """ORD-1: the order of the text is the order of time."""
    first, second = write_instant(one), write_instant(other)
    assert (first < second) == (parse_instant(first) < parse_instant(second))


@given(days, st.integers(-4000, 4000))
def test_days_added_are_the_days_between(day: str, count: int) -> None:
    """CAL: adding and counting agree, over leap days and clock changes."""
    assert days_between(day, add_days(day, count)) == count


@given(moments, st.integers(0, 400))
def test_same_time_later_is_so_many_days_later(moment: datetime, count: int) -> None:
    """CAL: counted on London's calendar, whatever the clocks did in between."""
    instant = write_instant(moment)
    assert london_date(same_time_after(instant, count)) == add_days(london_date(instant), count)


@pytest.mark.parametrize(
    "text", ["", "2026-02-29", "2026-1-01", "26-01-01", "1899-12-31", "2200-01-01"]
)
def test_what_is_no_day_is_refused(text: str) -> None:
    """CAL: also years that can only be a slip."""
    with pytest.raises(NotADate) as refusal:
        parse_day(text)
    assert refusal.value.facts == {"text": text}


@pytest.mark.parametrize(
    "text", ["", "2026-02-29T00:00:00.000Z", "2026-02-28T00:00:00Z", "1899-12-31T00:00:00.000Z"]
)
def test_what_is_no_instant_is_refused(text: str) -> None:
    """CAL: one form only."""
    with pytest.raises(NotATime):
        parse_instant(text)


def test_an_early_year_is_written_with_its_noughts() -> None:
    """So that instants sort as text, and what cannot be is seen to be so."""
    assert write_instant(datetime(999, 1, 2, 3, 4, 5, 678_999, UTC)) == "0999-01-02T03:04:05.678Z"
