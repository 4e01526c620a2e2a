"""Everything about one container, and everything that is held."""

from typing import Any

from cellarapp.storage.held import HeldEntry
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading


def history(number: str) -> tuple[StoredRow, list[dict[str, Any]]] | None:
    """A container's row and all its entries in order, or None if nobody ever spoke of it."""
    with reading() as work:
        row = work.rows.load([("container", number)]).get(("container", number))
        if row is None:
            return None
        return row, [_as_told(one) for one in work.entries.history(number)]


def _as_told(one: StoredEntry) -> dict[str, Any]:
    return {**one.entry, "counts_for": one.counts_for, "dropped_by": one.dropped_by}


def held() -> list[HeldEntry]:
    """Everything that is held."""
    with reading() as work:
        return work.held.all()
