"""Proves that the rows are what the entries say: replays the ledger and compares everything."""

import json
from collections.abc import Iterator

from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.checksum import MODULUS, share
from cellarapp.ledger.replay import Replay, replay
from cellarapp.storage.rows import Key, StoredRow
from cellarapp.storage.work import Work, reading


def check() -> list[str]:
    """The differences, each in a sentence; none when all is well. Changes nothing."""
    with reading() as work:
        return differences(work)


def differences(work: Work) -> list[str]:
    """The same within a unit of work."""
    replayed = replay(work)
    rows = {row.key: row for row in work.rows.all()}
    return [
        *_counts(work, replayed),
        *_rows(rows, replayed.docs),
        *_head(work, list(rows.values())),
    ]


def _counts(work: Work, replayed: Replay) -> Iterator[str]:
    stored = {one.entry["id"]: (one.counts_for, one.dropped_by) for one in work.entries.recounted()}
    for entry_id in sorted(stored.keys() | replayed.exceptions.keys()):
        has, should = stored.get(entry_id), replayed.exceptions.get(entry_id)
        if has != should:
            yield f"entry {entry_id} counts for {_said(has)}, should count for {_said(should)}"


def _said(counts: tuple[str | None, str | None] | None) -> str:
    if counts is None:
        return "its own subject"
    return counts[0] or f"nothing (taken out by {counts[1]})"


def _rows(rows: dict[Key, StoredRow], docs: dict[Key, str]) -> Iterator[str]:
    for key in sorted(rows.keys() | docs.keys()):
        name = f"{key[0]} {key[1]}"
        if key not in rows:
            yield f"{name} has no row"
        elif key not in docs:
            yield f"{name} has a row, but no entry speaks of it"
        elif rows[key].doc != docs[key]:
            yield f"{name} differs in {_differing(rows[key].doc, docs[key])}"


def _differing(has: str, should: str) -> str:
    """Which members of two documents are not the same."""
    one, other = _members(has), _members(should)
    if one is None or other is None:
        return "the whole document, which cannot be read"
    names = sorted(n for n in one.keys() | other.keys() if one.get(n) != other.get(n))
    return ", ".join(names) or "the way it is written"


def _members(doc: str) -> dict[str, object] | None:
    try:
        read = json.loads(doc)
    except ValueError:
        return None
    return read if isinstance(read, dict) else None


def _head(work: Work, rows: list[StoredRow]) -> Iterator[str]:
    head = work.head.read()
    checksum = sum(share(row.type, row.id, row.position) for row in rows) % MODULUS
    if head.checksum != checksum:
        yield f"the checksum is {head.checksum}, should be {checksum}"
    last = max([work.entries.last_position(), *(row.position for row in rows)])
    if last > head.position:
        yield f"position {last} is in use, but the head is only at {head.position}"
    if head.rules != RULES_VERSION:
        yield f"rows were folded by version {head.rules} of the rules, not {RULES_VERSION}"
