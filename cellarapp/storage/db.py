"""The database handle, and everything that differs between SQLite and PostgreSQL.

Owns how a connection is set up and how a transaction begins. On both a transaction that may write
waits at its beginning until it is the only one, so that nothing it reads changes under its hands
and positions become visible in order. SQLite does so with BEGIN IMMEDIATE: one that has read first
and then wants to write is refused at once when another one wrote meanwhile, however long it is
willing to wait. PostgreSQL does so with a lock that ends with the transaction, and serves those
who wait in the order in which they asked.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import Connection, Engine, MetaData, event
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.orm import DeclarativeBase

from cellarapp.storage.turns import Turns

WRITING = "cellarapp_writing"
BUSY_S = "cellarapp_busy_s"

ONE_WRITER = 0x63656C6C6172
"""Names the lock on PostgreSQL, in each database by itself. Any number that nobody else uses."""

DEAD_AFTER_S = 60
"""A machine that went away in the middle of a write holds the others up for no longer, s."""

_one_writer = Turns()
"""Taken by the one thread of this process that writes to SQLite.

SQLite lets writers wait by asking again and again, and whoever asks at the right moment wins; with
several threads one of them may wait for seconds. Turns are in order.
"""


class Base(DeclarativeBase):
    """What every table's class inherits; constraints have names for migrations to call."""

    metadata = MetaData(
        naming_convention={
            "pk": "%(table_name)s_pk",
            "uq": "%(table_name)s_%(column_0_name)s_once",
            "ix": "%(table_name)s_%(column_0_name)s",
            "ck": "%(table_name)s_%(constraint_name)s",
        }
    )


db: SQLAlchemy = SQLAlchemy(model_class=Base)


def set_up_engine(engine: Engine, *, busy_ms: int) -> None:
    """Make connections of this engine begin transactions as they should.

    Args:
        engine: an engine that has not connected yet.
        busy_ms: how long a write waits for another one, ms.
    """
    engine.update_execution_options(**{BUSY_S: busy_ms / 1000})
    if engine.dialect.name == "sqlite":
        _set_up_sqlite(engine, busy_ms)
    else:
        _set_up_postgresql(engine, busy_ms)


def _set_up_sqlite(engine: Engine, busy_ms: int) -> None:
    def on_connect(connection: sqlite3.Connection, _record: object) -> None:
        # sqlite3 would begin transactions by itself, late and only for some statements.
        connection.isolation_level = None
        connection.execute("PRAGMA journal_mode = WAL")
        # A ledger must outlive a power cut: NORMAL may lose the last commits.
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute(f"PRAGMA busy_timeout = {busy_ms}")

    def on_begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE" if _may_write(connection) else "BEGIN")

    event.listen(engine, "connect", on_connect)
    event.listen(engine, "begin", on_begin)


def _set_up_postgresql(engine: Engine, busy_ms: int) -> None:
    def on_connect(connection: DBAPIConnection, _record: object) -> None:
        cursor = connection.cursor()
        cursor.execute(f"SET lock_timeout = {busy_ms}")
        cursor.execute(f"SET tcp_keepalives_idle = {DEAD_AFTER_S // 2}")
        cursor.execute(f"SET tcp_keepalives_interval = {DEAD_AFTER_S // 6}")
        cursor.execute("SET tcp_keepalives_count = 3")
        connection.commit()

    def on_begin(connection: Connection) -> None:
        if _may_write(connection):
            connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({ONE_WRITER})")

    event.listen(engine, "connect", on_connect)
    event.listen(engine, "begin", on_begin)


def _may_write(connection: Connection) -> bool:
    return bool(connection.get_execution_options().get(WRITING, False))


def engine_for_writing(engine: Engine) -> Engine:
    """The same engine, whose transactions may write."""
    return engine.execution_options(**{WRITING: True})


@contextmanager
def turn_to_write(engine: Engine) -> Iterator[None]:
    """Wait until no other thread writes, where those who wait are not served in order.

    Raises: StorageBusy when that takes too long.
    """
    if engine.dialect.name != "sqlite":
        yield
        return
    with _one_writer.taken(within_s=engine.get_execution_options()[BUSY_S]):
        yield


def engine_for_reading(engine: Engine) -> Engine:
    """The same engine, whose transactions see one state of the database from start to end."""
    options: dict[str, Any] = {}
    if engine.dialect.name == "postgresql":
        options = {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True}
    return engine.execution_options(**options)


def close_connections() -> None:
    """Close what the current application keeps open."""
    db.engine.dispose()
