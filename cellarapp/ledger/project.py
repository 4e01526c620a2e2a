"""Folds fresh entries into the rows they touch.

An entry that comes after all that its row has seen steps the row forward. Where one comes late, or
a correction changes what counts, the row is folded anew from the entries. Either way gives the
same row (ORD-4).
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from cellarapp.domain.corrections import is_correction
from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.fleet.trip_counts import (
    EndedTrip,
    counted,
    ended_trip,
    fold_with_trips,
)
from cellarapp.domain.fold import step
from cellarapp.domain.records import Record, fold_record, step_record
from cellarapp.ledger.book import Book
from cellarapp.ledger.counting import Recount
from cellarapp.ledger.mentions import TRIPS, key_of, mentioned, own_key
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.rows import Key
from cellarapp.storage.work import Work


def project(
    work: Work,
    book: Book,
    fresh: Sequence[StoredEntry],
    recounts: Sequence[Recount],
    blanked: Sequence[StoredEntry],
) -> None:
    """Bring the book up to date with the fresh entries and with what counts or says other now."""
    book.open({key for one in fresh for key in mentioned(one.entry)})
    refold = _to_refold(fresh, recounts)
    refold |= {key_of(one.entry, one.counts_for) for one in blanked if one.counts_for is not None}
    late, ended = _step(book, fresh, refold)
    changes = [(trip, 1) for trip in ended]
    changes += _refold(work, book, refold | late, fresh, recounts)
    _draw(book, fresh, recounts)
    _count_trips(book, changes)


def _to_refold(fresh: Sequence[StoredEntry], recounts: Sequence[Recount]) -> set[Key]:
    """The rows that corrections may have changed."""
    keys: set[Key] = set()
    for one, before in recounts:
        keys.update(key_of(one.entry, s) for s in (before, one.counts_for) if s is not None)
    for one in fresh:
        if is_correction(one.entry) or one.counts_for != one.entry["subject"]:
            keys.add(own_key(one.entry))
            keys.add(key_of(one.entry, one.counts_for or one.entry["subject"]))
    return keys


def _step(
    book: Book, fresh: Sequence[StoredEntry], refold: set[Key]
) -> tuple[set[Key], list[EndedTrip]]:
    """Step rows forward; answer which could not be because an entry comes late, and trips ended."""
    late: set[Key] = set()
    trips: list[EndedTrip] = []
    for one in sorted(fresh, key=in_order):
        key = own_key(one.entry)
        if key in refold or key in late:
            continue
        if key[0] != "container":
            book.put(key, step_record(book.record(key), one.entry))
            continue
        standing = book.standing(key[1])
        if order_key(one.entry) <= standing["last"]:
            late.add(key)
            continue
        after = step(standing, one.entry).standing
        ended = ended_trip(standing, one.entry, after)
        if ended is not None:
            trips.append(ended)
        book.put(key, after)
    return late, trips


def _refold(
    work: Work,
    book: Book,
    keys: set[Key],
    fresh: Sequence[StoredEntry],
    recounts: Sequence[Recount],
) -> list[tuple[EndedTrip, int]]:
    """Fold rows anew from all entries that count for them.

    Answers which trips count once less and which once more for it.
    """
    if not keys:
        return []
    book.open(keys)
    stored = work.entries.counting_for({k[1] for k in keys})
    changes = [(trip, -1) for trip in _trips_before(stored, keys)]
    known = {one.entry["id"]: one for one in stored}
    known |= {one.entry["id"]: one for one, _ in recounts}
    known |= {one.entry["id"]: one for one in fresh}
    counting: dict[Key, list[StoredEntry]] = defaultdict(list)
    for one in known.values():
        if one.counts_for is not None:
            counting[key_of(one.entry, one.counts_for)].append(one)
    for key in keys:
        entries = [one.entry for one in sorted(counting[key], key=in_order)]
        if key[0] == "container":
            standing, trips = fold_with_trips(key[1], entries)
            book.put(key, standing)
            changes += [(trip, 1) for trip in trips]
        else:
            _put_fields(book, key, fold_record(key[0], entries))
    return changes


def _trips_before(stored: Sequence[StoredEntry], keys: set[Key]) -> Iterator[EndedTrip]:
    """The trips that ended by what counted until now."""
    entries: dict[Key, list[Entry]] = defaultdict(list)
    for one in stored:
        if one.counts_for is not None:
            entries[key_of(one.entry, one.counts_for)].append(one.entry)
    for key in keys:
        if key[0] == "container":
            yield from fold_with_trips(key[1], entries[key])[1]


def _put_fields(book: Book, key: Key, folded: Record) -> None:
    """A record folded anew; what was drawn from a gyle is not among its fields and stays."""
    if key[0] == "gyle":
        folded = {**folded, "drawn_ml": book.record(key)["drawn_ml"]}
    book.put(key, folded)


def _draw(book: Book, fresh: Sequence[StoredEntry], recounts: Sequence[Recount]) -> None:
    """Keep what has been drawn from each gyle."""
    drawn: dict[str, int] = defaultdict(int)
    for one in fresh:
        if one.entry["kind"] == "filled" and one.live:
            drawn[one.entry["facts"]["gyle"]] += one.entry["facts"]["volume_ml"]
    for one, before in recounts:
        if one.entry["kind"] == "filled" and one.live != (before is not None):
            volume_ml = one.entry["facts"]["volume_ml"]
            drawn[one.entry["facts"]["gyle"]] += volume_ml if one.live else -volume_ml
    book.open(("gyle", gyle) for gyle in drawn)
    for gyle, volume_ml in drawn.items():
        record = book.record(("gyle", gyle))
        book.put(("gyle", gyle), {**record, "drawn_ml": record["drawn_ml"] + volume_ml})


def _count_trips(book: Book, changes: Sequence[tuple[EndedTrip, int]]) -> None:
    """TRIPS-2: keep the counts of the customers whose trips ended, or ended otherwise."""
    book.open((TRIPS, trip.customer) for trip, _ in changes)
    for trip, times in changes:
        book.put((TRIPS, trip.customer), counted(book.trips(trip.customer), trip, times))


def in_order(one: StoredEntry) -> str:
    """ORD-1."""
    return order_key(one.entry)
