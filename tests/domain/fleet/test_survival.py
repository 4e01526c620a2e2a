"""KM: against figures in print, against another implementation, and by hand."""

import warnings
from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.fleet.survival import Trips, curve

from ..cellar.asking import result, unhurried

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # of what lifelines draws with, which is not used here
    from lifelines import KaplanMeierFitter

# Freireich et al., Blood 21 (1963) 699-716: weeks of remission on 6-MP; "+" was still in remission.
SIX_MP = "6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+"
PLACEBO = "1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23"


def trips(text: str) -> list[dict[str, Any]]:
    """Each as a trip by itself: returned, or with a "+" still open."""
    return [
        {
            "entered_day": 0,
            "days": int(one.rstrip("+")),
            "returned": int("+" not in one),
            "open": int("+" in one),
        }
        for one in text.split()
    ]


def asked(text: str, days_out: int = 0, within: int = 14) -> dict[str, Any]:
    own = {"chance_within_days": within}
    return result("return_chance", own, trips=trips(text), days_out=days_out)


def test_six_mp_is_as_published() -> None:
    """KM-1, KM-4. NAG Library, routine g12aa, example results: S and its standard error."""
    published = [
        (6, 21, 3, 0.857, 0.076), (7, 17, 1, 0.807, 0.087), (10, 15, 1, 0.753, 0.096),
        (13, 12, 1, 0.690, 0.107), (16, 11, 1, 0.627, 0.114), (22, 7, 1, 0.538, 0.128),
        (23, 6, 1, 0.448, 0.135),
    ]  # fmt: skip
    rows = asked(SIX_MP)["curve"]
    found = [
        (
            row["day"],
            row["at_risk"],
            row["returned"],
            round(row["still_out_pct"] / 100, 3),
            round(row["error_pct"] / 100, 3),
        )
        for row in rows
    ]
    assert found == published
    assert asked(SIX_MP)["median_days"] == 23


def test_placebo_is_as_published() -> None:
    """KM-1, KM-3: with nobody censored the share of all that is left; Gehan 1965, median 8."""
    found = asked(PLACEBO)
    shares = [round(row["still_out_pct"] * 21 / 100) for row in found["curve"]]
    assert shares == [19, 17, 16, 14, 12, 8, 6, 4, 3, 2, 1, 0]
    assert found["curve"][-1]["error_pct"] == 0
    assert found["median_days"] == 8


def test_chance_given_the_days_out() -> None:
    """KM-2. By hand from the published shares: 1 - 0.627451 / 0.857143 within ten of six."""
    found = asked(SIX_MP, days_out=6, within=10)
    assert found["back_pct"] == 26.797
    assert round(found["error_pct"], 1) == 11.6


def test_where_half_come_back_but_no_more() -> None:
    """KM-3: S is exactly a half from the second of four on: that day is the median."""
    assert asked("1 2 3 4")["median_days"] == 2
    assert asked("1 2+ 3+ 4+")["median_days"] is None


@pytest.mark.parametrize("days_out", [22, 35, 400])
def test_no_chance_is_given_beyond_what_was_watched(days_out: int) -> None:
    """KM-2: the longest was watched for 35 days."""
    assert asked(SIX_MP, days_out=days_out)["back_pct"] is None
    assert asked(SIX_MP, days_out=21)["back_pct"] is not None


def test_late_entry_does_not_count_before_it() -> None:
    """KM-1. By hand: two watched from the start, one on record from its 10th day only."""
    late = {"entered_day": 10, "days": 20, "returned": 1, "open": 0}
    found = result("return_chance", trips=[*trips("5 15"), late], days_out=0)
    assert [(row["day"], row["at_risk"]) for row in found["curve"]] == [(5, 2), (15, 2), (20, 1)]
    same_day = late | {"days": 10}
    found = result("return_chance", trips=[*trips("5 15"), same_day], days_out=0)
    assert [row["day"] for row in found["curve"]] == [5, 15]


def of_lifelines(rows: Sequence[Trips], *, late: bool) -> list[float]:
    """What lifelines makes of the same trips after each day on which one came back."""
    each = [
        (one.entered_day, one.days, event)
        for one in rows
        for event, count in ((True, one.returned), (False, one.open))
        for _ in range(count)
    ]
    # There one that enters on a day counts on that day; here from the next on.
    entry = [e + 0.5 if e else 0 for e, _, _ in each] if late else None
    fitter = KaplanMeierFitter().fit([d for _, d, _ in each], [r for _, _, r in each], entry=entry)
    days = sorted({day for _, day, event in each if event})
    return [float(share) for share in fitter.survival_function_at_times(days)]


@st.composite
def some_trips(draw: st.DrawFn) -> list[Trips]:
    """One watched from the start to the end, so that somebody is always at risk, and others."""
    found = [Trips(0, 40, 0, 3)]
    for _ in range(draw(st.integers(1, 15))):
        days = draw(st.integers(1, 30))
        entered = draw(st.integers(0, days - 1))
        found.append(Trips(entered, days, draw(st.integers(0, 3)), draw(st.integers(0, 2))))
    return found


@unhurried
@given(rows=some_trips())
def test_lifelines_makes_the_same_of_them(rows: list[Trips]) -> None:
    """KM-1, with late entry and without."""
    for late in (False, True):
        asked_of = rows if late else [one._replace(entered_day=0) for one in rows]
        shares = [fall.still_out for fall in curve(asked_of).falls]
        if shares:
            assert shares == pytest.approx(of_lifelines(asked_of, late=late), abs=1e-9)
