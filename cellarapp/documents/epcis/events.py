"""EPC: which event an entry is, in the words of the Core Business Vocabulary 2.0.

The vocabulary has no filling, washing, venting or tapping: those steps have addresses of our own.
Beer in a container is a quantity of its gyle associated with it, as GS1's own example does it with
lots in a reusable asset. What is only words or plans is no event.
"""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple
from uuid import UUID, uuid5

from cellarapp.documents.epcis.names import Names
from cellarapp.domain.calendar import LONDON, parse_instant
from cellarapp.domain.inference import AT_THE_BREWERY

Event = dict[str, Any]
Facts = Mapping[str, Any]


class Subject(NamedTuple):
    """The container that an entry counts for, as the world knows it."""

    names: Names
    uri: str


def _object(one: Subject, step: str, disposition: str | None, **more: Any) -> Event:
    said = {} if disposition is None else {"disposition": disposition}
    event = {"type": "ObjectEvent", "action": "OBSERVE", "epcList": [one.uri], "bizStep": step}
    return {**event, **said, **more}


def _at(one: Subject, place: str | None) -> Event:
    return {"bizLocation": {"id": one.names.place(place or AT_THE_BREWERY)}}


def _registered(one: Subject, facts: Facts) -> Event:
    return _object(one, "commissioning", "active", action="ADD", **_at(one, facts.get("place")))


def _filled(one: Subject, facts: Facts) -> Event:
    """EPC-2: litres of a gyle come into the container."""
    beer = {
        "epcClass": one.names.gyle(facts["gyle"]),
        "quantity": facts["volume_ml"] / 1000,
        "uom": "LTR",
    }
    return {
        "type": "AssociationEvent",
        "action": "ADD",
        "parentID": one.uri,
        "childQuantityList": [beer],
        "bizStep": one.names.step("filling"),
        "disposition": "in_progress",
        **_at(one, facts.get("place")),
    }


def emptied(one: Subject, step: str) -> Event:
    """EPC-3: whatever beer was in it is no longer."""
    return {"type": "AssociationEvent", "action": "DELETE", "parentID": one.uri, "bizStep": step}


def _sent(one: Subject, facts: Facts) -> Event:
    to = {"type": "possessing_party", "destination": one.names.customer(facts["customer"])}
    here = {"readPoint": {"id": one.names.place(AT_THE_BREWERY)}}
    return _object(one, "shipping", "in_transit", destinationList=[to], **here)


def _returned(one: Subject, facts: Facts) -> Event:
    back = {}
    if facts.get("customer"):
        source = {"type": "possessing_party", "source": one.names.customer(facts["customer"])}
        back = {"sourceList": [source]}
    return _object(one, "receiving", "returned", **back, **_at(one, facts.get("place")))


def _inspected(one: Subject, facts: Facts) -> Event:
    passed = "conformant" if facts["passed"] else "non_conformant"
    return _object(one, "inspecting", passed)


def _own(step: str, disposition: str | None) -> Callable[[Subject, Facts], Event]:
    return lambda one, facts: _object(one, one.names.step(step), disposition)


def _stored(one: Subject, facts: Facts) -> Event:
    return _object(one, "storing", "sellable_not_accessible", **_at(one, facts.get("place")))


EVENTS: dict[str, Callable[[Subject, Facts], Event]] = {
    "registered": _registered,
    "washed": _own("washing", "available"),
    "inspected": _inspected,
    "filled": _filled,
    "moved": _stored,
    "stillaged": _stored,
    "vented": _own("venting", None),
    "tapped": _own("tapping", "container_open"),
    "emptied": lambda one, facts: emptied(one, "dispensing"),
    "sent": _sent,
    "returned": _returned,
    "set_aside": lambda one, facts: _object(one, "holding", "non_sellable_other"),
    "released": lambda one, facts: _object(one, "storing", "available"),
    "missing": lambda one, facts: _object(one, "stock_taking", "unknown"),
    "found": lambda one, facts: _object(
        one, "stock_taking", "in_progress", **_at(one, facts.get("place"))
    ),
    "scrapped": lambda one, facts: _object(one, "destroying", "destroyed", action="DELETE"),
}
"""EPC-1: the event of each kind of entry that is one."""


def told(event: Event, entry: Mapping[str, Any], part: str = "") -> Event:
    """The event with its time, its zone and its id. A further event of an entry has a part's id."""
    offset = parse_instant(entry["effective_at"]).astimezone(LONDON).strftime("%z")
    event_id = uuid5(UUID(entry["id"]), part) if part else entry["id"]
    return {
        "eventID": f"urn:uuid:{event_id}",
        "eventTime": entry["effective_at"],
        "eventTimeZoneOffset": f"{offset[:3]}:{offset[3:5]}",
        **event,
    }


def withdrawn(event: Event, at: str, reason: str, instead: list[str]) -> Event:
    """EPC-4: an event that never was, or was otherwise: said again with a declaration.

    `reason` is did_not_occur or incorrect_data; `instead` are the ids of the events that are right.
    """
    declared: Event = {"declarationTime": at, "reason": reason}
    return {
        **event,
        "errorDeclaration": declared | ({"correctiveEventIDs": instead} if instead else {}),
    }
