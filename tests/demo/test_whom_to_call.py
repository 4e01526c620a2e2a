"""CALL: on the demo the order in which customers are to be called makes sense to a person."""

from collections import Counter
from functools import cache
from typing import Any

import pytest

from cellarapp.demo.words import CUSTOMERS
from cellarapp.domain.calculations import calculate
from cellarapp.domain.calendar import days_between, london_date
from cellarapp.domain.fleet.trip_counts import fold_with_trips
from cellarapp.domain.fold import entries_by_subject
from cellarapp.domain.numbers import is_number

from .scene import NOWS, scene

every_now = pytest.mark.parametrize("now", NOWS)
HABITS = {customer["name"]: customer["is"] for customer in CUSTOMERS}
Trip = tuple[int, bool]


def as_asked(trips: list[Trip]) -> list[dict[str, int]]:
    """Alike trips together."""
    return [
        {"entered_day": 0, "days": days, "returned": n * back, "open": n * (not back)}
        for (days, back), n in Counter(trips).items()
    ]


@cache
def calls(now: str) -> list[dict[str, Any]]:
    """What a call to each customer is worth, most first; those that are not worth one left out."""
    trips: dict[str, list[Trip]] = {}
    out: dict[str, list[dict[str, Any]]] = {}
    for number, counting in entries_by_subject(scene(now).entries).items():
        if not is_number(number):
            continue
        standing, ended = fold_with_trips(number, counting)
        for one in ended:
            trips.setdefault(one.customer, []).append((one.days, one.returned))
        trip = standing["trip"]
        if trip is not None and trip["due_on"] is not None:
            began_on = london_date(trip["since"])
            days = days_between(began_on, london_date(now))
            trips.setdefault(trip["customer"], []).append((days, False))
            out.setdefault(trip["customer"], []).append(
                {
                    "kind": standing["kind"],
                    "days_out": days,
                    "agreed_days": days_between(began_on, trip["due_on"]),
                }
            )
    everybody = as_asked([trip for some in trips.values() for trip in some])
    found = []
    for customer, has in out.items():
        asked = {"own": as_asked(trips[customer]), "all": everybody, "out": has}
        worth = calculate("call_worth", asked)["result"]
        name = scene(now).records["customer"][customer]["fields"]["name"]
        found.append({**worth, "is": HABITS[name]})
    worth_it = [one for one in found if one["worth_calling"]]
    return sorted(worth_it, key=lambda one: -one["worth_pence"])


@every_now
def test_keepers_for_good_come_first(now: str) -> None:
    """Who has had ten for a year comes before who is a week late with one."""
    first, *_ = calls(now)
    assert first["is"] == "keeper"
    assert first["loss_pence"] > 30_000
    keepers = [n for n, one in enumerate(calls(now)) if one["is"] == "keeper"]
    assert keepers[-1] < 4


@every_now
def test_prompt_payers_do_not_appear(now: str) -> None:
    """Nor does anybody whose containers are in time."""
    assert "prompt" not in {one["is"] for one in calls(now)}
    assert all(one["late"] for one in calls(now))


@every_now
def test_the_list_is_short_enough_to_ring_through(now: str) -> None:
    """And missing is proposed for what keepers have kept for long, not for everything late."""
    assert 2 <= len(calls(now)) <= 12
    proposed = [row for one in calls(now) for row in one["out"] if row["propose_missing"]]
    late = [row for one in calls(now) for row in one["out"] if row["late_days"]]
    assert 0 < len(proposed) < len(late)
    assert min(row["days_out"] for row in proposed) > 56
