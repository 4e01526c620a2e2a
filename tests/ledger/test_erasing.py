"""What is erased of a person is gone from the ledger, and the ledger holds."""

import json
from typing import Any

import pytest

from cellarapp.ledger.check import check
from cellarapp.storage.db import db

from ..making import Phone, made_id
from .looking import docs, words

pytestmark = pytest.mark.usefixtures("app")

LANTERN = made_id("Lantern")
PERSON = {"name": "Lantern", "contact": "Gam Ferryman", "phone": "01632 960 100"}


def at(hour: int) -> str:
    return f"2026-11-24T{hour:02d}:00:00.000Z"


def lantern() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(docs()["customer", LANTERN])
    return found


def everything_stored() -> str:
    """All text of the entries and rows, as a thief would read it."""
    with db.engine.connect() as connection:
        tables = [connection.exec_driver_sql(f"SELECT * FROM {name}") for name in ("entry", "row")]
        return "\n".join(str(row) for table in tables for row in table.all())


def told(office: Phone) -> list[dict[str, Any]]:
    return [
        office.entry("customer", LANTERN, at=at(8), agreed_days=14, **PERSON),
        office.entry("chased", LANTERN, at=at(9), words="Gam Ferryman is ill", promised_on=None),
    ]


def test_what_was_said_of_a_person_is_gone_and_the_rest_stays() -> None:
    """The customer's name, days and when it was asked are no person's."""
    office = Phone("office")
    words(*told(office))
    words(office.entry("erased", LANTERN, at=at(10)))
    assert "Gam" not in everything_stored()
    assert "960" not in everything_stored()
    assert lantern()["fields"] == {"name": "Lantern", "agreed_days": 14}
    assert lantern()["chase"]["words"] == ""
    assert lantern()["chase"]["since"] == at(9)
    assert check() == []


def test_the_name_goes_too_where_it_is_a_persons() -> None:
    office = Phone("office")
    words(*told(office), office.entry("erased", LANTERN, at=at(10), name=True))
    assert "Lantern" not in everything_stored()
    assert check() == []


def test_what_is_sent_again_is_known_and_does_not_come_back() -> None:
    """ORD-2: a phone that offers its entries again, after a restore or a lost answer."""
    office = Phone("office")
    entries = told(office)
    words(*entries, office.entry("erased", LANTERN, at=at(10)))
    assert words(*entries) == ["known", "known"]
    assert "Gam" not in everything_stored()


def test_what_arrives_later_but_was_said_before_is_not_kept() -> None:
    """ORD-1: from a phone that was off; what is said after the erasure is new and stays."""
    office, van = Phone("office"), Phone("van")
    words(office.entry("erased", LANTERN, at=at(10)))
    words(*told(van))
    assert "Gam" not in everything_stored()
    words(office.entry("customer", LANTERN, at=at(11), contact="Ottoline"))
    assert lantern()["fields"]["contact"] == "Ottoline"
    assert check() == []


def test_an_erasure_that_is_undone_brings_nothing_back() -> None:
    """ORD-3: and it is the same in whatever order the void comes."""
    office = Phone("office")
    erased = office.entry("erased", LANTERN, at=at(10))
    void = office.entry("voided", "117", at=at(11), target=erased["id"])
    words(*told(office), erased)
    words(void)
    assert "Gam" not in everything_stored()
    assert "contact" not in lantern()["fields"]
    assert check() == []


GAM = {"where": "Mill Lane", "words": "from Gam", "name": "Gam", "phone": "01632 960 100"}


@pytest.mark.parametrize("report_first", [True, False])
def test_what_a_finder_left_of_themselves_is_gone_and_where_it_is_stays(
    *, report_first: bool
) -> None:
    """Whichever came first; a report of somebody else's is as it was."""
    office = Phone("office")
    report = office.entry("reported", "117", at=at(8), **GAM)
    other = office.entry("reported", "117", at=at(9), where="Quay", name="Hux")
    forgotten = office.entry("forgotten", "117", at=at(10), target=report["id"])
    for one in [report, other, forgotten] if report_first else [forgotten, other, report]:
        words(one)
    assert "Gam" not in everything_stored()
    assert "960" not in everything_stored()
    queries = json.loads(docs()["container", "117"])["queries"]
    assert [(q["facts"]["where"], q["facts"]["name"]) for q in queries] == [
        ("Mill Lane", ""),
        ("Quay", "Hux"),
    ]
    assert words(report) == ["known"]
    assert check() == []


def test_finder_is_forgotten_of_a_report_that_was_moved_to_another_number() -> None:
    office = Phone("office")
    report = office.entry("reported", "117", at=at(8), **GAM)
    words(report, office.entry("renumbered", "117", at=at(9), target=report["id"], to="171"))
    words(office.entry("forgotten", "117", at=at(10), target=report["id"]))
    assert "Gam" not in everything_stored()
    [query] = json.loads(docs()["container", "171"])["queries"]
    assert query["facts"] == {"where": "Mill Lane", "words": "", "name": "", "phone": ""}
    assert check() == []
