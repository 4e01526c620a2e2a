"""Back from a sale to what has to be done by when; today's jobs; and that both ways agree."""

from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from cellarapp.domain.calendar import LONDON, london_date, london_minute
from cellarapp.domain.cellar.times import at_ms, ms_of
from cellarapp.domain.errors import NotAmong, NotATime, OutOfRange

from .asking import ask, result, unhurried

WEDNESDAY = "2026-03-18T09:00:00.000Z"
SATURDAY_AT_ONE = "2026-03-21T13:00:00.000Z"
FILLED = "2026-03-06T10:00:00.000Z"
HOUR_MS = 3_600_000
STEP_FIELDS = {
    "stillage": "stillaged_at", "vent": "vented_at", "spile": "hard_spile_at", "tap": "tapped_at",
}  # fmt: skip


def cask(number: str = "117", **other: Any) -> dict[str, Any]:
    return {"number": number, "filled_at": FILLED, "best_before_on": "2026-04-17", **other}


def plan(*casks: dict[str, Any], own: dict[str, Any] | None = None, **other: Any) -> dict[str, Any]:
    usual = {"now": WEDNESDAY, "sale_at": SATURDAY_AT_ONE, "casks": list(casks)}
    return result("plan_back", own, **{**usual, **other})


def by(row: dict[str, Any]) -> dict[str, str]:
    return {job["step"]: job["by_at"] for job in row["jobs"]}


def do(row: dict[str, Any]) -> dict[str, str]:
    return {job["step"]: job["do_at"] for job in row["jobs"]}


def test_on_sale_saturday_at_one() -> None:
    """PLAN-4. By hand: tasted an hour before, tapped a day, vented 12 before that, stillaged 6."""
    [row] = plan(cask())["casks"]
    assert row["can"]
    assert by(row) == {
        "stillage": "2026-03-19T19:00:00.000Z",
        "vent": "2026-03-20T01:00:00.000Z",
        "spile": "2026-03-20T13:00:00.000Z",
        "tap": "2026-03-20T13:00:00.000Z",
        "taste": "2026-03-21T12:00:00.000Z",
    }
    assert row["off_by_at"] == "2026-03-24T13:00:00.000Z"
    assert row["left_days"] == 27


def test_no_job_falls_in_the_night() -> None:
    """DAY-1: venting by one in the morning is done the evening before, and stillage for that."""
    [row] = plan(cask())["casks"]
    assert do(row)["vent"] == "2026-03-19T18:00:00.000Z"
    assert do(row)["stillage"] == "2026-03-19T12:00:00.000Z"
    assert do(row)["tap"] == by(row)["tap"]


# Murphy & Son: vent within 6 hours of delivery, tap with it, 24 hours at the least on the stillage.
def test_another_house_s_hours() -> None:
    """STEP-1."""
    own = {
        "settle_hours": 24, "soft_spile_hours": 0, "sale_after_venting_hours": 18,
        "sale_after_tapping_hours": 18,
    }  # fmt: skip
    [row] = plan(cask(), own=own)["casks"]
    assert by(row)["stillage"] == "2026-03-20T13:00:00.000Z"
    assert by(row)["vent"] == by(row)["tap"] == "2026-03-20T19:00:00.000Z"


def test_first_out_is_best_before_first() -> None:
    """PLAN-3: then what is ready sooner, then the number; what cannot be sold comes last."""
    rows = plan(
        cask("1", best_before_on="2026-04-20"),
        cask("2", best_before_on=None),
        cask("3", best_before_on="2026-04-10", filled_at="2026-03-17T10:00:00.000Z"),
        cask("5", best_before_on="2026-04-12"),
        cask("4", best_before_on="2026-04-12"),
        cask("6", best_before_on="2026-04-12", stillaged_at="2026-03-17T10:00:00.000Z"),
        cask("7", best_before_on="2026-03-20"),
    )["casks"]
    assert [row["number"] for row in rows] == ["6", "4", "5", "1", "2", "7", "3"]
    assert [row["can"] for row in rows] == [True] * 5 + [False] * 2


