"""Entries that their author may not record: held, and then taken in or put aside by an owner."""

import json
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cellarapp.domain.entries import KINDS
from cellarapp.domain.roles import DRIVER, OWNER_ALONE, ROLES, Role, may_put_right, may_record
from cellarapp.ledger.check import check

from ..making import Phone, made_id, push_body
from ..signed_in import client_of


def push(client: FlaskClient, *entries: dict[str, Any]) -> list[dict[str, Any]]:
    answer = client.post("/api/push", json=push_body(entries))
    assert answer.json is not None
    results: list[dict[str, Any]] = answer.json["results"]
    return results


def word(client: FlaskClient, entry: dict[str, Any]) -> tuple[str, str]:
    """The verdict on an entry, and the problem that goes with it."""
    [result] = push(client, entry)
    return result["verdict"], result.get("problem", {}).get("type", "").removeprefix("/problems/")


def by(person: str, phone: Phone, kind: str = "filled") -> dict[str, Any]:
    entry = phone.filled("117") if kind == "filled" else phone.entry(kind, "117")
    return entry | {"person": person}


def held(client: FlaskClient) -> list[dict[str, Any]]:
    told = client.get("/api/held").json
    assert told is not None
    found: list[dict[str, Any]] = told["held"]
    return found


def decide(client: FlaskClient, key: str, decision: str) -> int:
    return client.post(f"/api/held/{key}", json={"decision": decision}).status_code


def entries_of(client: FlaskClient, number: str) -> list[str]:
    told = client.get(f"/api/containers/{number}").json
    assert told is not None
    return [entry["id"] for entry in told.get("entries", [])]


def test_roles_differ_in_what_they_may_record() -> None:
    """Cellar all but what cannot be taken back, driver what happens on the road, reader nothing."""
    may = {role: {kind for kind in KINDS if may_record(role, kind)} for role in ROLES}
    assert may == {"owner": KINDS, "cellar": KINDS - OWNER_ALONE, "driver": DRIVER, "reader": set()}


@pytest.mark.parametrize(
    ("role", "kind", "verdict"),
    [
        ("owner", "filled", ("accepted", "")),
        ("cellar", "filled", ("accepted", "")),
        ("driver", "returned", ("accepted", "")),
        ("driver", "filled", ("held", "rights")),
        ("reader", "returned", ("held", "rights")),
    ],
)
def test_entry_is_held_where_the_role_may_not_record_it(
    app: Flask, role: Any, kind: str, verdict: tuple[str, str]
) -> None:
    """Never refused: it may have happened all the same."""
    name = "Ash" if role == "owner" else f"{role} Ash"
    entry = by(name, Phone("new"), kind)
    assert word(client_of(app, role), entry) == verdict


def about(person: str, phone: Phone, target: str, kind: str = "voided") -> dict[str, Any]:
    """A correction of the entry of this id."""
    facts = {"target": target} | ({"to": "118"} if kind == "renumbered" else {})
    return phone.entry(kind, "117", **facts) | {"person": person}


@pytest.mark.parametrize("kind", ["voided", "renumbered"])
def test_driver_puts_right_their_own_entries_only(app: Flask, kind: str) -> None:
    """On the road nobody undoes what was recorded in the cellar, nor what another driver did."""
    cellar, driver = client_of(app, "cellar"), client_of(app, "driver")
    fill, away = by("cellar Ash", Phone("new")), by("cellar Ash", Phone("van"), "returned")
    assert {one["verdict"] for one in push(cellar, fill, away)} == {"accepted"}
    phone = Phone("road")
    own = by("driver Ash", phone, "returned")
    asked = [about("driver Ash", phone, one["id"], kind) for one in (own, fill, away)]
    told = push(driver, own, *asked)
    assert [one["verdict"] for one in told] == ["accepted", "accepted", "held", "held"]
    assert word(driver, about("driver Ash", phone, made_id("unheard of"))) == ("held", "rights")
    assert word(cellar, about("cellar Ash", Phone("newer"), own["id"], kind))[0] == "accepted"


def test_driver_brings_no_correction_that_is_not_theirs(app: Flask) -> None:
    """Written as from a phone of the cellar, it counts at most as what who brings it may do."""
    cellar, driver = client_of(app, "cellar"), client_of(app, "driver")
    fill = by("cellar Ash", Phone("new"))
    push(cellar, fill)
    device = {"device": made_id("device cellar")}
    forged = about("cellar Ash", Phone("dead"), fill["id"]) | device
    assert word(driver, forged) == ("held", "rights")
    assert word(cellar, forged)[0] == "accepted"


def test_roles_differ_in_what_they_may_put_right() -> None:
    """What they may record; on the road only what is their own."""

    def may(role: Role, *, own: bool) -> set[str]:
        return {kind for kind in KINDS if may_put_right(role, kind, own=own)}

    others = {role: may(role, own=False) for role in ROLES}
    cellar = KINDS - OWNER_ALONE
    assert others == {"owner": KINDS, "cellar": cellar, "driver": set(), "reader": set()}
    assert (may("driver", own=True), may("reader", own=True)) == (DRIVER, set())


