"""The London clock that jobs are put on, against the Summer Time Order itself."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calendar import london_date, london_instant, london_minute, write_instant

moments = st.datetimes(datetime(2003, 1, 1), datetime(2037, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001


@pytest.mark.parametrize(
    ("day", "minute", "at"),
    [
        ("2026-03-06", 8 * 60, "2026-03-06T08:00:00.000Z"),
        ("2026-07-06", 8 * 60, "2026-07-06T07:00:00.000Z"),
        ("2026-03-29", 90, "2026-03-29T01:30:00.000Z"),  # leapt over: the winter offset
        ("2026-10-25", 90, "2026-10-25T00:30:00.000Z"),  # twice: the first
        ("2026-10-25", 150, "2026-10-25T02:30:00.000Z"),
        ("2026-10-24", 1440, "2026-10-24T23:00:00.000Z"),  # midnight at its end
    ],
)
def test_a_time_on_the_clock_is_an_instant(day: str, minute: int, at: str) -> None:
    """CAL."""
    assert london_instant(day, minute) == at


@given(moments)
def test_a_clock_read_and_set_again_shows_the_same(moment: datetime) -> None:
    """CAL: save in the hour that happens twice, which is read as the first."""
    shown = write_instant(moment.replace(second=0, microsecond=0))
    again = london_instant(london_date(shown), london_minute(shown))
    twice = write_instant(moment.replace(second=0, microsecond=0) - timedelta(hours=1))
    assert again in (shown, twice)
    assert (london_date(again), london_minute(again)) == (london_date(shown), london_minute(shown))