@pytest.mark.parametrize(
    ("other", "against"),
    [
        ({"filled_at": "2026-03-16T10:00:00.000Z"}, "conditioning"),
        ({"stays": [{"since_at": FILLED, "place_temp_c": 30}]}, "temperature"),
        ({"fined": False}, "settling"),
        ({"best_before_on": "2026-03-20"}, "past_best_before"),
        (
            {"tapped_at": "2026-03-17T10:00:00.000Z", "first_drawn_at": "2026-03-18T08:00:00.000Z"},
            "on_sale_already",
        ),
    ],
)
def test_what_stands_against_a_cask_is_said(other: dict[str, Any], against: str) -> None:
    """PLAN-1."""
    [row] = plan(cask(**other))["casks"]
    assert (row["can"], row["against"]) == (False, against)
    assert row["says"].endswith(".")


def test_the_best_before_day_itself_is_still_good() -> None:
    """PLAN-1."""
    found = ask(
        "plan_back", now=WEDNESDAY, sale_at=SATURDAY_AT_ONE,
        casks=[cask(best_before_on="2026-03-21")],
    )  # fmt: skip
    [row] = found["result"]["casks"]
    assert (row["can"], row["left_days"]) == (True, 0)
    assert "best_before_ends_on_sale" in row["cautions"]


def test_cautions_stand_with_the_cask_they_are_about() -> None:
    """PLAN-2."""
    warm = [
        {"since_at": FILLED, "place_temp_c": 21},
        {"since_at": "2026-03-10T10:00:00.000Z", "place_temp_c": 12},
    ]
    rows = plan(cask("1"), cask("2", stays=warm))["casks"]
    assert "too_warm_for_venting" not in rows[0]["cautions"]
    assert "too_warm_for_venting" in rows[1]["cautions"]


def test_what_is_done_is_no_job_any_more() -> None:
    """JOB-1."""
    stillaged = cask(stillaged_at="2026-03-17T10:00:00.000Z", vented_at="2026-03-17T16:00:00.000Z")
    [row] = plan(stillaged)["casks"]
    assert list(by(row)) == ["spile", "tap", "taste"]


def test_a_keg_is_tapped_and_tasted() -> None:
    """JOB-1."""
    [row] = plan(cask(shape="keg"))["casks"]
    assert by(row) == {"tap": "2026-03-21T12:00:00.000Z", "taste": "2026-03-21T12:00:00.000Z"}


def test_what_is_late_says_so_and_when_at_the_earliest() -> None:
    """JOB-1."""
    [row] = plan(cask(filled_at="2026-03-16T10:00:00.000Z"))["casks"]
    vent = next(job for job in row["jobs"] if job["step"] == "vent")
    assert vent["late"]
    assert vent["do_at"] == "2026-03-23T10:00:00.000Z"
    assert vent["says"] == (
        "117: Vent with a soft spile, due by Fri 20 Mar 01:00; Mon 23 Mar 10:00 at the earliest."
    )
    stillage = next(job for job in row["jobs"] if job["step"] == "stillage")
    assert not stillage["late"]


def jobs(now: str, *casks: dict[str, Any]) -> dict[str, Any]:
    return result("todays_jobs", now=now, casks=list(casks))


def test_today_s_jobs_are_in_the_order_of_time() -> None:
    """PLAN-5: of every cask that was picked, and nothing of another day."""
    one = cask("117", sale_at=SATURDAY_AT_ONE)
    other = cask("K9", sale_at="2026-03-21T18:00:00.000Z", stillaged_at="2026-03-18T10:00:00.000Z")
    found = jobs("2026-03-19T08:00:00.000Z", one, other)
    assert [(job["do_at"][11:16], job["number"], job["step"]) for job in found["jobs"]] == [
        ("12:00", "117", "stillage"), ("18:00", "117", "vent"), ("18:00", "K9", "vent"),
    ]  # fmt: skip
    assert found["later"] == 6


def test_what_is_late_is_among_today_s_jobs() -> None:
    """PLAN-5: put at now."""
    found = jobs("2026-03-20T09:00:00.000Z", cask(sale_at=SATURDAY_AT_ONE))
    assert found["jobs"][0] == {
        "number": "117", "step": "stillage", "by_at": "2026-03-19T19:00:00.000Z",
        "do_at": "2026-03-20T09:00:00.000Z", "late": True,
        "says": "117: Set on the stillage, due by Thu 19 Mar 19:00; Fri 20 Mar 09:00 at the "
        "earliest.",
    }  # fmt: skip


