"""Everything about one container or customer, and everything that is held."""

from typing import Any

from cellarapp.storage.held import HeldEntry
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading

History = tuple[StoredRow, list[dict[str, Any]]]
"""A row and the entries about it."""


def history(subject: str, row_type: str = "container") -> History | None:
    """The row of a thing and all entries about it in order, or None if nobody ever spoke of it."""
    with reading() as work:
        row = work.rows.load([(row_type, subject)]).get((row_type, subject))
        if row is None:
            return None
        return row, [_as_told(one) for one in work.entries.history(subject)]


def _as_told(one: StoredEntry) -> dict[str, Any]:
    return {**one.entry, "counts_for": one.counts_for, "dropped_by": one.dropped_by}


def held() -> list[HeldEntry]:
    """Everything that is held."""
    with reading() as work:
        return work.held.all()
