"""Turns errors of the database into ours.

SQLite is understood by its words, PostgreSQL by its codes (its documentation, appendix A): in words
it speaks the language of its machine.
"""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DatabaseError, InterfaceError, OperationalError

from cellarapp.storage.errors import (
    StorageBusy,
    StorageDamaged,
    StorageError,
    StorageFull,
    StorageTrouble,
)

SAYINGS: dict[type[StorageError], tuple[str, ...]] = {
    StorageBusy: ("locked", "busy"),
    StorageFull: ("database or disk is full", "no space left"),
    StorageDamaged: ("malformed", "not a database"),
}
CODES: dict[type[StorageError], tuple[str, ...]] = {
    # Serialization failure, deadlock, lock timeout.
    StorageBusy: ("40001", "40P01", "55P03"),
    StorageFull: ("53100",),
    StorageDamaged: ("XX001", "XX002"),
    # A copy that can only be read, no right to the table, no such table.
    StorageTrouble: ("25006", "42501", "42P01"),
}


@contextmanager
def told_as_ours() -> Iterator[None]:
    """What goes wrong within is one of storage/errors.py; a mistake in a statement stays as it is.

    Raises: StorageBusy, StorageFull, StorageDamaged, StorageTrouble.
    """
    try:
        yield
    except (DatabaseError, InterfaceError) as fault:
        error = _ours(fault)
        if error is None:
            raise
        raise error(str(fault.orig)) from fault


def _ours(fault: DatabaseError | InterfaceError) -> type[StorageError] | None:
    code = getattr(fault.orig, "sqlstate", None)
    for error, codes in CODES.items():
        if code in codes:
            return error
    # SQLite says of a damaged file only that it is a DatabaseError.
    ours = isinstance(fault, (OperationalError, InterfaceError)) or type(fault) is DatabaseError
    if not ours:
        return None
    said = "" if code else str(fault.orig).lower()
    for error, sayings in SAYINGS.items():
        if any(words in said for words in sayings):
            return error
    return StorageTrouble
