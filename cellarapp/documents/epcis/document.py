"""The whole of the ledger's events as one EPCIS document in JSON-LD."""

import json
from collections.abc import Iterator
from itertools import groupby

from cellarapp.documents.epcis.events import EVENTS, Event, Subject, emptied, told, withdrawn
from cellarapp.documents.epcis.names import Names
from cellarapp.ledger.on_record import on_record
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.work import reading

CONTEXT = "https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld"
CORRECTIONS = ("voided", "renumbered", "settled")


class CannotTell(Exception):
    """What events need is not on record; the message says what to enter."""


def events_document(created_at: str) -> Iterator[str]:
    """The document in pieces, the events of each container in the order of happening.

    Raises: CannotTell.
    """
    rows = on_record("brewery", "container")
    fields = rows["brewery"].get("brewery", {"fields": {}})["fields"]
    if not fields.get("web"):
        raise CannotTell(
            "Enter the brewery's address on the web first, at the Office: containers and places "
            "are named to the world by it."
        )
    names = Names(fields["web"], fields.get("company_prefix") or "")
    kinds = {number: standing["kind"] for number, standing in rows["container"].items()}
    return _written(names, kinds, created_at)


def _written(names: Names, kinds: dict[str, str | None], created_at: str) -> Iterator[str]:
    head = {
        "@context": [CONTEXT],
        "type": "EPCISDocument",
        "schemaVersion": "2.0",
        "creationDate": created_at,
    }
    yield json.dumps(head)[:-1] + ', "epcisBody": {"eventList": ['
    with reading() as work:
        corrections = work.entries.of_kinds(CORRECTIONS)
        every = [one for one in work.entries.all_by_subject() if one.entry["kind"] in EVENTS]
    events = _events(names, kinds, every, _Corrected(corrections))
    for n, event in enumerate(events):
        yield (",\n" if n else "\n") + json.dumps(event, ensure_ascii=False)
    yield "]}}"


class _Corrected:
    """When an entry was put right: taken out by another one, or given another number."""

    def __init__(self, corrections: list[StoredEntry]) -> None:
        self._made_at = {one.entry["id"]: one.entry["effective_at"] for one in corrections}
        self._renumbered_at: dict[str, str] = {}
        for one in sorted(corrections, key=lambda one: one.entry["effective_at"]):
            facts = one.entry["facts"]
            act, _, target = facts.get("way", "").rpartition(":")[0].partition(":")
            if one.entry["kind"] == "renumbered":
                target = facts["target"]
            if one.dropped_by is None and (one.entry["kind"] == "renumbered" or act == "renumber"):
                self._renumbered_at[target] = one.entry["effective_at"]

    def at(self, one: StoredEntry) -> str:
        """The time of what took it out, else the last time that its number was put right."""
        if one.dropped_by is not None:
            return self._made_at[one.dropped_by]
        return self._renumbered_at[one.entry["id"]]


def _events(
    names: Names, kinds: dict[str, str | None], every: list[StoredEntry], corrected: _Corrected
) -> Iterator[Event]:
    def subject(number: str) -> Subject:
        return Subject(names, names.container(number, kinds.get(number)))

    def number_of(one: StoredEntry) -> str:
        return str(one.counts_for or one.entry["subject"])

    def in_order(one: StoredEntry) -> tuple[str, str, str, int]:
        entry = one.entry
        return number_of(one), entry["effective_at"], entry["device"], entry["seq"]

    for number, entries in groupby(sorted(every, key=in_order), key=number_of):
        full = False
        for one in entries:
            entry, kind = one.entry, one.entry["kind"]
            event = told(EVENTS[kind](subject(number), entry["facts"]), entry)
            if one.dropped_by is not None:
                yield withdrawn(event, corrected.at(one), "did_not_occur", [])
                continue
            if number != entry["subject"]:
                wrong = told(EVENTS[kind](subject(entry["subject"]), entry["facts"]), entry)
                event = told(EVENTS[kind](subject(number), entry["facts"]), entry, number)
                instead = [event["eventID"]]
                yield withdrawn(wrong, corrected.at(one), "incorrect_data", instead)
            yield event
            if full and kind in ("returned", "washed", "scrapped"):
                # The ledger takes it that no beer is left in it: so must whoever reads the events.
                yield told(emptied(subject(number), names.step(kind)), entry, f"{number} empty")
            full = kind == "filled" or (full and kind not in EMPTYING)


EMPTYING = ("emptied", "returned", "washed", "scrapped")