def test_nothing_picked_is_nothing_to_do() -> None:
    assert jobs(WEDNESDAY) == {"jobs": [], "later": 0}
    assert plan()["casks"] == []


# Saturday 28 March and Saturday 24 October 2026: the clocks change in the night before the sale.
@pytest.mark.parametrize(
    ("now", "sale_at"),
    [
        ("2026-03-26T09:00:00.000Z", "2026-03-29T12:00:00.000Z"),
        ("2026-10-22T08:00:00.000Z", "2026-10-25T13:00:00.000Z"),
    ],
)
def test_the_night_the_clocks_change(now: str, sale_at: str) -> None:
    """STEP-3, DAY-1: hours are hours; on sale at one by the clock, off at one three days later."""
    [row] = plan(cask(), now=now, sale_at=sale_at, own={"taste_before_sale_hours": 5})["casks"]
    assert ms_of(sale_at) - ms_of(by(row)["tap"]) == 24 * HOUR_MS
    assert london_minute(sale_at) == london_minute(row["off_by_at"]) == 13 * 60
    for at in do(row).values():
        assert 8 * 60 <= london_minute(at) <= 18 * 60


@pytest.mark.parametrize(
    ("number", "given"),
    [(None, None), ("", ""), ("f117", "f117"), (117, "117"), ("ABC", "ABC"), ("123456789", None)],
)
def test_a_number_in_no_normal_form_is_refused(number: object, given: object) -> None:
    """PLAN-2: with its place in the list."""
    with pytest.raises(NotAmong) as refused:
        plan(cask(), cask(number=number))  # type: ignore[arg-type]
    assert refused.value.facts["field"] == "casks[1].number"


def test_a_sale_before_now_is_refused() -> None:
    """PLAN-4."""
    with pytest.raises(NotATime) as refused:
        plan(sale_at="2026-03-18T08:59:59.999Z")
    assert (refused.value.facts["field"], refused.value.facts["low"]) == ("sale_at", WEDNESDAY)


def test_more_candidates_than_a_brewery_has_are_refused() -> None:
    with pytest.raises(OutOfRange) as refused:
        plan(*[cask()] * 201)
    assert refused.value.facts["field"] == "casks"


# Whole hours about the sale; hours of a brewery from none to long.
hours = st.integers(0, 24 * 14)
own_hours = st.fixed_dictionaries(
    {
        "settle_hours": st.integers(12, 96),
        "unfined_more_hours": st.integers(0, 48),
        "vent_after_stillage_hours": st.integers(0, 24),
        "soft_spile_hours": st.integers(0, 48),
        "sale_after_venting_hours": st.integers(0, 72),
        "sale_after_tapping_hours": st.integers(0, 48),
        "taste_before_sale_hours": st.just(0),
    }
)


@st.composite
def situations(draw: st.DrawFn) -> dict[str, Any]:
    """A cask on its way, a time now, a sale wanted, and a brewery's hours."""

    def at(hour: int) -> str:
        return at_ms(ms_of(FILLED) + hour * HOUR_MS)

    names = list(STEP_FIELDS.values())[: draw(st.integers(0, 4))]
    times = sorted(draw(hours) for _ in names)
    now_h = max([*times, draw(hours)])
    place_c = draw(st.sampled_from([8, 11, 12, 13, 14, 18]))
    since_h = min(now_h, draw(hours))
    known = {
        **dict(zip(names, map(at, times), strict=True)),
        "conditioning_days": draw(st.integers(0, 14)),
        "fined": draw(st.booleans()),
        "fill_temp_c": draw(st.sampled_from([10, 12, 18])),
        "stays": [
            {"since_at": FILLED, "place_temp_c": draw(st.sampled_from([8, 12, 18]))},
            {"since_at": at(since_h), "place_temp_c": place_c},
        ],
        "best_before_on": None,
    }
    return {
        "own": draw(own_hours),
        "now": at(now_h),
        "sale_at": at(now_h + draw(hours)),
        "cask": cask(**known),
    }


