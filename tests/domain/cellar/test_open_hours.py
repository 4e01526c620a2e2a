"""The hours at which the bar is open: nights, hours past midnight, and the clocks that change."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.cellar.open_hours import OpenHours, asked_open_hours
from cellarapp.domain.cellar.times import at_ms, ms_of
from cellarapp.domain.cellar.units import HOUR_MS, WEEK_MINUTES
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.working import Working

from .asking import ask, unhurried

DAY, HOUR = 24 * 60, 60
NOON_TO_ELEVEN = [minute for day in range(7) for minute in (day * DAY + 720, day * DAY + 1380)]
SATURDAY_NIGHT = [5 * DAY + 18 * HOUR, 6 * DAY + 2 * HOUR]
ALWAYS = [0, WEEK_MINUTES]


def hours(*times: int) -> OpenHours:
    return asked_open_hours(Working({"bar_hours": list(times)}))


def open_hours(bar: OpenHours, first: str, last: str) -> float:
    return bar.hours_between(ms_of(f"{first}:00.000Z"), ms_of(f"{last}:00.000Z"))


def after(bar: OpenHours, time: str, so_many: float) -> str:
    return at_ms(bar.after_ms(ms_of(f"{time}:00.000Z"), int(so_many * HOUR_MS)))[:16]


def test_nights_do_not_count() -> None:
    """OPEN-1. In winter, from Friday 20:00 to Saturday 13:00: three hours and one."""
    assert open_hours(hours(*NOON_TO_ELEVEN), "2026-11-20T20:00", "2026-11-21T13:00") == 4
    assert open_hours(hours(*NOON_TO_ELEVEN), "2026-11-20T23:10", "2026-11-21T11:50") == 0


def test_a_summers_noon_is_london_s() -> None:
    """OPEN-1: 12:00 in London is 11:00 in UTC."""
    bar = hours(*NOON_TO_ELEVEN)
    assert open_hours(bar, "2026-07-03T11:00", "2026-07-03T22:00") == 11
    assert at_ms(bar.next_open(ms_of("2026-07-03T22:00:00.000Z")))[:16] == "2026-07-04T11:00"


def test_hours_past_midnight_are_of_the_day_that_it_opened_on() -> None:
    """OPEN-1, OPEN-2: Saturday 18:00 to 02:00."""
    bar = hours(*SATURDAY_NIGHT)
    assert open_hours(bar, "2026-11-21T12:00", "2026-11-22T12:00") == 8
    assert open_hours(bar, "2026-11-22T01:00", "2026-11-28T12:00") == 1
    assert after(bar, "2026-11-22T01:00", 2) == "2026-11-28T19:00"


def test_past_the_last_midnight_of_the_week() -> None:
    """OPEN-1: Sunday 20:00 to 01:00 reaches into Monday."""
    bar = hours(6 * DAY + 20 * HOUR, 7 * DAY + HOUR)
    assert open_hours(bar, "2026-11-23T00:00", "2026-11-24T00:00") == 1
    assert open_hours(bar, "2026-11-22T00:00", "2026-11-24T00:00") == 5


@pytest.mark.parametrize(
    ("first", "last", "so_many"),
    [("2026-10-24T12:00", "2026-10-25T12:00", 9), ("2026-03-28T12:00", "2026-03-29T12:00", 7)],
)
def test_the_night_the_clocks_change_is_an_hour_longer_or_shorter(
    first: str, last: str, so_many: int
) -> None:
    """OPEN-1: Saturday 18:00 to 02:00, of which one hour comes twice, or never."""
    bar = hours(*SATURDAY_NIGHT)
    assert open_hours(bar, first, last) == so_many
    ends = after(bar, first, so_many)
    assert open_hours(bar, first, ends) == so_many


def test_an_hour_that_is_leapt_over_counts_once() -> None:
    """OPEN-1: in March 01:30 is 01:30 UTC and 02:00 is 01:00 UTC: 20:00 to 03:00 UTC in all."""
    bar = hours(5 * DAY + 20 * HOUR, 6 * DAY + 90, 6 * DAY + 2 * HOUR, 6 * DAY + 4 * HOUR)
    assert open_hours(bar, "2026-03-28T12:00", "2026-03-29T12:00") == 7


def test_it_opens_next_where_it_is_shut() -> None:
    """OPEN-3: open is now, shut is the next opening, closing time itself is shut."""
    bar = hours(*NOON_TO_ELEVEN)
    for time, then in [("11:00", "12:00"), ("12:00", "12:00"), ("22:59", "22:59")]:
        found = at_ms(bar.next_open(ms_of(f"2026-11-20T{time}:00.000Z")))
        assert found == f"2026-11-20T{then}:00.000Z"
    assert at_ms(bar.next_open(ms_of("2026-11-20T23:00:00.000Z"))) == "2026-11-21T12:00:00.000Z"


@pytest.mark.parametrize(
    "times",
    [[720], [720, 1380, 1440], [720, 720], [1380, 720], [720, 1380, 1300, 1500],
     [0, 600, 6 * DAY, 7 * DAY + 1], [-1, 5], [0, 11_881], "noon", [720, "1380"]],
)  # fmt: skip
def test_hours_that_cannot_be_are_refused(times: Any) -> None:
    """Not in pairs, closing first, open still from before, beyond the week."""
    with pytest.raises(OutOfRange) as refused:
        asked_open_hours(Working({"bar_hours": times}))
    assert refused.value.facts["field"] == "bar_hours"


def test_without_hours_every_hour_counts_and_it_says_so() -> None:
    work = Working()
    bar = asked_open_hours(work)
    assert open_hours(bar, "2026-11-20T00:00", "2026-11-23T00:00") == 72
    assert work.done({})["cautions"] == ["every_hour_counts"]


FIRST, LAST = ms_of("2026-03-20T00:00:00.000Z"), ms_of("2026-11-10T00:00:00.000Z")
times = st.integers(FIRST, LAST)
night = st.sampled_from(["2026-03-29T00:00:00.000Z", "2026-10-25T00:00:00.000Z"])
near_a_change = st.builds(
    lambda at, minutes: ms_of(at) + minutes * 60_000, night, st.integers(-3 * DAY, 3 * DAY)
)
bars = st.lists(st.integers(0, WEEK_MINUTES), min_size=2, max_size=14, unique=True).map(
    lambda minutes: OpenHours(list(zip(sorted(minutes)[::2], sorted(minutes)[1::2], strict=False)))
)


@given(bars, times | near_a_change, st.integers(0, 200 * HOUR))
@unhurried
def test_so_long_after_a_time_it_has_been_open_for_so_long(
    bar: OpenHours, time: int, minutes: int
) -> None:
    """OPEN-1 and OPEN-2 undo one another, and not a moment sooner."""
    then = bar.after_ms(time, minutes * 60_000)
    assert bar.between_ms(time, then) == minutes * 60_000
    if minutes:
        assert bar.between_ms(time, then - 1) < minutes * 60_000


@given(bars, st.lists(times | near_a_change, min_size=3, max_size=3))
@unhurried
def test_open_hours_add_up_and_are_never_more_than_there_are(
    bar: OpenHours, three: list[int]
) -> None:
    """OPEN-1."""
    first, middle, last = sorted(three)
    whole = bar.between_ms(first, last)
    assert bar.between_ms(first, middle) + bar.between_ms(middle, last) == whole
    assert 0 <= whole <= last - first


@given(times | near_a_change, times | near_a_change)
@unhurried
def test_a_bar_that_never_shuts_counts_every_hour(one: int, other: int) -> None:
    """OPEN-1: also over the nights on which the clocks change."""
    first, last = sorted([one, other])
    assert hours(*ALWAYS).between_ms(first, last) == last - first


def dipped(left: int, drawn: int, after_hours: int) -> dict[str, Any]:
    first = datetime(2026, 10, 23, 17, tzinfo=UTC)
    last = first + timedelta(hours=after_hours)
    said = [f"{at:%Y-%m-%dT%H:%M}:00.000Z" for at in (first, last)]
    dips = [{"at": at, "left_ml": ml} for at, ml in zip(said, (left + drawn, left), strict=True)]
    return {"now": said[1], "dips": dips}


asked = st.builds(dipped, st.integers(0, 40_000), st.integers(0, 9_000), st.integers(3, 72))


@given(asked)
@unhurried
def test_a_pace_of_a_bar_that_never_shuts_is_that_of_every_hour(inputs: dict[str, Any]) -> None:
    """OUT-4: no hours given is as open all week."""
    always = ask("run_out", {"bar_hours": ALWAYS}, **inputs)
    assert always["result"] == ask("run_out", **inputs)["result"]
    assert "every_hour_counts" not in always["cautions"]


@given(asked)
@unhurried
def test_a_cask_runs_out_while_the_bar_is_open(inputs: dict[str, Any]) -> None:
    """OUT-2, OUT-3: and the next one is wanted when beer is drawn."""
    bar = hours(*NOON_TO_ELEVEN)
    found = ask("run_out", {"bar_hours": NOON_TO_ELEVEN}, **inputs)["result"]
    if found["soonest_at"] not in (None, inputs["now"]):
        soonest = ms_of(found["soonest_at"])
        assert bar.between_ms(soonest - HOUR_MS, soonest) > 0
    if found["next_wanted_at"] is not None:
        wanted = ms_of(found["next_wanted_at"])
        assert bar.next_open(wanted) == wanted >= ms_of(found["gone_at"])
