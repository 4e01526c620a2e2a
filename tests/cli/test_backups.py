"""`cellarapp backup` and `cellarapp restore`."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from freezegun import freeze_time

from cellarapp.app import opened
from cellarapp.cli import main
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.history import history
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.backups import backup_path, backups_in
from cellarapp.storage.copies import close_for_good
from cellarapp.storage.db import db
from cellarapp.storage.heads import HeadState

from ..conftest import config_in
from ..making import Phone, batch

Printed = pytest.CaptureFixture[str]


@pytest.fixture
def brewery(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Config:
    """The environment leads to a folder of the test's own, with one cask in its ledger."""
    for name in ("CELLAR_DATABASE", "CELLAR_DEMO", "CELLAR_BACKUPS"):
        monkeypatch.setenv(name, "")
    monkeypatch.setenv("CELLAR_DATA", str(tmp_path))
    config = config_in(tmp_path)
    record(config, "101")
    return config


def record(config: Config, *numbers: str) -> None:
    with opened(config):
        take_in(batch([Phone(number).filled(number) for number in numbers]))


def head(config: Config) -> HeadState:
    with opened(config):
        return current_head()


def known(config: Config, *numbers: str) -> list[str]:
    with opened(config):
        assert check() == []
        return [number for number in numbers if history(number) is not None]


def file_of(config: Config) -> Path:
    assert config.database_file is not None
    return config.database_file


@pytest.fixture
def backup(brewery: Config) -> Path:
    """A backup with one cask in it; the ledger has had another one since."""
    assert main(["backup"]) == 0
    [path] = backups_in(brewery.backups).values()
    record(brewery, "102")
    return path


def test_backup_while_others_write_is_proved_and_said_where_it_is(
    brewery: Config, capsys: Printed
) -> None:
    """It is a database with everything that was committed."""
    with closing(sqlite3.connect(file_of(brewery), isolation_level=None)) as writer:
        writer.execute("BEGIN IMMEDIATE")
        assert main(["backup"]) == 0
    [path] = backups_in(brewery.backups).values()
    assert capsys.readouterr().out == f"backup: {path}\n"
    with closing(sqlite3.connect(path)) as copy:
        assert copy.execute("SELECT subject FROM entry").fetchall() == [("101",)]


def test_backup_goes_to_the_folder_that_is_named(brewery: Config, tmp_path: Path) -> None:
    """A stick, say; nothing is removed from there."""
    stick = tmp_path / "stick"
    for day in range(1, 5):
        with freeze_time(f"2020-01-0{day}"):
            assert main(["backup", str(stick)]) == 0
    assert len(backups_in(stick)) == 4
    assert not brewery.backups.exists()


def test_older_backups_make_room(brewery: Config, monkeypatch: pytest.MonkeyPatch) -> None:
    """As the settings say."""
    for name, count in [("HOURLY", "1"), ("DAILY", "2"), ("WEEKLY", "0")]:
        monkeypatch.setenv(f"CELLAR_KEEP_{name}", count)
    for moment in ["2026-11-23 12:00", "2026-11-24 12:00", "2026-11-25 12:00", "2026-11-25 12:30"]:
        with freeze_time(moment):
            assert main(["backup"]) == 0
    kept = sorted(f"{moment:%d %H:%M}" for moment in backups_in(brewery.backups))
    assert kept == ["24 12:00", "25 12:30"]


def test_backup_of_a_ledger_that_is_not_well_is_kept_and_told(
    brewery: Config, monkeypatch: pytest.MonkeyPatch, capsys: Printed
) -> None:
    """The entries are in it. But nothing older is removed, which may be better."""
    monkeypatch.setenv("CELLAR_KEEP_HOURLY", "1")
    with freeze_time("2020-01-01"):
        assert main(["backup"]) == 0
    with opened(brewery), db.engine.begin() as connection:
        connection.exec_driver_sql("UPDATE row SET doc = '{}' WHERE id = '101'")
    assert main(["backup"]) == 1
    assert "1 rows of this ledger are not what its entries say" in capsys.readouterr().err
    assert len(backups_in(brewery.backups)) == 2


def damage(file: Path) -> None:
    close_for_good(file)
    with file.open("r+b") as opened_file:
        opened_file.seek(3 * 4096)
        opened_file.write(b"\xa5" * 4096)


def test_backup_of_a_damaged_database_is_none(
    brewery: Config, backup: Path, capsys: Printed
) -> None:
    """It would push the good ones out."""
    before = backup.read_bytes()
    damage(file_of(brewery))
    with freeze_time(datetime.now(UTC) + timedelta(days=400)):
        assert main(["backup"]) == 1
    assert "damaged" in capsys.readouterr().err
    assert list(backups_in(brewery.backups).values()) == [backup]
    assert backup.read_bytes() == before


