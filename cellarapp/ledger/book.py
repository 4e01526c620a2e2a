"""The rows that one push touches, held in memory while they change."""

import json
from collections.abc import Iterable
from typing import Any, cast

from cellarapp.domain.fleet.trip_counts import TripCounts, blank_counts
from cellarapp.domain.records import Record, blank_record
from cellarapp.domain.standing import Standing, blank
from cellarapp.ledger.canonical import document
from cellarapp.ledger.checksum import MODULUS, share
from cellarapp.ledger.mentions import TRIPS
from cellarapp.storage.rows import Key, StoredRow
from cellarapp.storage.work import Work


class Book:
    """Rows by key: read once, changed in memory, written together."""

    def __init__(self, work: Work) -> None:
        self._work = work
        self._stored: dict[Key, StoredRow] = {}
        self._docs: dict[Key, Any] = {}
        self._asked: set[Key] = set()
        self._changed: set[Key] = set()

    def fetch(self, keys: Iterable[Key]) -> None:
        """Read these rows, as far as they are there."""
        missing = set(keys) - self._asked
        stored = self._work.rows.load(missing)
        self._asked |= missing
        self._stored |= stored
        self._docs |= {key: json.loads(row.doc) for key, row in stored.items()}

    def open(self, keys: Iterable[Key]) -> None:
        """Read these rows; those that are not there yet begin blank."""
        wanted = set(keys)
        self.fetch(wanted)
        for key in wanted - self._docs.keys():
            self.put(key, blank_doc(key))

    def sizes(self, numbers: Iterable[str]) -> dict[str, tuple[str, int]]:
        """Kind and capacity in mL of those containers that are registered."""
        keys = [("container", number) for number in numbers]
        self.fetch(keys)
        standings = [cast(Standing, self._docs[key]) for key in keys if key in self._docs]
        return {
            s["number"]: (s["kind"], s["capacity_ml"])
            for s in standings
            if s["kind"] is not None and s["capacity_ml"] is not None
        }

    def standing(self, number: str) -> Standing:
        """The standing of a container whose row is open."""
        return cast(Standing, self._docs["container", number])

    def record(self, key: Key) -> Record:
        """The record of any other thing whose row is open."""
        return cast(Record, self._docs[key])

    def trips(self, customer: str) -> TripCounts:
        """The trips of a customer whose row is open."""
        return cast(TripCounts, self._docs[TRIPS, customer])

    def put(self, key: Key, doc: Standing | Record | TripCounts) -> None:
        """Replace a document."""
        self._docs[key] = doc
        self._changed.add(key)

    def changes(self) -> "Changes":
        """The rows that differ from what is stored, without positions yet."""
        changes = Changes()
        for key in sorted(self._changed):
            text = document(self._docs[key])
            before = self._stored.get(key)
            if before is None:
                changes.new.append((key, text))
            elif before.doc != text:
                changes.changed.append((before, text))
        return changes


class Changes:
    """New and changed rows on their way to their positions."""

    def __init__(self) -> None:
        self.new: list[tuple[Key, str]] = []
        self.changed: list[tuple[StoredRow, str]] = []

    def __len__(self) -> int:
        return len(self.new) + len(self.changed)

    def write(self, work: Work, first: int, checksum: int) -> int:
        """Write the rows with positions from `first` on; answer the new checksum."""
        new, changed = [], []
        position = first
        for (row_type, row_id), doc in self.new:
            new.append(StoredRow(row_type, row_id, position, doc))
            checksum += share(row_type, row_id, position)
            position += 1
        for before, doc in self.changed:
            changed.append(StoredRow(before.type, before.id, position, doc))
            checksum += share(before.type, before.id, position)
            checksum -= share(before.type, before.id, before.position)
            position += 1
        work.rows.write(new=new, changed=changed)
        return checksum % MODULUS


def blank_doc(key: Key) -> Standing | Record | TripCounts:
    """The document of a thing that has only been mentioned."""
    row_type, row_id = key
    if row_type == TRIPS:
        return blank_counts()
    return blank(row_id) if row_type == "container" else blank_record(row_type)
