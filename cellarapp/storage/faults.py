"""Turns errors of the database into ours."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import (
    DatabaseError,
    DBAPIError,
    IntegrityError,
    InterfaceError,
    OperationalError,
)

from cellarapp.storage.errors import (
    Overtaken,
    StorageBusy,
    StorageDamaged,
    StorageFull,
    StorageTrouble,
)

BUSY = ("locked", "busy", "lock timeout")
FULL = ("database or disk is full", "no space left")
DAMAGED = ("malformed", "not a database")
LOST_RACE = ("deadlock detected", "could not serialize")


@contextmanager
def told_as_ours() -> Iterator[None]:
    """What goes wrong within is one of storage/errors.py; a mistake in a statement stays as it is.

    Raises: Overtaken, StorageBusy, StorageFull, StorageDamaged, StorageTrouble.
    """
    try:
        yield
    except IntegrityError as fault:
        raise Overtaken from fault
    except (OperationalError, InterfaceError) as fault:
        said = str(fault.orig).lower()
        if any(words in said for words in LOST_RACE):
            raise Overtaken from fault
        if any(words in said for words in BUSY):
            raise StorageBusy from fault
        raise _trouble(fault) from fault
    except DatabaseError as fault:
        # SQLite says of a damaged file only this much.
        if type(fault) is not DatabaseError:
            raise
        raise _trouble(fault) from fault


def _trouble(fault: DBAPIError) -> StorageTrouble:
    said = str(fault.orig)
    if any(words in said.lower() for words in FULL):
        return StorageFull(said)
    if any(words in said.lower() for words in DAMAGED):
        return StorageDamaged(said)
    return StorageTrouble(said)
