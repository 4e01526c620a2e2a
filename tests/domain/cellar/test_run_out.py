"""From dips and time: when a cask runs out, and the next one's venting."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.cellar.times import at_ms, ms_of
from cellarapp.domain.errors import DomainError, OutOfRange

from .asking import ask, result, unhurried

FRIDAY_NOON = "2026-03-20T12:00:00.000Z"


def dips(*rows: tuple[int, int]) -> list[dict[str, Any]]:
    """Hours after Friday noon, and what was left."""
    return [
        {"at": at_ms(ms_of(FRIDAY_NOON) + hours * 3_600_000), "left_ml": left}
        for hours, left in rows
    ]


def out(*rows: tuple[int, int], now_h: int = 24, **other: Any) -> dict[str, Any]:
    now = at_ms(ms_of(FRIDAY_NOON) + now_h * 3_600_000)
    return result("run_out", now=now, dips=dips(*rows), **other)


def test_it_runs_out_at_its_pace() -> None:
    """OUT-2. By hand: 12 L in a day, 24 L left: two days more."""
    found = out((0, 36_000), (24, 24_000))
    assert found["runs_out_at"] == "2026-03-23T12:00:00.000Z"
    assert found["soonest_at"] == "2026-03-23T12:00:00.000Z"
    assert found["left_hours"] == 48
    assert found["pints_a_day"] == 21.1


def test_sediment_is_not_sold() -> None:
    """OUT-2: 1.5 L of it at half a litre an hour is three hours less."""
    found = out((0, 36_000), (24, 24_000), sediment_ml=1500)
    assert found["runs_out_at"] == "2026-03-23T09:00:00.000Z"


def test_the_latest_pace_decides_where_it_is_faster() -> None:
    """OUT-4: Saturday night: 6 L in three hours after a slow day."""
    found = out((0, 36_000), (24, 30_000), (27, 24_000), now_h=27)
    assert found["soonest_at"] == "2026-03-22T03:00:00.000Z"
    assert found["runs_out_at"] > found["soonest_at"]


def test_dips_of_one_round_tell_no_pace() -> None:
    """OUT-1: 2 L in a minute is a cask that was not full, or a round; the dips before count."""
    alone = ask("run_out", now="2026-03-20T14:00:00.000Z", dips=dips((0, 36_000), (2, 30_000)))
    assert (alone["result"]["pints_a_day"], alone["result"]["soonest_at"]) == (None, None)
    assert alone["result"]["next"] is None
    found = out((0, 36_000), (24, 26_000), (26, 24_000), now_h=26)
    assert found["pints_a_day"] == 19.5
    assert found["runs_out_at"] == found["soonest_at"] == "2026-03-23T18:00:00.000Z"


def test_a_slower_evening_does_not_put_it_off() -> None:
    """OUT-4."""
    found = out((0, 36_000), (24, 24_000), (27, 23_900), now_h=27)
    assert found["soonest_at"] == found["runs_out_at"]


def test_the_next_one_is_vented_in_time() -> None:
    """OUT-3. Out Monday 12:00: tapped Sunday noon, vented by 00:00 so that it works 12 hours."""
    found = out((0, 36_000), (24, 24_000))["next"]
    assert found["tap_by_at"] == "2026-03-22T12:00:00.000Z"
    assert found["vent_by_at"] == "2026-03-22T00:00:00.000Z"
    assert found["vent_at"] == "2026-03-21T18:00:00.000Z"
    assert found["stillage_by_at"] == "2026-03-21T18:00:00.000Z"
    assert not found["late"]
    assert found["says"] == "Vent the next one Sat 21 Mar 18:00, by Sun 22 Mar 00:00 at the latest."


def test_a_cask_that_must_be_off_first_is_followed_by_then() -> None:
    """OUT-3. Beer until Monday 12:00, off by Sunday 12:00: the next one a day sooner."""
    found = out((0, 36_000), (24, 24_000), off_by_at="2026-03-22T12:00:00.000Z")
    assert found["soonest_at"] == "2026-03-23T12:00:00.000Z"
    assert found["gone_at"] == "2026-03-22T12:00:00.000Z"
    assert found["next"]["tap_by_at"] == "2026-03-21T12:00:00.000Z"
    later = out((0, 36_000), (24, 24_000), off_by_at="2026-03-24T12:00:00.000Z")
    assert later["gone_at"] == later["soonest_at"]
    undrawn = out((0, 36_000), (24, 36_000), off_by_at="2026-03-24T12:00:00.000Z")
    assert (undrawn["soonest_at"], undrawn["gone_at"]) == (None, "2026-03-24T12:00:00.000Z")
    assert undrawn["next"]["tap_by_at"] == "2026-03-23T12:00:00.000Z"


def test_too_late_is_said_and_what_then() -> None:
    """OUT-3."""
    found = out((0, 36_000), (24, 3_000))["next"]
    assert found["late"]
    assert found["sold_from_at"] == "2026-03-23T06:00:00.000Z"
    assert found["says"].startswith("Vent the next one at once")


def test_a_cask_must_be_on_the_stillage_already() -> None:
    """OUT-3: stillage too late, venting not."""
    found = out((0, 31_000), (24, 19_000), now_h=25)["next"]
    assert found["stillage_by_at"] < "2026-03-21T13:00:00.000Z" < found["vent_by_at"]
    assert "on the stillage already" in found["says"]


def test_an_unfined_one_takes_longer() -> None:
    """OUT-3."""
    fined, unfined = (
        out((0, 40_000), (24, 36_000), next_fined=fined)["next"]["stillage_by_at"]
        for fined in (True, False)
    )
    assert unfined < fined


def test_what_is_not_drawn_does_not_run_out() -> None:
    """OUT-2: nor does what would last beyond belief."""
    for rows in (((0, 36_000), (24, 36_000)), ((0, 36_000), (24, 35_990))):
        found = out(*rows)
        assert (found["runs_out_at"], found["soonest_at"], found["next"]) == (None, None, None)


def test_nothing_drinkable_is_out_already() -> None:
    """OUT-2."""
    found = out((0, 36_000), (24, 1_600), sediment_ml=1700)
    assert found["soonest_at"] == "2026-03-21T12:00:00.000Z"


def test_dips_of_one_day_are_doubted() -> None:
    """OUT-4: opening hours weigh heavily."""
    asked = {"now": "2026-03-21T12:00:00.000Z"}
    short = ask("run_out", **asked, dips=dips((0, 36_000), (23, 24_000)))
    whole = ask("run_out", **asked, dips=dips((0, 36_000), (24, 24_000)))
    assert "pace_from_short_span" in short["cautions"]
    assert "pace_from_short_span" not in whole["cautions"]


@pytest.mark.parametrize(
    ("rows", "field"),
    [((), "dips"), (((0, 36_000),), "dips"), (((0, 36_000), (0, 30_000)), "dips[1].at"),
     (((5, 36_000), (0, 30_000)), "dips[1].at"), (((0, 30_000), (5, 36_000)), "dips[1].left_ml")],
)  # fmt: skip
def test_dips_that_make_no_pace_are_refused(rows: tuple[tuple[int, int], ...], field: str) -> None:
    """OUT-1: too few, not in order, or rising."""
    with pytest.raises(DomainError) as refused:
        out(*rows)
    assert refused.value.facts["field"] == field


def test_more_dips_than_a_cask_ever_has_are_refused() -> None:
    with pytest.raises(OutOfRange):
        out(*((n, 36_000) for n in range(501)))


@given(
    st.integers(2_000, 40_000), st.integers(1_000, 20_000), st.integers(1, 48), st.integers(1, 9)
)
@unhurried
def test_the_more_is_left_the_later_it_runs_out(
    left: int, drawn: int, hours: int, more: int
) -> None:
    """OUT-2: at the same pace; and a faster pace is never later."""
    usual = out((0, left + drawn), (hours, left), now_h=hours)["soonest_at"]
    fuller = out((0, left + drawn + more), (hours, left + more), now_h=hours)["soonest_at"]
    faster = out((0, left + drawn + more), (hours, left), now_h=hours)["soonest_at"]
    never = "9999"
    assert (fuller or never) >= (usual or never) >= (faster or never)
