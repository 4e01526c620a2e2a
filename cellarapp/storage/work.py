"""A unit of work: one transaction and what can be done within it."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from sqlalchemy import Connection, Engine

from cellarapp.storage.audit import AuditStore
from cellarapp.storage.calendars import CalendarStore
from cellarapp.storage.db import db, engine_for_reading, engine_for_writing, turn_to_write
from cellarapp.storage.devices import DeviceStore
from cellarapp.storage.entries import EntryStore
from cellarapp.storage.errors import StorageTrouble
from cellarapp.storage.faults import told_as_ours
from cellarapp.storage.heads import HeadStore
from cellarapp.storage.held import HeldStore
from cellarapp.storage.invites import InviteStore
from cellarapp.storage.people import PersonStore
from cellarapp.storage.rows import RowStore
from cellarapp.storage.trouble import forget_trouble, remember_trouble


@dataclass(frozen=True, slots=True)
class Work:
    """The stores, all within one transaction."""

    head: HeadStore
    entries: EntryStore
    rows: RowStore
    held: HeldStore
    people: PersonStore
    devices: DeviceStore
    invites: InviteStore
    calendars: CalendarStore
    audit: AuditStore


@contextmanager
def reading() -> Iterator[Work]:
    """One transaction that sees one state of the ledger and changes nothing."""
    with _transaction(engine_for_reading(db.engine)) as connection:
        yield stores(connection)


@contextmanager
def writing() -> Iterator[Work]:
    """One transaction that is committed at the end, or leaves nothing behind.

    There is one at a time, over all threads, processes and machines. It waits for its turn.

    Raises: StorageBusy, StorageTrouble.
    """
    with trying_to_write() as work:
        yield work
    forget_trouble()


@contextmanager
def trying_to_write() -> Iterator[Work]:
    """The same, to find out whether it goes well: that it does ends no trouble met before."""
    with connection_for_writing() as connection:
        yield stores(connection)


@contextmanager
def connection_for_writing() -> Iterator[Connection]:
    """The same without the stores, for what is done to whole tables."""
    engine = engine_for_writing(db.engine)
    with turn_to_write(engine), _transaction(engine) as connection:
        yield connection


@contextmanager
def _transaction(engine: Engine) -> Iterator[Connection]:
    try:
        with told_as_ours(), engine.connect() as connection, connection.begin():
            yield connection
    except StorageTrouble as fault:
        remember_trouble(fault)
        raise


def stores(connection: Connection) -> Work:
    """Everything there is, within the transaction of a connection."""
    return Work(
        HeadStore(connection),
        EntryStore(connection),
        RowStore(connection),
        HeldStore(connection),
        PersonStore(connection),
        DeviceStore(connection),
        InviteStore(connection),
        CalendarStore(connection),
        AuditStore(connection),
    )
