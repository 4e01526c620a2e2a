"""The entries, only ever added to."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from sqlalchemy import ColumnElement, Connection, insert, or_, select, update
from sqlalchemy import bindparam as bind

from cellarapp.storage.batches import IN_PIECES, batches
from cellarapp.storage.mapping import StoredEntry, from_columns
from cellarapp.storage.models import Entry


class EntryStore:
    """Reads and adds entries."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def known(self, ids: Iterable[str]) -> dict[str, tuple[int, str]]:
        """Position and content hash of those of the ids that are in the ledger."""
        found: dict[str, tuple[int, str]] = {}
        for some in batches(sorted(ids)):
            asked = select(Entry.id, Entry.position, Entry.content_hash).where(Entry.id.in_(some))
            found |= {row.id: (row.position, row.content_hash) for row in self._run(asked)}
        return found

    def by_id(self, ids: Iterable[str]) -> list[StoredEntry]:
        """The entries of these ids."""
        return self._where(Entry.id.in_, ids)

    def correcting(self, ids: Iterable[str]) -> list[StoredEntry]:
        """The corrections that are about these entries."""
        return self._where(Entry.target.in_, ids)

    def settling(self, queries: Iterable[str]) -> list[StoredEntry]:
        """The settlements of these queries."""
        return self._where(Entry.query.in_, queries)

    def counting_for(self, subjects: Iterable[str]) -> list[StoredEntry]:
        """The entries that count for these subjects."""
        return self._where(Entry.counts_for.in_, subjects)

    def about(self, subjects: Iterable[str], kinds: Sequence[str]) -> list[StoredEntry]:
        """The entries of some kinds that were made about these subjects."""
        found = self._where(Entry.subject.in_, subjects)
        return [one for one in found if one.entry["kind"] in kinds]

    def of_kinds(self, kinds: Iterable[str]) -> list[StoredEntry]:
        """All entries of these kinds."""
        return self._where(Entry.kind.in_, kinds)

    def recounted(self) -> list[StoredEntry]:
        """The entries that do not simply count for their subject."""
        asked = select(Entry.__table__).where(
            or_(
                Entry.counts_for.is_(None),
                Entry.counts_for != Entry.subject,
                Entry.dropped_by.is_not(None),
            )
        )
        return [from_columns(row) for row in self._run(asked).mappings()]

    def history(self, number: str) -> list[StoredEntry]:
        """Every entry that was made about a container or counts for it, in order."""
        asked = (
            select(Entry.__table__)
            .where(or_(Entry.subject == number, Entry.counts_for == number))
            .order_by(Entry.order_key, Entry.id)
        )
        return [from_columns(row) for row in self._run(asked).mappings()]

    def all_by_subject(self) -> Iterator[StoredEntry]:
        """Every entry, those about one subject together, in order."""
        asked = select(Entry.__table__).order_by(Entry.subject, Entry.order_key, Entry.id)
        for row in self._connection.execute(asked, execution_options=IN_PIECES).mappings():
            yield from_columns(row)

    def add(self, rows: Sequence[dict[str, Any]]) -> None:
        """Add entries, given as columns; see mapping.to_columns."""
        if rows:
            self._connection.execute(insert(Entry.__table__), rows)  # type: ignore[arg-type]

    def recount(self, entries: Sequence[StoredEntry]) -> None:
        """Write what these entries count for now."""
        if entries:
            one = update(Entry.__table__).where(Entry.id == bind("of_id"))  # type: ignore[arg-type]
            values = [
                {"of_id": e.entry["id"], "counts_for": e.counts_for, "dropped_by": e.dropped_by}
                for e in entries
            ]
            self._connection.execute(one, values)

    def blank(self, facts: Mapping[str, str]) -> None:
        """Write other facts, as canonical JSON, for the entries of these ids: for an erasure only.

        What an entry was when it was sent is still known by its hash, so that it is not taken for
        another one when a phone offers it again.
        """
        if facts:
            one = update(Entry.__table__).where(Entry.id == bind("of_id"))  # type: ignore[arg-type]
            values = [{"of_id": entry_id, "facts": text} for entry_id, text in facts.items()]
            self._connection.execute(one, values)

    def last_position(self) -> int:
        """The highest position of any entry, 0 when there is none."""
        asked = select(Entry.position).order_by(Entry.position.desc()).limit(1)
        return self._connection.execute(asked).scalar() or 0

    def _where(
        self, among: Callable[[Sequence[str]], ColumnElement[bool]], values: Iterable[str]
    ) -> list[StoredEntry]:
        found: list[StoredEntry] = []
        for some in batches(sorted(values)):
            asked = select(Entry.__table__).where(among(some))
            found += [from_columns(row) for row in self._run(asked).mappings()]
        return found

    def _run(self, statement: Any) -> Any:
        return self._connection.execute(statement)
