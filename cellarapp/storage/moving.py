"""Copies a whole ledger from one database into an empty one, on PostgreSQL.

Whatever tables there are: a table more needs no line here.
"""

import hashlib
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NamedTuple

from sqlalchemy import Connection, Table, func, insert, select
from sqlalchemy.exc import DataError

from cellarapp.storage.batches import IN_PIECES
from cellarapp.storage.db import db
from cellarapp.storage.errors import StorageTrouble
from cellarapp.storage.work import Work, connection_for_writing, stores


class Counted(NamedTuple):
    """How many rows a table has, and SHA-256 over all of them in the order of their keys."""

    rows: int
    sum: str


@contextmanager
def moved_from(source: Connection) -> Iterator[tuple[Work, dict[str, int]]]:
    """Copy everything into the current application's database, which must be empty.

    Gives the copy to be looked at, and how many rows each table has. It is committed at the end, or
    nothing of it is there.

    Raises: StorageTrouble when the target is not empty, or the copy is not what the source is.
    """
    with connection_for_writing() as target:
        for table in db.metadata.sorted_tables:
            if target.execute(select(table).limit(1)).first() is not None:
                raise StorageTrouble(f"it is not empty: its table {table.name} has rows already")
        counts = {table.name: _move(source, target, table) for table in db.metadata.sorted_tables}
        yield stores(target), counts


def _move(source: Connection, target: Connection, table: Table) -> int:
    everything = select(table).order_by(*table.primary_key.columns)
    found = source.execute(everything, execution_options=IN_PIECES)
    for some in found.mappings().partitions():
        try:
            target.execute(insert(table), [dict(row) for row in some])
        except DataError as fault:
            said = f"the table {table.name} holds what PostgreSQL cannot keep ({fault.orig})"
            raise StorageTrouble(said) from fault
    _number_on(target, table)
    has, should = _counted(target, table), _counted(source, table)
    if has != should:
        raise StorageTrouble(f"the copy of the table {table.name} is not what it was made from")
    return has.rows


def _number_on(target: Connection, table: Table) -> None:
    """Let numbers that the database gives by itself go on after the last one."""
    column = table.autoincrement_column
    if column is None or column.autoincrement is not True:
        return
    sequence = func.pg_get_serial_sequence(table.name, column.name)
    last = select(func.coalesce(func.max(column), 0)).scalar_subquery()
    target.execute(select(func.setval(sequence, last + 1, False)))


def _counted(connection: Connection, table: Table) -> Counted:
    everything = select(table).order_by(*table.primary_key.columns)
    rows, digest = 0, hashlib.sha256()
    for row in connection.execute(everything, execution_options=IN_PIECES):
        rows += 1
        digest.update(repr(tuple(row)).encode())
    return Counted(rows, digest.hexdigest())
