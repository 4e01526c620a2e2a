"""Sorts the elements of a push by what the ledger knows already (ORD-2)."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from cellarapp.domain.entries import Entry, order_key
from cellarapp.ledger.book import Book
from cellarapp.ledger.clock import write_any
from cellarapp.ledger.fields import IS_ID
from cellarapp.ledger.judge import Judged, hold, refuse
from cellarapp.ledger.limits import VOLUMES, too_much
from cellarapp.ledger.problem import Problem
from cellarapp.ledger.repeats import stands_already
from cellarapp.ledger.verdicts import Batch, Verdict
from cellarapp.storage.held import HeldEntry
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.models import Decision
from cellarapp.storage.work import Work

Known = dict[str, tuple[int, str]]
"""Position and content hash by id."""


@dataclass(frozen=True, slots=True)
class Sorted:
    """What is to be done with the elements of a push."""

    known: Known
    """What was in the ledger before."""
    repeats: set[str]
    """Ids of what says no more than what was in the ledger before."""
    fresh: dict[str, StoredEntry]
    """What is new, by id, in the order in which it was sent."""
    to_hold: list[HeldEntry]
    to_release: set[str]
    """Content hashes of what was held and is taken in now."""

    def verdict(self, judged: Judged) -> Verdict:
        """What to answer for an element, once the fresh entries have their positions."""
        entry = judged.entry
        if entry is None:
            return Verdict(judged.id, "held" if judged.hold else "refused", None, judged.problem)
        if entry["id"] in self.known:
            return Verdict(judged.id, "known", self.known[entry["id"]][0])
        if entry["id"] in self.repeats:
            return Verdict(judged.id, "known")
        first = self.fresh[entry["id"]].entry
        return Verdict(judged.id, "accepted" if first is entry else "known", first["position"])


def sort_out(work: Work, book: Book, batch: Batch, judged: Sequence[Judged]) -> Sorted:
    """Find out which elements are new; refuse and hold what has to be."""
    known = work.entries.known({one.entry["id"] for one in judged if one.entry})
    unknown = [one for one in judged if one.entry and one.entry["id"] not in known]
    _refuse_too_much(book, unknown)
    held = work.held.among({one.hash for one in judged if one.raw})
    _keep_aside(judged, held)
    _hold_without_right(work, batch, unknown)
    fresh: dict[str, StoredEntry] = {}
    repeats = _repeats(work, batch, unknown)
    for one in judged:
        if one.entry is not None and one.entry["id"] not in repeats:
            _place(one, one.entry, known, fresh)
    return Sorted(
        known,
        repeats,
        fresh,
        to_hold=_to_hold(batch, (one for one in judged if one.hold and one.hash not in held)),
        to_release=held.keys() & {one.content_hash for one in fresh.values()},
    )


def _place(one: Judged, entry: Entry, known: Known, fresh: dict[str, StoredEntry]) -> None:
    """An entry is known by its id and its content; the same id with other content is held."""
    before = known[entry["id"]][1] if entry["id"] in known else None
    if entry["id"] in fresh:
        before = fresh[entry["id"]].content_hash
    if before is None:
        fresh[entry["id"]] = StoredEntry(entry, one.hash, entry["subject"], None)
    elif before != one.hash:
        said = "Another entry came first under this id. Both are kept; a person has to look."
        hold(one, Problem("other-content", said))


def _refuse_too_much(book: Book, unknown: Sequence[Judged]) -> None:
    """Refuse volumes that cannot be meant, by what is known of the containers now."""
    entries = [one.entry for one in unknown if one.entry is not None]
    sizes = book.sizes({e["subject"] for e in entries if e["kind"] in VOLUMES})
    registered = [e for e in entries if e["kind"] == "registered"]
    for entry in sorted(registered, key=order_key):
        sizes[entry["subject"]] = (entry["facts"]["kind"], entry["facts"]["capacity_ml"])
    for one in unknown:
        errors = too_much(one.entry, sizes) if one.entry is not None else []
        if errors:
            refuse(one, errors)


def _keep_aside(judged: Sequence[Judged], held: Mapping[str, Decision | None]) -> None:
    """What an owner has put aside stays there, however often it is sent."""
    for one in judged:
        if one.entry is not None and held.get(one.hash) == "put_aside":
            hold(one, Problem("put-aside", "An owner has looked at it and put it aside."))


def _hold_without_right(work: Work, batch: Batch, unknown: Sequence[Judged]) -> None:
    """Hold what its author may not record. What is known already stands."""
    asked = [(one, one.entry) for one in unknown if one.entry is not None]
    if batch.rights is None or not asked:
        return
    problems = batch.rights(work, [entry for _, entry in asked])
    for (one, _), problem in zip(asked, problems, strict=True):
        if problem is not None:
            hold(one, problem)


def _repeats(work: Work, batch: Batch, unknown: Sequence[Judged]) -> set[str]:
    entries = [one.entry for one in unknown if batch.once and one.entry is not None]
    return {entry["id"] for entry in entries if stands_already(work, entry)}


def _to_hold(batch: Batch, judged: Iterable[Judged]) -> list[HeldEntry]:
    by_hash = {one.hash: one for one in judged}
    offset_ms = round(batch.offset.total_seconds() * 1000)
    return [
        HeldEntry(
            content_hash=content_hash,
            entry_id=one.id if one.id and IS_ID(one.id) else "",
            raw=one.raw,
            reason=one.problem.slug if one.problem else "",
            incident=one.problem.incident if one.problem else None,
            device=batch.device,
            received_at=write_any(batch.received_at),
            offset_ms=offset_ms,
        )
        for content_hash, one in by_hash.items()
    ]