def test_entry_with_no_name_is_of_whoever_has_the_device_in_hand(app: Flask) -> None:
    """Made before anybody said who it was."""
    assert word(client_of(app, "cellar"), by("", Phone("new")))[0] == "accepted"
    assert word(client_of(app, "driver"), by("", Phone("newer"))) == ("held", "rights")


def test_name_of_somebody_else_is_held(app: Flask) -> None:
    """Who has never proved themselves on the device cannot have recorded on it."""
    cellar = client_of(app, "cellar")
    assert word(cellar, by("Ash", Phone("new"))) == ("held", "rights")


def test_entries_of_a_dead_phone_are_brought_by_another_one(app: Flask) -> None:
    """Judged as what they are, and at most by what those who bring them may record."""
    driver, cellar = client_of(app, "driver"), client_of(app, "cellar")
    mine = {"device": made_id("device cellar"), "person": "cellar Ash"}
    fill = Phone("dead").filled("117") | mine
    back = Phone("dead too").entry("returned", "118") | mine
    assert word(driver, fill) == ("held", "rights")
    assert word(driver, back)[0] == "accepted"
    assert word(cellar, fill)[0] == "accepted"


def test_revoked_device_sends_and_the_owner_decides(app: Flask) -> None:
    """What is taken in counts from the time at which it happened; what is put aside never does."""
    cellar = client_of(app, "cellar")
    phone = Phone("new")
    before, first, second = (by("cellar Ash", phone) for _ in range(3))
    assert word(cellar, before)[0] == "accepted"
    owner = client_of(app, "owner")
    revoke = owner.post(f"/api/devices/{made_id('device cellar')}/revoke", json={})
    assert revoke.status_code == 200
    assert cellar.get("/api/pull").status_code == 401
    sent = push(cellar, before, first, second)
    assert [one["verdict"] for one in sent] == ["known", "held", "held"]
    assert {one["problem"]["type"] for one in sent[1:]} == {"/problems/revoked-device"}
    waiting = {json.loads(one["raw"])["id"]: one["key"] for one in held(owner)}
    assert decide(owner, waiting[first["id"]], "take") == 200
    assert decide(owner, waiting[second["id"]], "put_aside") == 200
    assert entries_of(owner, "117") == [before["id"], first["id"]]
    assert [one["decision"] for one in held(owner)] == ["put_aside"]
    again = push(cellar, first, second)
    assert [one["verdict"] for one in again] == ["known", "held"]
    assert again[1]["problem"]["type"] == "/problems/put-aside"
    assert decide(owner, waiting[first["id"]], "take") == 404
    assert check() == []
    lines = owner.get("/api/audit").json
    assert lines is not None
    done = [(one["who"], one["what"], one["about"]) for one in lines["lines"]]
    assert ("Ash", "held entry taken in", first["id"]) in done
    assert ("Ash", "held entry put aside", second["id"]) in done
    assert ("Ash", "device revoked", "cellar") in done


def test_owner_may_think_again(app: Flask) -> None:
    """What was put aside can still be taken in."""
    driver = client_of(app, "driver")
    entry = by("driver Ash", Phone("new"))
    push(driver, entry)
    owner = client_of(app, "owner")
    [one] = held(owner)
    assert decide(owner, one["key"], "put_aside") == 200
    assert decide(owner, one["key"], "take") == 200
    assert held(owner) == []
    assert entries_of(owner, "117") == [entry["id"]]


def test_what_is_held_for_another_reason_is_not_taken_in_by_a_word(client: FlaskClient) -> None:
    """A kind that the server does not know waits for a later release; it may be put aside."""
    push(client, Phone().entry("blessed", "117"))
    [one] = held(client)
    assert decide(client, one["key"], "take") == 409
    assert decide(client, one["key"], "put_aside") == 200


def test_device_says_how_much_waits_on_it(client: FlaskClient) -> None:
    """For the owner's list of devices."""
    body = push_body([], waiting=3, oldest_waiting_at="2026-11-25T09:00:00.000Z", app="build 7")
    client.post("/api/push", json=body)
    told = client.get("/api/devices").json
    assert told is not None
    [device] = told["devices"]
    assert (device["waiting"], device["app"]) == (3, "build 7")
    assert device["oldest_waiting_at"] == "2026-11-25T09:00:00.000Z"


def test_phone_notices_at_its_next_pull_that_something_about_it_has_changed(app: Flask) -> None:
    """Its number changes with a role, and with nothing else."""
    driver = client_of(app, "driver")

    def version() -> int:
        told = driver.get("/api/pull").json
        assert told is not None
        number: int = told["me_version"]
        return number

    before = version()
    assert version() == before
    owner = client_of(app, "owner")
    people = owner.get("/api/people").json
    assert people is not None
    [one] = [one for one in people["people"] if one["role"] == "driver"]
    owner.post(f"/api/people/{one['id']}", json={"role": "cellar"})
    assert version() != before
