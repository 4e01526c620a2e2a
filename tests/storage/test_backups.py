"""Which backups are kept."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.storage.backups import Keeping, backup_path, backups_in, rotate

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)  # a Wednesday

MOMENTS = st.lists(
    st.datetimes(
        min_value=datetime(2026, 1, 1),  # noqa: DTZ001 (the zone is given below)
        max_value=datetime(2026, 12, 31),  # noqa: DTZ001
        timezones=st.just(UTC),
    ),
    unique=True,
)
COUNTS = st.integers(0, 5)


def hours_ago(*hours: int) -> set[datetime]:
    return {NOON - timedelta(hours=ago) for ago in hours}


def test_last_of_each_hour_day_and_week_is_kept() -> None:
    """Worked by hand: two of the hours, two of the days, two of the weeks."""
    every_hour = hours_ago(*range(24 * 21))
    kept = Keeping(hourly=2, daily=2, weekly=2).chosen(every_hour)
    # 12:00 and 11:00 today, 23:00 yesterday, 23:00 on Sunday.
    assert kept == hours_ago(0, 1, 13, 61)


def test_hours_without_a_backup_do_not_count() -> None:
    """A server that was off over Christmas must not come back to remove what it has."""
    assert Keeping(2, 0, 0).chosen(hours_ago(500, 900, 901)) == hours_ago(500, 900)


@given(MOMENTS, COUNTS, COUNTS, COUNTS)
def test_newest_is_always_kept_and_never_more_than_was_asked(
    moments: list[datetime], hourly: int, daily: int, weekly: int
) -> None:
    """Whatever the numbers are."""
    kept = Keeping(hourly, daily, weekly).chosen(moments)
    assert kept <= set(moments)
    assert not moments or max(moments) in kept
    assert len(kept) <= max(1, hourly + daily + weekly)


@given(MOMENTS, COUNTS, COUNTS, COUNTS)
def test_rotating_twice_removes_no_more(
    moments: list[datetime], hourly: int, daily: int, weekly: int
) -> None:
    """Or a server that is started often would lose its past."""
    keeping = Keeping(hourly, daily, weekly)
    kept = keeping.chosen(moments)
    assert keeping.chosen(kept) == kept


@pytest.mark.parametrize(
    ("keeping", "every"),
    [
        (Keeping(24, 14, 8), timedelta(hours=1)),
        (Keeping(0, 14, 8), timedelta(days=1)),
        (Keeping(0, 0, 8), timedelta(weeks=1)),
        (Keeping(0, 0, 0), None),
    ],
)
def test_backup_is_due_as_often_as_the_closest_that_are_kept(
    keeping: Keeping, every: timedelta | None
) -> None:
    """And never, if none is."""
    assert keeping.every == every


def test_only_backups_are_removed(tmp_path: Path) -> None:
    """What a person has put beside them under another name stays."""
    for moment in hours_ago(0, 1, 2):
        backup_path(tmp_path, moment).touch()
    strange = ["cellarapp-before the move.sqlite", "cellarapp.sqlite", "notes.txt"]
    for name in strange:
        (tmp_path / name).touch()
    gone = rotate(tmp_path, Keeping(hourly=1, daily=0, weekly=0))
    assert {path.name for path in gone} == {
        "cellarapp-2026-11-25T10-00-00Z.sqlite",
        "cellarapp-2026-11-25T11-00-00Z.sqlite",
    }
    assert backups_in(tmp_path).keys() == {NOON}
    assert all((tmp_path / name).exists() for name in strange)
