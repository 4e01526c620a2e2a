"""Brings a database up to the tables that this release needs.

A copy of the file is kept beside it before anything is changed.
"""

import logging
import sqlite3
from contextlib import closing
from pathlib import Path

from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from flask import Flask
from flask_migrate import Migrate, upgrade  # type: ignore[import-untyped]

from cellarapp.storage.db import db
from cellarapp.storage.errors import StorageTrouble
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
    upgrade(directory=str(folder))
    logger.info("database brought from %s to %s", has or "nothing", wants)
    return copy


def applied_revision() -> str | None:
    """The last migration that the database has seen."""
    with db.engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision()


def newest_revision(folder: Path) -> str | None:
    """The last migration there is."""
    return ScriptDirectory(str(folder)).get_current_head()


def known_revisions(folder: Path) -> set[str]:
    """All migrations there are."""
    return {script.revision for script in ScriptDirectory(str(folder)).walk_revisions()}


def keep_copy(database_file: Path, why: str) -> Path:
    """A copy of the database as it is now, beside it, under a name not used before."""
    base = database_file.with_name(f"{database_file.stem}.{why}{database_file.suffix}")
    copy, number = base, 1
    while copy.exists():
        number += 1
        copy = base.with_name(f"{base.stem}-{number}{base.suffix}")
    with (
        closing(sqlite3.connect(database_file)) as source,
        closing(sqlite3.connect(copy)) as target,
    ):
        source.backup(target)
    return copy
