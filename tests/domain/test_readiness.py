"""The stage of a full container, and that lists and the rule of one container say the same."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.calculations import calculate
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.readiness import best_before_on, readiness, stage_of
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Mark, Standing, blank

FILLED = "2026-03-06T10:00:00.000Z"


def mark(since: str) -> Mark:
    return {"since": since, "entry": "e", "by": "Ash", "inferred": False}


def full(best_before: str | None = "2026-04-17", shape: str = "cask", **serving: str) -> Standing:
    """A cask racked on 6 March and as far on the stillage as it is told."""
    standing = blank("117")
    standing["shape"] = shape
    contents: Any = {
        **mark(FILLED), "gyle": "g", "volume_ml": 40_915, "left_ml": 40_915,
        "best_before": best_before, "doses": [], "moves": 0, "moved": None, "dipped": None,
        "dips": [], "tasted": None,
    }  # fmt: skip
    standing["contents"] = contents
    if serving:
        steps: Any = {name: mark(since) for name, since in serving.items()}
        standing["serving"] = {"stillaged": None, "vented": None, "tapped": None} | steps
    return standing


def beer(**fields: Any) -> Record:
    return {"fields": fields, "set_by": {}}


@pytest.mark.parametrize(
    ("standing", "now", "stage"),
    [
        (blank("117"), FILLED, "empty"),
        (full(), "2026-03-13T09:59:59.999Z", "conditioning"),
        (full(), "2026-03-13T10:00:00.000Z", "ready"),
        (full(stillaged=FILLED), FILLED, "stillaged"),
        (full(stillaged=FILLED, vented=FILLED), FILLED, "working"),
        (full(tapped=FILLED), "2026-03-09T10:00:00.000Z", "on_sale"),
        (full(tapped=FILLED), "2026-03-09T10:00:00.001Z", "past"),
        (full(), "2026-04-17T22:59:59.999Z", "ready"),
        (full(), "2026-04-17T23:00:00.000Z", "past"),
        (full(best_before=None), "2027-01-01T00:00:00.000Z", "ready"),
        (full(shape="keg", tapped=FILLED), "2026-03-11T10:00:00.000Z", "on_sale"),
    ],
)
def test_stage(standing: Standing, now: str, stage: str) -> None:
    """READY-2: the best-before day itself is still good, to its midnight in London."""
    assert readiness(standing, None, now)["stage"] == stage


@pytest.mark.parametrize(
    ("fields", "shape", "on"),
    [({}, None, "2026-04-17"), ({"abv_tenths": 38}, "cask", "2026-04-03"),
     ({"abv_tenths": 55}, "cask", "2026-05-01"), ({"abv_tenths": 38}, "keg", "2026-05-01"),
     ({"abv_tenths": 38, "best_before_days": 21}, "keg", "2026-03-27")],
)  # fmt: skip
def test_best_before_goes_by_the_beer_its_strength_and_its_container(
    fields: dict[str, Any], shape: str | None, on: str
) -> None:
    """READY-1."""
    assert best_before_on(FILLED, beer(**fields), shape) == on


def test_the_brewery_s_own_days_count() -> None:
    """READY-3: what a beer leaves open is the brewery's to set."""
    own = {"conditioning_days": 10, "on_sale_days": 4, "best_before_days": 30}
    found = readiness(full(tapped="2026-03-20T10:00:00.000Z"), None, FILLED, own)
    assert found["ready_at"] == "2026-03-16T10:00:00.000Z"
    assert found["off_at"] == "2026-03-24T10:00:00.000Z"
    assert best_before_on(FILLED, None, None, own) == "2026-04-05"
    with pytest.raises(OutOfRange):
        readiness(full(), None, FILLED, {"conditioning_days": -1})


hours = st.integers(0, 24 * 60)


def at(hour: int) -> str:
    return f"2026-03-{6 + hour // 24 % 25:02d}T{hour % 24:02d}:00:00.000Z"


@given(
    hours.map(at),
    st.sampled_from(["cask", "keg"]),
    st.none() | st.integers(0, 30),
    st.none() | st.integers(1, 9),
    st.none() | hours.map(at),
)
def test_a_list_and_the_rule_of_one_container_say_the_same(
    now: str, shape: str, conditioning: int | None, on_sale: int | None, tapped_at: str | None
) -> None:
    """READY-3, FIT-4: unless a brewery lets temperature count in conditioning."""
    fields = {"conditioning_days": conditioning, "on_sale_days": on_sale}
    tapped_at = max(tapped_at, FILLED) if tapped_at else None
    standing = full(shape=shape, **({"tapped": tapped_at} if tapped_at else {}))
    listed = readiness(standing, beer(**fields), now)
    asked = {"now": now, "filled_at": FILLED, "shape": shape, "tapped_at": tapped_at, **fields}
    one = calculate("ready", asked)["result"]
    assert one["conditioned_from_at"] == listed["ready_at"]
    assert one["off_by_at"] == listed["off_at"]
    off_at = one["off_by_at"]
    assert listed["stage"] == stage_of(standing, one["conditioned_from_at"], off_at, now)
