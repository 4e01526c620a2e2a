"""Brings a database up to the tables that this release needs.

A copy of the file is kept beside it before anything is changed.
"""

import logging
from pathlib import Path

from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from flask import Flask
from flask_migrate import Migrate, upgrade  # type: ignore[import-untyped]

from cellarapp.storage.copies import copy_database, sound, unused
from cellarapp.storage.db import db
from cellarapp.storage.errors import StorageBusy, StorageTrouble
from cellarapp.storage.faults import told_as_ours

logger = logging.getLogger(__name__)

PACKAGE = Path(__file__).resolve().parent.parent
PLACES = (PACKAGE / "migrations", PACKAGE.parent / "migrations")
"""Within an installed package; beside it in a checkout."""


def migrations_folder() -> Path:
    """Where the migrations are. Raises: FileNotFoundError when the installation lacks them."""
    for folder in PLACES:
        if (folder / "env.py").exists():
            return folder
    raise FileNotFoundError("the migrations are missing; install cellarapp again")


def set_up_migrations(app: Flask) -> None:
    """Make `flask db` work for this application."""
    Migrate(app, db, directory=str(migrations_folder()), render_as_batch=True)


@told_as_ours()
def bring_up_to_date(database_file: Path | None, folder: Path | None = None) -> Path | None:
    """Apply what is missing; answer where the copy is, if one had to be kept.

    Args:
        database_file: the SQLite file, None when the database is a server.
        folder: where the migrations are, if not where they belong.
    Raises: StorageTrouble; then the database is as it was.
    """
    folder = folder or migrations_folder()
    has, wants = applied_revision(), newest_revision(folder)
    if has == wants:
        return None
    if has is not None and has not in known_revisions(folder):
        raise StorageTrouble(f"it was made by a later release of cellarapp (its tables are {has})")
    copy = None
    if has is not None and database_file is not None:
        copy = keep_copy(database_file, f"before-{wants}")
        logger.info("a copy of the database is kept as %s", copy)
    try:
        with told_as_ours():
            upgrade(directory=str(folder))
    except StorageBusy:
        raise
    except Exception as fault:  # whatever it is, the transaction that it ended changed nothing
        raise StorageTrouble(_failed(has, wants, copy, fault)) from fault
    logger.info("database brought from %s to %s", has or "nothing", wants)
    return copy


def applied_revision() -> str | None:
    """The last migration that the database has seen."""
    with db.engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision()


def is_up_to_date() -> bool:
    """Whether the database has the tables that this release needs."""
    return applied_revision() == newest_revision(migrations_folder())


def newest_revision(folder: Path) -> str | None:
    """The last migration there is."""
    return ScriptDirectory(str(folder)).get_current_head()


def known_revisions(folder: Path) -> set[str]:
    """All migrations there are."""
    return {script.revision for script in ScriptDirectory(str(folder)).walk_revisions()}


def keep_copy(database_file: Path, why: str) -> Path:
    """A copy of the database as it is now, beside it, under a name not used before."""
    name = f"{database_file.stem}.{why}{database_file.suffix}"
    copy = unused(database_file.with_name(name))
    copy_database(database_file, copy, judge=sound)
    return copy


def _failed(has: str | None, wants: str | None, copy: Path | None, fault: Exception) -> str:
    kept = "" if copy is None else f" A copy of it is kept as {copy}."
    return (
        f"it could not be brought from {has or 'nothing'} to {wants} ({fault}). It is as it was, "
        f"and the release of cellarapp that you had before works with it: go back to that.{kept}"
    )