@given(situations())
@unhurried
def test_what_can_be_planned_is_what_can_be_ready(asked: dict[str, Any]) -> None:
    """PLAN-1: one if and only if the other, for any cask, time and hours."""
    own, now, one = asked["own"], asked["now"], asked["cask"]
    [row] = plan(one, own=own, now=now, sale_at=asked["sale_at"])["casks"]
    known = {name: value for name, value in one.items() if name != "number"}
    ready_at = result("ready", own, now=now, **known)["ready_from_at"]
    assert row["ready_from_at"] == ready_at
    assert row["can"] == (ready_at <= asked["sale_at"])
    steps = [job for job in row["jobs"] if job["step"] != "taste"]
    assert not row["can"] or not any(job["late"] for job in steps)


@given(situations(), st.booleans())
@unhurried
def test_a_plan_that_is_followed_is_ready_in_time(asked: dict[str, Any], in_hours: bool) -> None:
    """PLAN-4: each step at the time it falls in the working day, or at its very latest."""
    own, now, one = asked["own"], asked["now"], asked["cask"]
    [row] = plan(one, own=own, now=now, sale_at=asked["sale_at"])["casks"]
    assume(row["can"])
    when = do(row) if in_hours else by(row)
    steps = {STEP_FIELDS[step]: at for step, at in when.items() if step in STEP_FIELDS}
    known = {name: value for name, value in one.items() if name != "number"} | steps
    if one["stays"][-1]["place_temp_c"] not in (11, 12, 13):
        # Set in a cellar at its temperature, or the cellar that it stands in put right.
        since_at = steps.get("stillaged_at", now)
        known["stays"] = [*one["stays"], {"since_at": since_at, "place_temp_c": 12}]
    found = result("ready", own, now=asked["sale_at"], **known)
    assert found["ready_from_at"] <= asked["sale_at"]


@given(situations())
@unhurried
def test_a_step_after_its_latest_time_is_too_late(asked: dict[str, Any]) -> None:
    """PLAN-4: a minute later, and a cask that is cool already is not ready for the sale."""
    own, one = asked["own"], {**asked["cask"], "stays": [], "fill_temp_c": 12}
    [row] = plan(one, own=own, now=asked["now"], sale_at=asked["sale_at"])["casks"]
    assume(row["can"] and row["jobs"])
    known = {name: value for name, value in one.items() if name != "number"}
    for job in row["jobs"]:
        late = at_ms(ms_of(job["by_at"]) + 60_000)
        if job["step"] in STEP_FIELDS and late >= asked["now"]:
            steps = {STEP_FIELDS[job["step"]]: late}
            found = result("ready", own, now=late, **known, **steps)
            assert found["ready_from_at"] > asked["sale_at"]


@given(situations())
@unhurried
def test_jobs_come_in_order_and_inside_their_limits(asked: dict[str, Any]) -> None:
    """JOB-1: none before now, none after it must be, each after the one before it."""
    [row] = plan(asked["cask"], own=asked["own"], now=asked["now"], sale_at=asked["sale_at"])[
        "casks"
    ]
    assume(row["can"])
    times = [job["do_at"] for job in row["jobs"]]
    assert times == sorted(times)
    for job in row["jobs"]:
        assert asked["now"] <= job["do_at"] <= job["by_at"]


@given(st.datetimes(datetime(2026, 1, 1), datetime(2027, 1, 1), timezones=st.just(UTC)))  # noqa: DTZ001
@unhurried
def test_every_job_that_has_the_time_falls_in_the_working_day(moment: datetime) -> None:
    """DAY-1: with a week to do it in, on any day of the year."""
    sale_at = at_ms(int(moment.timestamp() // 60) * 60_000)
    now = at_ms(ms_of(sale_at) - 7 * 24 * HOUR_MS)
    filled_at = at_ms(ms_of(sale_at) - 20 * 24 * HOUR_MS)
    [row] = plan(cask(filled_at=filled_at, best_before_on=None), now=now, sale_at=sale_at)["casks"]
    assert row["can"]
    for at in do(row).values():
        local = datetime.fromisoformat(at).astimezone(LONDON)
        assert 8 <= local.hour + local.minute / 60 <= 18
        assert local.date().isoformat() == london_date(at)
