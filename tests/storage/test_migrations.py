"""Migrations: the tables they make are the ones the code uses, and no data is ever at stake."""

import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from flask import Flask
from flask_migrate import downgrade, upgrade
from sqlalchemy import inspect

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.history import history
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import db
from cellarapp.storage.errors import StorageTrouble
from cellarapp.storage.migrate import (
    applied_revision,
    bring_up_to_date,
    migrations_folder,
    newest_revision,
)

from ..making import Phone, batch
from .later import with_a_migration_more

WHAT_TO_DO = (
    r"(?s)could not be brought from \d+ to 9999 .* It is as it was, and the release of cellarapp "
    r"that you had before works with it: go back to that.( A copy of it is kept as .*before-9999)?"
)


def differences() -> list[object]:
    with db.engine.connect() as connection:
        return list(compare_metadata(MigrationContext.configure(connection), db.metadata))


def tables() -> set[str]:
    return set(inspect(db.engine).get_table_names())


def test_migrations_make_the_tables_that_the_models_describe(app: Flask) -> None:
    """A model changed without a migration is found here."""
    assert differences() == []


def test_a_missing_table_is_found_by_the_comparison(app: Flask) -> None:
    """The comparison above can fail."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE held")
    assert differences() != []


def test_migrations_go_down_to_nothing_and_up_again(app: Flask) -> None:
    """Every step has a way back."""
    downgrade(revision="base")
    assert tables() == {"alembic_version"}
    upgrade()
    assert applied_revision() == newest_revision(migrations_folder())
    assert differences() == []


def test_later_release_brings_the_tables_of_this_one_up_to_its_own(
    app: Flask, config: Config, tmp_path: Path
) -> None:
    """The tests below can tell a migration that was made from one that was not."""
    bring_up_to_date(config.database_file, with_a_migration_more(tmp_path, then="pass"))
    assert "more" in tables()
    assert applied_revision() == "9999"


def test_database_of_a_later_release_is_left_alone(app: Flask, config: Config) -> None:
    """An older server must not write into tables that it does not know."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(StorageTrouble, match="made by a later release"):
        bring_up_to_date(config.database_file)


def test_migration_that_fails_leaves_the_database_as_it_was(
    app: Flask, config: Config, tmp_path: Path
) -> None:
    """All of it or none of it, on SQLite as well."""
    broken = with_a_migration_more(tmp_path, then='op.execute("no such words")')
    with pytest.raises(StorageTrouble, match=WHAT_TO_DO):
        bring_up_to_date(config.database_file, broken)
    assert "more" not in tables()
    assert applied_revision() == "0003"


def test_migration_that_stumbles_over_itself_is_told_alike(
    app: Flask, config: Config, tmp_path: Path
) -> None:
    """A mistake in a migration is not the database's, but it must not look otherwise to people."""
    broken = with_a_migration_more(tmp_path, then='raise LookupError("nothing there")')
    with pytest.raises(StorageTrouble, match=WHAT_TO_DO):
        bring_up_to_date(config.database_file, broken)
    assert "more" not in tables()


MIGRATING = """
import sys
from pathlib import Path
from cellarapp.app import opened
from cellarapp.config import read_config
from cellarapp.storage.migrate import bring_up_to_date

config = read_config()
with opened(config, migrate=False):
    bring_up_to_date(config.database_file, Path(sys.argv[1]))
"""


def test_death_in_the_middle_of_a_migration_leaves_the_database_usable(
    config: Config, tmp_path: Path
) -> None:
    """Killed with a table made and rows changed, though nothing of it was agreed upon yet."""
    with opened(config):
        take_in(batch([Phone().filled("117")]))
    then = 'op.execute("DELETE FROM entry")\n    print("in the middle", flush=True)\n    input()'
    later = with_a_migration_more(tmp_path, then=then)
    with subprocess.Popen(
        [sys.executable, "-c", MIGRATING, later],
        env=os.environ | {"CELLAR_DATABASE": config.database_url},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    ) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == b"in the middle\n"
        process.kill()
    assert process.returncode == -signal.SIGKILL
    with opened(config):
        assert "more" not in tables()
        assert check() == []
        assert history("117") is not None
        shutil.rmtree(later)
        bring_up_to_date(config.database_file, with_a_migration_more(tmp_path, then="pass"))
        assert "more" in tables()
        assert history("117") is not None


STARTING = """
import sys
from cellarapp.app import opened
from cellarapp.config import read_config

config = read_config()
print("ready", flush=True)
input()
with opened(config):
    pass
"""


def test_processes_that_start_at_once_make_one_ledger(config: Config) -> None:
    """The first one makes the tables and the head; the others find them."""
    with opened(config):
        downgrade(revision="base")
    processes = [
        subprocess.Popen(
            [sys.executable, "-c", STARTING],
            env=os.environ | {"CELLAR_DATABASE": config.database_url},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        for _ in range(2)
    ]
    for process in processes:
        assert process.stdout is not None
        assert process.stdout.readline() == "ready\n"
    for process in processes:
        assert process.stdin is not None
        process.stdin.write("go\n")
        process.stdin.flush()
    said = [process.communicate()[1] for process in processes]
    assert [process.returncode for process in processes] == [0] * 2, said
    with opened(config):
        assert differences() == []
        assert check() == []
