"""TRIPS: what is counted of the trips that have ended, and how corrections change it."""

import json
from typing import Any

import pytest

from cellarapp.ledger.check import check

from ..making import Phone, made_id
from .looking import docs, words

pytestmark = pytest.mark.usefixtures("app")

LANTERN, FERRY = made_id("Lantern"), made_id("Ferry House")


def at(day: int) -> str:
    return f"2026-10-{day:02d}T09:00:00.000Z"


def sent(phone: Phone, number: str, day: int, to: str = LANTERN, **facts: Any) -> dict[str, Any]:
    return phone.entry("sent", number, at=at(day), customer=to, due_on=None, **facts)


def trips(customer: str = LANTERN) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(docs()["trips", customer])
    return found


@pytest.fixture
def van() -> Phone:
    """Two firkins and a pin are on record."""
    phone = Phone("van")
    long_ago = "2026-09-01T09:00:00.000Z"
    words(
        phone.registered("117", at=long_ago),
        phone.registered("118", at=long_ago),
        phone.registered("12", "pin", at=long_ago),
    )
    return phone


def test_trips_are_counted_by_kind_and_days(van: Phone) -> None:
    """TRIPS-2: one that is still open is not among them."""
    words(sent(van, "117", 1), sent(van, "118", 1), sent(van, "12", 1))
    assert trips() == {"ended": {}, "begun": {}}
    words(*(van.entry("returned", number, at=at(21)) for number in ("117", "118", "12")))
    words(sent(van, "117", 22))
    assert trips() == {
        "ended": {"firkin": [[0, 20, 2, 0]], "pin": [[0, 20, 1, 0]]},
        "begun": {"firkin": {"2026-10": 2}, "pin": {"2026-10": 1}},
    }


def test_a_return_that_never_happened_is_not_counted(van: Phone) -> None:
    """TRIPS-2, ORD-3: and counts again once the void is void."""
    back = van.entry("returned", "117", at=at(21))
    void = van.entry("voided", "117", at=at(22), target=back["id"])
    words(sent(van, "117", 1), back, void)
    assert trips()["ended"] == {}
    words(van.entry("voided", "117", at=at(23), target=void["id"]))
    assert trips()["ended"] == {"firkin": [[0, 20, 1, 0]]}
    assert check() == []


def test_a_return_that_comes_to_light_late_takes_its_place(van: Phone) -> None:
    """TRIPS-2, ORD-1: sent on it had come back on some day; now it is known on which."""
    words(sent(van, "117", 1), sent(van, "117", 25, to=FERRY))
    assert trips()["ended"] == {"firkin": [[0, 24, 0, 1]]}
    words(Phone("yard").entry("returned", "117", at=at(15)))
    assert trips()["ended"] == {"firkin": [[0, 14, 1, 0]]}
    assert check() == []


def test_what_was_out_before_the_records_is_watched_from_then_on(van: Phone) -> None:
    """TRIPS-1: late entry."""
    words(
        sent(van, "117", 1, on_record_since="2026-10-11"), van.entry("returned", "117", at=at(21))
    )
    assert trips()["ended"] == {"firkin": [[10, 20, 1, 0]]}


@pytest.mark.parametrize("end", ["washed", "found"])
def test_one_that_turns_up_at_the_brewery_has_returned(van: Phone, end: str) -> None:
    """TRIPS-1, LIFE-20: its return is inferred."""
    place = {"place": "brewery"} if end == "found" else {}
    words(sent(van, "117", 1), van.entry(end, "117", at=at(8), **place))
    assert trips()["ended"] == {"firkin": [[0, 7, 1, 0]]}


def test_scrapped_while_out_is_no_return(van: Phone) -> None:
    """TRIPS-1: and missing ends no trip."""
    words(sent(van, "117", 1), van.entry("missing", "117", at=at(8)))
    assert trips()["ended"] == {}
    words(van.entry("scrapped", "117", at=at(9)))
    assert trips()["ended"] == {"firkin": [[0, 8, 0, 1]]}


def test_noted_twice_on_one_day_it_is_one_trip(van: Phone) -> None:
    """TRIPS-1: by the bench and by the van."""
    words(sent(van, "117", 1), sent(Phone("bench"), "117", 1), sent(van, "117", 1))
    words(van.entry("returned", "117", at=at(3)))
    assert trips()["ended"] == {"firkin": [[0, 2, 1, 0]]}
