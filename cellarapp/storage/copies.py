"""Copies of a SQLite database: whole, on the disk for certain, and there under their name or not.

A copy is made under another name, written through to the disk and only then given its own, so that
neither a crash nor a full disk leaves half a copy that looks like one.
"""

import os
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from cellarapp.storage.errors import StorageBusy, StorageDamaged, StorageTrouble

PART = ".part"
"""What the name of an unfinished copy ends with."""
BESIDE = ("-wal", "-shm", "-journal")
"""What SQLite keeps beside a database, by the ends of their names."""


def copy_database(source: Path, target: Path, *, judge: Callable[[Path], None]) -> None:
    """Copy a database as it is at this moment, also while others write to it.

    Args:
        source: a database file.
        target: what the copy is called once it is whole. What had that name is replaced.
        judge: looks at the copy first; there is none if it raises.
    Raises: StorageDamaged, StorageTrouble.
    """
    part = target.with_name(target.name + PART)
    remove_database(part)
    try:
        _copy(source, part)
        judge(part)
        close_for_good(part)
        put_in_place(part, target)
    except OSError as fault:
        raise StorageTrouble(f"{target} cannot be written: {fault.strerror}") from fault
    finally:
        remove_database(part)


def sound(file: Path) -> None:
    """Read all of a database. Raises: StorageDamaged when it is not what was written."""
    try:
        with closing(sqlite3.connect(file)) as connection:
            said = connection.execute("PRAGMA integrity_check(1)").fetchone()[0]
    except sqlite3.DatabaseError as fault:
        raise StorageDamaged(f"{file} cannot be read: {fault}") from fault
    if said != "ok":
        raise StorageDamaged(f"{file} is damaged: {said}")


def close_for_good(file: Path) -> None:
    """Make one file of it, with nothing of it beside.

    Raises: StorageBusy when somebody has it open, StorageDamaged when it cannot be read.
    """
    try:
        with closing(sqlite3.connect(file, timeout=0)) as connection:
            mode = connection.execute("PRAGMA journal_mode = DELETE").fetchone()[0]
    except sqlite3.OperationalError as fault:
        raise StorageBusy from fault
    except sqlite3.DatabaseError as fault:
        raise StorageDamaged(f"{file} cannot be read: {fault}") from fault
    if mode != "delete":
        raise StorageBusy


def replace_database(file: Path, by: Path, *, kept: Path) -> None:
    """Let another database take the place of this one, which stays under the name `kept`.

    At every moment there is a whole database in the place: this one or the other. Both must be
    closed. Raises: StorageTrouble.
    """
    try:
        _belongs_as(by, file)
        _also_called(file, kept)
        for end in BESIDE:
            beside = file.with_name(file.name + end)
            if beside.exists():
                beside.replace(kept.with_name(kept.name + end))
        put_in_place(by, file)
    except OSError as fault:
        raise StorageTrouble(f"{file} cannot be replaced: {fault.strerror}") from fault


def put_in_place(part: Path, target: Path) -> None:
    """Give a finished file its name, so that a power cut leaves it there or not, but never half."""
    _write_through(part)
    part.replace(target)
    if os.name == "posix":  # elsewhere a folder cannot be opened
        _write_through(target.parent)


def remove_database(file: Path) -> None:
    """Remove a database and what is beside it."""
    for end in ("", *BESIDE):
        file.with_name(file.name + end).unlink(missing_ok=True)


def unused(wanted: Path) -> Path:
    """This name, or with a number if something has it: "x.sqlite", "x-2.sqlite"."""
    found, number = wanted, 1
    while found.exists():
        number += 1
        found = wanted.with_name(f"{wanted.stem}-{number}{wanted.suffix}")
    return found


def _copy(source: Path, part: Path) -> None:
    """All pages in one go: a copy of one moment, for which no writer has to wait."""
    part.touch(mode=0o600)
    try:
        with (
            closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True)) as opened,
            closing(sqlite3.connect(part)) as target,
        ):
            opened.backup(target)
    except sqlite3.OperationalError as fault:
        raise StorageTrouble(f"{source} cannot be copied: {fault}") from fault
    except sqlite3.DatabaseError as fault:
        raise StorageDamaged(f"{source} cannot be read: {fault}") from fault


def _belongs_as(by: Path, file: Path) -> None:
    """Whoever could use the one can use the other, also when root is at work here."""
    about = file.stat()
    by.chmod(about.st_mode & 0o777)
    if os.name == "posix" and os.geteuid() == 0:
        os.chown(by, about.st_uid, about.st_gid)


def _also_called(file: Path, kept: Path) -> None:
    try:
        kept.hardlink_to(file)
    except OSError:  # some file systems have no second names
        shutil.copy2(file, kept)
        _write_through(kept)


def _write_through(path: Path) -> None:
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