def test_no_database_is_no_backup(tmp_path: Path, capsys: Printed) -> None:
    """And an empty one is not made to have something to copy."""
    assert main(["backup", "--data", str(tmp_path / "typo")]) == 1
    assert "nothing was backed up" in capsys.readouterr().err
    assert not (tmp_path / "typo").exists()


def test_restored_is_what_was_backed_up_under_another_epoch(
    brewery: Config, backup: Path, capsys: Printed
) -> None:
    """By the epoch a phone notices, and sends again what the backup lacks."""
    before = head(brewery)
    capsys.readouterr()
    assert main(["restore", str(backup)]) == 0
    assert known(brewery, "101", "102") == ["101"]
    assert head(brewery).epoch != before.epoch
    said = capsys.readouterr().out
    assert "Start cellarapp again." in said


def test_what_the_backup_replaces_is_kept(brewery: Config, backup: Path, capsys: Printed) -> None:
    """And can be put back in the same way."""
    assert main(["restore", str(backup)]) == 0
    [kept] = brewery.data.glob("cellarapp.replaced-*.sqlite")
    assert f"what was there before is kept: {kept}" in capsys.readouterr().out
    assert main(["restore", str(kept)]) == 0
    assert known(brewery, "101", "102") == ["101", "102"]


def test_backup_can_be_restored_where_there_is_nothing(
    brewery: Config, backup: Path, tmp_path: Path
) -> None:
    """On another machine, after a fire."""
    assert main(["restore", "--data", str(tmp_path / "new"), str(backup)]) == 0
    assert known(config_in(tmp_path / "new"), "101", "102") == ["101"]


def test_damaged_database_can_be_replaced(brewery: Config, backup: Path) -> None:
    """That is what backups are for."""
    file_of(brewery).write_bytes(b"\xa5" * 10_000)
    file_of(brewery).with_name("cellarapp.sqlite-wal").write_bytes(b"\xa5" * 10_000)
    assert main(["restore", str(backup)]) == 0
    assert known(brewery, "101", "102") == ["101"]
    [kept] = brewery.data.glob("cellarapp.replaced-*.sqlite")
    assert kept.read_bytes() == b"\xa5" * 10_000


def test_rows_that_were_wrong_in_the_backup_are_made_anew(brewery: Config, backup: Path) -> None:
    """The entries are the truth, and they are there."""
    with closing(sqlite3.connect(backup, isolation_level=None)) as connection:
        connection.execute("UPDATE row SET doc = '{}' WHERE id = '101'")
    assert main(["restore", str(backup)]) == 0
    assert known(brewery, "101", "102") == ["101"]


def change(file: Path, statement: str) -> None:
    with closing(sqlite3.connect(file, isolation_level=None)) as connection:
        connection.execute(statement)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda file: file.unlink(), "there is no file"),
        (lambda file: file.write_text("my shopping list" * 99), "not a database"),
        (damage, "damaged"),
        (
            lambda file: change(file, "UPDATE alembic_version SET version_num = '9999'"),
            "it was made by a later release of cellarapp",
        ),
        (lambda file: change(file, "DROP TABLE alembic_version"), "none of cellarapp"),
    ],
)
def test_what_cannot_be_restored_changes_nothing(
    brewery: Config, backup: Path, capsys: Printed, spoil: object, words: str
) -> None:
    """Said in a sentence; the database stays as it was, epoch and all."""
    before = head(brewery)
    assert callable(spoil)
    spoil(backup)
    assert main(["restore", str(backup)]) == 1
    said = capsys.readouterr().err
    assert words in said
    assert "Nothing was changed." in said
    assert head(brewery) == before
    assert {path.name for path in brewery.data.iterdir()} <= {
        "backups", "cellarapp.sqlite", "cellarapp.sqlite-wal", "cellarapp.sqlite-shm",
    }  # fmt: skip


def test_database_is_not_restored_from_itself(brewery: Config, capsys: Printed) -> None:
    """A slip, by which nothing is won."""
    assert main(["restore", str(file_of(brewery))]) == 1
    assert "is the database itself" in capsys.readouterr().err


@pytest.fixture
def in_use(brewery: Config) -> Iterator[None]:
    with closing(sqlite3.connect(file_of(brewery))) as other:
        other.execute("SELECT count(*) FROM entry").fetchone()
        yield


@pytest.mark.usefixtures("in_use")
def test_database_in_use_is_not_replaced(brewery: Config, backup: Path, capsys: Printed) -> None:
    """A server that goes on writing into the old file would lose what it writes."""
    assert main(["restore", str(backup)]) == 1
    assert "Stop cellarapp" in capsys.readouterr().err
    assert known(brewery, "101", "102") == ["101", "102"]


def test_name_of_a_backup_says_its_moment(tmp_path: Path) -> None:
    """In UTC, and without what a file system might not take."""
    moment = datetime(2026, 7, 1, 13, 5, 9, tzinfo=UTC)
    assert backup_path(tmp_path, moment).name == "cellarapp-2026-07-01T13-05-09Z.sqlite"
