"""Entries as the rules read them, to and from rows of the entry table."""

import json
from dataclasses import dataclass
from typing import Any

from sqlalchemy import RowMapping

from cellarapp.domain.entries import Entry, order_key


@dataclass(slots=True)
class StoredEntry:
    """An entry with what the ledger knows of it beside what it says."""

    entry: Entry
    content_hash: str
    counts_for: str | None
    dropped_by: str | None

    @property
    def live(self) -> bool:
        """Whether it counts for anything."""
        return self.counts_for is not None


def to_columns(stored: StoredEntry, facts: str) -> dict[str, Any]:
    """The row of an entry.

    Args:
        stored: the entry; it has its position.
        facts: its facts as canonical JSON.
    """
    entry = stored.entry
    return {
        "id": entry["id"],
        "position": entry["position"],
        "device": entry["device"],
        "seq": entry["seq"],
        "kind": entry["kind"],
        "subject": entry["subject"],
        "counts_for": stored.counts_for,
        "dropped_by": stored.dropped_by,
        "target": target_of(entry),
        "query": query_of(entry),
        "gyle": entry["facts"]["gyle"] if entry["kind"] == "filled" else None,
        "happened_at": entry["happened_at"],
        "effective_at": entry["effective_at"],
        "received_at": entry["received_at"],
        "order_key": order_key(entry),
        "clock": entry["clock"],
        "person": entry["person"],
        "facts": facts,
        "rules": entry["rules"],
        "content_hash": stored.content_hash,
    }


def from_columns(row: RowMapping) -> StoredEntry:
    """The entry of a row."""
    entry: Entry = {
        "id": row["id"],
        "device": row["device"],
        "seq": row["seq"],
        "kind": row["kind"],
        "subject": row["subject"],
        "happened_at": row["happened_at"],
        "effective_at": row["effective_at"],
        "person": row["person"],
        "facts": json.loads(row["facts"]),
        "rules": row["rules"],
        "clock": row["clock"],
        "received_at": row["received_at"],
        "position": row["position"],
    }
    return StoredEntry(entry, row["content_hash"], row["counts_for"], row["dropped_by"])


def target_of(entry: Entry) -> str | None:
    """The entry that a correction takes out or moves, or None."""
    if entry["kind"] in ("voided", "renumbered"):
        target: str = entry["facts"]["target"]
        return target
    if entry["kind"] == "settled" and entry["facts"]["way"] != "right":
        way: str = entry["facts"]["way"]
        return way.split(":")[1]
    return None


def query_of(entry: Entry) -> str | None:
    """The query that a settlement settles, or None."""
    if entry["kind"] != "settled":
        return None
    query: str = entry["facts"]["query"]
    return query
