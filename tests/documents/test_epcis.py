"""Events of containers: held against the shapes and words of EPCIS 2.0, and what happened."""

import copy
import json
from typing import Any

import pytest
from biip.checksums import gs1_standard_check_digit
from biip.gs1_digital_link_uris import GS1DigitalLinkURI
from flask.testing import FlaskClient
from jsonschema import Draft7Validator

from cellarapp.documents.epcis.events import EVENTS
from cellarapp.domain.entries import CONTAINER_KINDS
from cellarapp.ledger.take_in import take_in

from ..making import Phone, batch, made_id
from .epcis_rules import DOCUMENT

GYLE, LANTERN = made_id("gyle 1"), made_id("Lantern")
RULES = Draft7Validator(DOCUMENT)
WEB = "https://casks.example"
Event = dict[str, Any]


def enter(phone: Phone, *entries: Event, prefix: str = "") -> None:
    brewery = phone.entry("brewery", "brewery", web=WEB, company_prefix=prefix)
    take_in(batch([brewery, *entries]))


def document(client: FlaskClient) -> dict[str, Any]:
    answer = client.get("/api/events.jsonld")
    assert answer.status_code == 200, answer.json
    assert answer.mimetype == "application/ld+json"
    found: dict[str, Any] = json.loads(answer.data)
    return found


def events(client: FlaskClient) -> list[Event]:
    """Those of the document, which is as the standard has it."""
    found = document(client)
    assert [fault.message for fault in RULES.iter_errors(found)] == []
    listed: list[Event] = found["epcisBody"]["eventList"]
    return listed


def life(phone: Phone) -> list[Event]:
    """A container's life with everything in it that can happen to one."""
    hours = iter(range(24))

    def then(kind: str, /, **facts: Any) -> Event:
        return phone.entry(kind, "117", at=f"2026-07-02T{next(hours):02}:00:00.000Z", **facts)

    beer = {"gyle": GYLE, "volume_ml": 40_900, "best_before": None}
    return [
        then("registered", kind="firkin", capacity_ml=40_915),
        then("washed"),
        then("inspected", passed=True),
        then("filled", **beer),
        then("moved", place=made_id("cold room")),
        then("set_aside", why="leaks"),
        then("released"),
        then("stillaged"),
        then("vented", spile="soft"),
        then("tapped"),
        then("emptied"),
        then("washed"),
        then("filled", **beer),
        then("sent", customer=LANTERN, due_on=None),
        then("missing"),
        then("found"),
        then("sent", customer=LANTERN, due_on=None),
        then("returned", customer=LANTERN),
        then("scrapped"),
    ]


def test_a_whole_life_is_told_by_the_standards_rules(client: FlaskClient) -> None:
    """EPC-1 to EPC-3: every kind of entry that is an event is among them."""
    phone = Phone()
    entries = life(phone)
    assert {one["kind"] for one in entries} == EVENTS.keys()
    enter(phone, *entries, phone.entry("noted", "117", words="not for the world"))
    found = events(client)
    steps = [event["bizStep"].removeprefix(f"{WEB}/step/") for event in found]
    assert steps == [
        "commissioning", "washing", "inspecting", "filling", "storing", "holding", "storing",
        "storing", "venting", "tapping", "dispensing", "washing", "filling", "shipping",
        "stock_taking", "stock_taking", "shipping", "receiving", "returned", "destroying",
    ]  # fmt: skip
    assert [event["action"] for event in found if event["type"] == "AssociationEvent"] == [
        "ADD", "DELETE", "ADD", "DELETE",
    ]  # fmt: skip
    [filled, _] = [event for event in found if event["bizStep"].endswith("filling")]
    assert filled["childQuantityList"] == [
        {"epcClass": f"{WEB}/gyle/{GYLE}", "quantity": 40.9, "uom": "LTR"}
    ]
    assert {event["eventTimeZoneOffset"] for event in found} == {"+01:00"}
    assert "Ash" not in json.dumps(found)
    assert "leaks" not in json.dumps(found)


def test_every_kind_of_entry_is_an_event_or_known_to_be_none() -> None:
    """A new kind has to be thought about."""
    beer = {"dosed", "stooped", "dipped", "checked", "planned"}
    words = {"noted", "reported", "told", "forgotten"}
    assert EVENTS.keys() | beer | words == set(CONTAINER_KINDS)


def test_with_a_company_prefix_containers_go_by_their_asset_numbers(client: FlaskClient) -> None:
    """GRAI in a GS1 Digital Link, read by another library; 952 is GS1's prefix for examples."""
    phone = Phone()
    enter(phone, phone.registered("K3", "keg_50", capacity_ml=50_000), prefix="9521141")
    [event] = events(client)
    [uri] = event["epcList"]
    [grai] = GS1DigitalLinkURI.parse(uri).element_strings
    assert grai.ai.ai == "8003"
    assert grai.value.endswith("K3")
    assert gs1_standard_check_digit(grai.value[:13]) == int(grai.value[13])


def test_without_one_they_go_by_the_link_on_their_plate(client: FlaskClient) -> None:
    phone = Phone()
    enter(phone, phone.registered("117"))
    assert events(client)[0]["epcList"] == [f"{WEB}/f/117"]


def test_what_never_happened_is_said_so_and_not_left_out(client: FlaskClient) -> None:
    """EPC-4: who had the event before learns of it, under the same id."""
    phone = Phone()
    registered, washed = phone.registered("117"), phone.entry("washed", "117")
    enter(phone, registered, washed, phone.entry("voided", "117", target=washed["id"]))
    [_, event] = events(client)
    assert event["eventID"] == f"urn:uuid:{washed['id']}"
    declared = event["errorDeclaration"]
    assert declared == {"declarationTime": "2026-11-25T09:00:00.000Z", "reason": "did_not_occur"}


def test_a_wrong_number_is_told_twice(client: FlaskClient) -> None:
    """EPC-4: the wrong one is declared wrong and names the right one."""
    phone = Phone()
    washed = phone.entry("washed", "117")
    put_right = phone.entry("renumbered", "117", target=washed["id"], to="118")
    enter(phone, washed, put_right)
    [wrong, right] = events(client)
    assert wrong["epcList"] == [f"{WEB}/f/117"]
    assert wrong["errorDeclaration"]["reason"] == "incorrect_data"
    assert wrong["errorDeclaration"]["correctiveEventIDs"] == [right["eventID"]]
    assert right["epcList"] == [f"{WEB}/f/118"]
    assert "errorDeclaration" not in right


def test_without_an_address_of_the_brewery_nothing_can_be_named(client: FlaskClient) -> None:
    answer = client.get("/api/events.jsonld")
    assert answer.status_code == 422
    assert answer.json is not None
    assert "address on the web" in answer.json["detail"]


@pytest.mark.parametrize(
    ("member", "wrong"),
    [
        ("bizStep", "filling"),
        ("disposition", "lost"),
        ("eventTime", "yesterday"),
        ("eventTime", "2026-07-02T00:00:00"),
        ("eventTimeZoneOffset", "BST"),
        ("action", "CHANGE"),
        ("epcList", None),
        ("person", "Ash"),
    ],
)
def test_the_rules_find_what_is_wrong(client: FlaskClient, member: str, wrong: Any) -> None:
    """A schema that takes anything would prove nothing."""
    phone = Phone()
    enter(phone, phone.registered("117"))
    planted = copy.deepcopy(document(client))
    planted["epcisBody"]["eventList"][0][member] = wrong
    assert list(RULES.iter_errors(planted)) != []
