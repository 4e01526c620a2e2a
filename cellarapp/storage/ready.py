"""Whether the database can do its work now."""

import shutil
import time
from collections.abc import Sequence
from pathlib import Path
from threading import Lock
from typing import NamedTuple

from cellarapp.storage.errors import (
    StorageBusy,
    StorageDamaged,
    StorageError,
    StorageFull,
    StorageTrouble,
)
from cellarapp.storage.faults import told_as_ours
from cellarapp.storage.migrate import applied_revision, migrations_folder, newest_revision
from cellarapp.storage.trouble import known_trouble
from cellarapp.storage.work import trying_to_write

MIB = 1024 * 1024
LOOK_EVERY_S = 5
"""Whoever asks in between is told what was found last."""
SAID: dict[type[StorageTrouble], str] = {
    StorageDamaged: "it is damaged; put back a backup",
    StorageFull: "there was no room left to write",
}


class Finding(NamedTuple):
    """One thing that was looked at, and what is to be said of it."""

    name: str
    ok: bool
    said: str


class Looking:
    """Looks once in a while, however often it is asked and by however many at once."""

    def __init__(self) -> None:
        self._found: Sequence[Finding] | None = None
        self._looked_s = 0.0
        self._lock = Lock()

    def found(self, folder: Path | None, *, least_free_mib: int) -> Sequence[Finding]:
        """What was found a few seconds ago, or is found now; see `look`.

        While one looks the others are told what was found last, so that none of them waits.
        """
        if not self._lock.acquire(blocking=self._found is None):
            assert self._found is not None
            return self._found
        try:
            if self._found is None or time.monotonic() - self._looked_s >= LOOK_EVERY_S:
                self._found = look(folder, least_free_mib=least_free_mib)
                self._looked_s = time.monotonic()
            return self._found
        finally:
            self._lock.release()


def look(folder: Path | None, *, least_free_mib: int) -> list[Finding]:
    """Look at the database, its tables and the room that is left.

    Args:
        folder: where the database file is; None when the database is a server.
        least_free_mib: less room than this is too little, MiB.
    """
    room = [] if folder is None else [_room(folder, least_free_mib)]
    return [_database(), _tables(), *room]


def _database() -> Finding:
    """Really writes: a full disk or a lost right is not seen by reading."""
    try:
        with trying_to_write() as work:
            work.head.touch()
        trouble = known_trouble()
    except StorageBusy:
        return Finding("database", False, "another program has been writing for too long")
    except StorageTrouble as fault:
        trouble = fault
    if trouble is None:
        return Finding("database", True, "it can be read and written")
    return Finding("database", False, SAID.get(type(trouble), "it could not be read or written"))


def _tables() -> Finding:
    wanted = newest_revision(migrations_folder())
    try:
        with told_as_ours():
            has = applied_revision()
    except StorageError:
        return Finding("tables", False, "it cannot be read which they are; the log says more")
    if has != wanted:
        said = f"they are {has or 'not there'} and should be {wanted}; start cellarapp again"
        return Finding("tables", False, said)
    return Finding("tables", True, f"they are those of this release ({has})")


def _room(folder: Path, least_free_mib: int) -> Finding:
    free_mib = shutil.disk_usage(folder).free // MIB
    said = f"{free_mib} MiB are free; at least {least_free_mib} should be"
    return Finding("room", free_mib >= least_free_mib, said)
