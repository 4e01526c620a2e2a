"""Turns errors of the database into ours."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DatabaseError, IntegrityError, InterfaceError, OperationalError

from cellarapp.storage.errors import Overtaken, StorageBusy, StorageTrouble

BUSY = ("locked", "busy", "lock timeout")
LOST_RACE = ("deadlock detected", "could not serialize")


@contextmanager
def told_as_ours() -> Iterator[None]:
    """What goes wrong within is one of storage/errors.py; a mistake in a statement stays as it is.

    Raises: Overtaken, StorageBusy, StorageTrouble.
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
        raise StorageTrouble(str(fault.orig)) from fault
    except DatabaseError as fault:
        # SQLite says of a damaged file only this much.
        if type(fault) is not DatabaseError:
            raise
        raise StorageTrouble(str(fault.orig)) from fault
