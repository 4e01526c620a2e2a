"""The rows that phones pull: what is known now of each thing."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from sqlalchemy import Connection, delete, func, insert, select, tuple_, update
from sqlalchemy import bindparam as bind

from cellarapp.storage.batches import IN_PIECES, batches
from cellarapp.storage.models import Row

Key = tuple[str, str]
"""Type and id of a row."""


class StoredRow(NamedTuple):
    """One row; `doc` is canonical JSON as text."""

    type: str
    id: str
    position: int
    doc: str

    @property
    def key(self) -> Key:
        return (self.type, self.id)


COLUMNS = (Row.type, Row.id, Row.position, Row.doc)


class RowStore:
    """Reads and writes rows."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def load(self, keys: Iterable[Key]) -> dict[Key, StoredRow]:
        """The rows of these keys, as far as there are any."""
        by_type: dict[str, list[str]] = {}
        for row_type, row_id in sorted(keys):
            by_type.setdefault(row_type, []).append(row_id)
        found = {}
        for row_type, ids in by_type.items():
            for some in batches(ids):
                asked = select(*COLUMNS).where(Row.type == row_type, Row.id.in_(some))
                for row in self._connection.execute(asked).all():
                    found[row_type, row[1]] = StoredRow._make(row)
        return found

    def changed_since(self, position: int, limit: int) -> list[StoredRow]:
        """The first `limit` rows after a position, in the order of positions."""
        asked = select(*COLUMNS).where(Row.position > position).order_by(Row.position)
        return [StoredRow._make(row) for row in self._connection.execute(asked.limit(limit)).all()]

    def page(self, after: Key | None, limit: int) -> list[StoredRow]:
        """The first `limit` rows after a key, in the order of keys."""
        asked = select(*COLUMNS).order_by(Row.type, Row.id).limit(limit)
        if after is not None:
            asked = asked.where(tuple_(Row.type, Row.id) > tuple_(*after))
        return [StoredRow._make(row) for row in self._connection.execute(asked).all()]

    def of_type(self, row_type: str) -> Iterable[StoredRow]:
        """Every row of one type, in the order of ids."""
        asked = select(*COLUMNS).where(Row.type == row_type).order_by(Row.id)
        for row in self._connection.execute(asked, execution_options=IN_PIECES):
            yield StoredRow._make(row)

    def count(self) -> int:
        """How many rows there are."""
        return self._connection.execute(select(func.count()).select_from(Row)).scalar_one()

    def all(self) -> Iterable[StoredRow]:
        """Every row, in the order of keys."""
        asked = select(*COLUMNS).order_by(Row.type, Row.id)
        for row in self._connection.execute(asked, execution_options=IN_PIECES):
            yield StoredRow._make(row)

    def write(self, *, new: Sequence[StoredRow], changed: Sequence[StoredRow]) -> None:
        """Add the new rows and replace the changed ones."""
        if new:
            values = [_values(row) for row in new]
            self._connection.execute(insert(Row.__table__), values)  # type: ignore[arg-type]
        if changed:
            one = update(Row.__table__).where(  # type: ignore[arg-type]
                Row.type == bind("of_type"), Row.id == bind("of_id")
            )
            values = [
                {"of_type": r.type, "of_id": r.id, "position": r.position, "doc": r.doc}
                for r in changed
            ]
            self._connection.execute(one, values)

    def remove(self, keys: Iterable[Key]) -> None:
        """Take rows away that no entry speaks of. Only a rebuild finds such rows."""
        for row_type, row_id in keys:
            gone = delete(Row).where(Row.type == row_type, Row.id == row_id)
            self._connection.execute(gone)


def _values(row: StoredRow) -> dict[str, object]:
    return {"type": row.type, "id": row.id, "position": row.position, "doc": row.doc}
