"""Makes the rows anew from the entries.

Rows that were not what the entries say get new positions, so that phones fetch them.
"""

from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.book import Changes
from cellarapp.ledger.checksum import share
from cellarapp.ledger.replay import Replay, replay
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.rows import Key, StoredRow
from cellarapp.storage.work import Work, writing


def rebuild() -> int:
    """Make all rows what the entries say; answer how many were not."""
    with writing() as work:
        seen = work.head.read()
        replayed = replay(work)
        work.entries.recount(_recounts(work, replayed))
        rows = {row.key: row for row in work.rows.all()}
        gone = rows.keys() - replayed.docs.keys()
        work.rows.remove(gone)
        changes = _changes(rows, replayed.docs)
        in_use = max([work.entries.last_position(), *(row.position for row in rows.values())])
        first = max(seen.position, in_use) + 1
        kept = sum(share(*key, row.position) for key, row in rows.items() if key not in gone)
        checksum = changes.write(work, first, kept)
        last = first - 1 + len(changes)
        work.head.write(position=last, checksum=checksum, rules=RULES_VERSION)
        return len(changes) + len(gone)


def _changes(rows: dict[Key, StoredRow], docs: dict[Key, str]) -> Changes:
    changes = Changes()
    for key, doc in sorted(docs.items()):
        if key not in rows:
            changes.new.append((key, doc))
        elif rows[key].doc != doc:
            changes.changed.append((rows[key], doc))
    return changes


def _recounts(work: Work, replayed: Replay) -> list[StoredEntry]:
    """The entries that are on record as counting for something else than they should."""
    stored = {one.entry["id"]: one for one in work.entries.recounted()}
    missing = work.entries.by_id(replayed.exceptions.keys() - stored.keys())
    found = []
    for one in [*stored.values(), *missing]:
        should = replayed.exceptions.get(one.entry["id"], (one.entry["subject"], None))
        if (one.counts_for, one.dropped_by) != should:
            one.counts_for, one.dropped_by = should
            found.append(one)
    return found
