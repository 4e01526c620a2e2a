"""What the entries that corrections touch count for, once new entries have come (ORD-3).

Only entries that hang together are looked at: what a new correction is about, what corrects a new
entry, what settles the same query, and so on until nothing more is found.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from cellarapp.domain.corrections import is_correction, resolve
from cellarapp.storage.mapping import StoredEntry, query_of, target_of
from cellarapp.storage.work import Work


class Recount(NamedTuple):
    """An entry of the ledger that now counts otherwise; `before` is what it counted for."""

    stored: StoredEntry
    before: str | None


def count(work: Work, fresh: Sequence[StoredEntry]) -> list[Recount]:
    """Set what the fresh entries count for; answer which older ones now count otherwise."""
    touched = _entangled(work, fresh)
    new = {one.entry["id"] for one in fresh}
    resolved = resolve([one.entry for one in touched.values()])
    recounts = []
    for entry_id, one in touched.items():
        before = (one.counts_for, one.dropped_by)
        one.counts_for = resolved.counts_for.get(entry_id)
        one.dropped_by = resolved.dropped_by.get(entry_id)
        if entry_id not in new and before != (one.counts_for, one.dropped_by):
            recounts.append(Recount(one, before[0]))
    return recounts


def _entangled(work: Work, fresh: Sequence[StoredEntry]) -> dict[str, StoredEntry]:
    """The corrections among the fresh entries and all that hangs together with them."""
    new = {one.entry["id"]: one for one in fresh}
    waiting = work.entries.correcting(new)
    found: dict[str, StoredEntry] = {}
    found.update((e, new[e]) for e in (target_of(w.entry) for w in waiting) if e in new)
    found.update((e, one) for e, one in new.items() if is_correction(one.entry))
    asked_about: set[str] = set(new)
    queries: set[str] = set()
    ahead = _added(found, waiting) + list(found.values())
    while ahead:
        targets = {t for t in (target_of(one.entry) for one in ahead) if t and t not in found}
        found.update((t, new[t]) for t in targets if t in new)
        corrected = {one.entry["id"] for one in ahead} | targets
        settled = {q for q in (query_of(one.entry) for one in ahead) if q} - queries
        ahead = _added(found, work.entries.by_id(targets - set(new)))
        ahead += _added(found, work.entries.correcting(corrected - asked_about))
        ahead += _added(found, work.entries.settling(settled))
        asked_about |= corrected
        queries |= settled
    return found


def _added(found: dict[str, StoredEntry], more: Iterable[StoredEntry]) -> list[StoredEntry]:
    """Those that had not been found before; they are now."""
    added = []
    for one in more:
        if one.entry["id"] not in found:
            found[one.entry["id"]] = one
            added.append(one)
    return added
