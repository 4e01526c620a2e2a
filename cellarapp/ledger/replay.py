"""Makes every row anew from the entries alone, without a look at the rows or at what counts."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import groupby

from cellarapp.domain.corrections import resolve
from cellarapp.domain.entries import CORRECTION_KINDS
from cellarapp.domain.fleet.trip_counts import TripCounts, blank_counts, counted, fold_with_trips
from cellarapp.domain.records import Record, fold_record
from cellarapp.ledger.canonical import document
from cellarapp.ledger.mentions import TRIPS, key_of, mentioned
from cellarapp.ledger.project import in_order
from cellarapp.storage.mapping import StoredEntry, target_of
from cellarapp.storage.rows import Key
from cellarapp.storage.work import Work

Counts = tuple[str | None, str | None]
"""What an entry counts for, and which entry took it out."""


@dataclass(slots=True)
class Replay:
    """What the entries say."""

    docs: dict[Key, str] = field(default_factory=dict)
    """The document that each row should have."""
    exceptions: dict[str, Counts] = field(default_factory=dict)
    """The entries that do not simply count for their subject, by id."""


def replay(work: Work) -> Replay:
    """Fold the whole ledger. Holds all rows in memory, but of the entries one subject at a time."""
    corrections = work.entries.of_kinds(CORRECTION_KINDS)
    targets = work.entries.by_id({t for t in map(_target, corrections) if t})
    involved = {one.entry["id"]: one for one in [*corrections, *targets]}
    found = Replay(exceptions=_exceptions(list(involved.values())))
    arrived: dict[Key, list[StoredEntry]] = defaultdict(list)
    for entry_id, (counts_for, _) in found.exceptions.items():
        if counts_for is not None:
            one = involved[entry_id]
            arrived[key_of(one.entry, counts_for)].append(one)
    _fold_all(work, found, arrived)
    return found


def _target(one: StoredEntry) -> str | None:
    return target_of(one.entry)


def _exceptions(involved: list[StoredEntry]) -> dict[str, Counts]:
    resolved = resolve([one.entry for one in involved])
    found = {}
    for entry in (one.entry for one in involved):
        counts = (resolved.counts_for.get(entry["id"]), resolved.dropped_by.get(entry["id"]))
        if counts != (entry["subject"], None):
            found[entry["id"]] = counts
    return found


def _fold_all(work: Work, found: Replay, arrived: dict[Key, list[StoredEntry]]) -> None:
    keys: set[Key] = set(arrived)
    drawn: dict[str, int] = defaultdict(int)
    gyles: dict[str, Record] = {}
    trips: dict[str, TripCounts] = defaultdict(blank_counts)

    def put(key: Key, counting: Iterable[StoredEntry]) -> None:
        entries = [one.entry for one in sorted(counting, key=in_order)]
        for entry in entries:
            if entry["kind"] == "filled":
                drawn[entry["facts"]["gyle"]] += entry["facts"]["volume_ml"]
        if key[0] == "container":
            standing, ended = fold_with_trips(key[1], entries)
            found.docs[key] = document(standing)
            for trip in ended:
                trips[trip.customer] = counted(trips[trip.customer], trip, 1)
        elif key[0] == "gyle":
            gyles[key[1]] = fold_record("gyle", entries)
        else:
            found.docs[key] = document(fold_record(key[0], entries))

    for counting in _by_subject(work, found.exceptions, keys):
        for key, own in counting.items():
            put(key, [*own, *arrived.pop(key, [])])
    for key in keys - found.docs.keys() - {("gyle", gyle) for gyle in gyles}:
        if key[0] != TRIPS:
            put(key, arrived.pop(key, []))
    for gyle, record in gyles.items():
        found.docs["gyle", gyle] = document({**record, "drawn_ml": drawn[gyle]})
    for customer in (row_id for row_type, row_id in keys if row_type == TRIPS):
        found.docs[TRIPS, customer] = document(trips[customer])


def _by_subject(
    work: Work, exceptions: dict[str, Counts], keys: set[Key]
) -> Iterator[dict[Key, list[StoredEntry]]]:
    """The entries that count for their own subject, a subject at a time; notes every key."""
    for _, about_one in groupby(work.entries.all_by_subject(), lambda one: one.entry["subject"]):
        counting: dict[Key, list[StoredEntry]] = defaultdict(list)
        for one in about_one:
            keys.update(mentioned(one.entry))
            if one.entry["id"] not in exceptions:
                counting[key_of(one.entry, one.entry["subject"])].append(one)
        yield counting
