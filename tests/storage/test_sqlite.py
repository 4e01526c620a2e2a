"""What is so on SQLite alone: how its file is written, and the copies that are kept of it."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from flask import Flask

from cellarapp.config import Config
from cellarapp.storage.db import db
from cellarapp.storage.migrate import bring_up_to_date, keep_copy

from .later import with_a_migration_more


@pytest.fixture
def database() -> str:
    return ""


@pytest.mark.parametrize(
    ("setting", "value"),
    [("journal_mode", "wal"), ("synchronous", 2), ("foreign_keys", 1), ("busy_timeout", 15_000)],
)
def test_connection_is_set_up(app: Flask, setting: str, value: object) -> None:
    """Full synchronous: what was acknowledged outlives a power cut."""
    with db.engine.connect() as connection:
        assert connection.exec_driver_sql(f"PRAGMA {setting}").scalar() == value


def test_new_database_keeps_no_copy(app: Flask, tmp_path: Path) -> None:
    """There is nothing in it to lose."""
    assert [path.name for path in tmp_path.iterdir() if "before" in path.name] == []


def test_nothing_to_apply_keeps_no_copy(app: Flask, config: Config, tmp_path: Path) -> None:
    """A start that changes nothing leaves nothing behind."""
    assert bring_up_to_date(config.database_file) is None


def test_copy_of_what_was_there_is_kept_beside_the_database(
    app: Flask, config: Config, tmp_path: Path
) -> None:
    """The copy opens as a database of the release before."""
    copy = bring_up_to_date(config.database_file, with_a_migration_more(tmp_path, then="pass"))
    assert copy is not None
    assert copy.name == "cellarapp.before-9999.sqlite"
    with closing(sqlite3.connect(copy)) as kept:
        assert kept.execute("SELECT version_num FROM alembic_version").fetchone() == ("0003",)
        assert kept.execute("SELECT count(*) FROM head").fetchone() == (1,)


def test_second_copy_does_not_take_the_place_of_the_first(app: Flask, config: Config) -> None:
    """An earlier copy may be the good one."""
    assert config.database_file is not None
    first, second = keep_copy(config.database_file, "x"), keep_copy(config.database_file, "x")
    assert (first.name, second.name) == ("cellarapp.x.sqlite", "cellarapp.x-2.sqlite")
