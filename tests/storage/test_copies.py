"""Copies of the database: whole or not there."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from cellarapp.storage.copies import (
    close_for_good,
    copy_database,
    replace_database,
    sound,
    unused,
)
from cellarapp.storage.errors import StorageBusy, StorageDamaged, StorageTrouble


def opened(file: Path) -> "closing[sqlite3.Connection]":
    return closing(sqlite3.connect(file, isolation_level=None))


def numbers(file: Path) -> list[int]:
    with opened(file) as connection:
        return [n for (n,) in connection.execute("SELECT n FROM number ORDER BY n")]


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


@pytest.fixture
def source(tmp_path: Path) -> Path:
    """A database with the numbers to 9."""
    file = tmp_path / "source.sqlite"
    with opened(file) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("CREATE TABLE number (n INTEGER)")
        connection.executemany("INSERT INTO number VALUES (?)", [(n,) for n in range(10)])
    return file


def test_copy_is_of_one_moment_while_somebody_writes(source: Path, tmp_path: Path) -> None:
    """What is not committed is not in it, and the writer is neither stopped nor waited for."""
    with opened(source) as writer:
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("INSERT INTO number VALUES (10)")
        copy_database(source, tmp_path / "copy.sqlite", judge=sound)
        writer.execute("COMMIT")
    assert numbers(tmp_path / "copy.sqlite") == list(range(10))
    assert numbers(source) == list(range(11))


def test_copy_is_one_file_that_only_its_owner_may_read(source: Path, tmp_path: Path) -> None:
    """It can be carried away as it is; and what it holds is the brewery's business."""
    copy = tmp_path / "folder" / "copy.sqlite"
    copy.parent.mkdir()
    copy_database(source, copy, judge=sound)
    assert names(copy.parent) == ["copy.sqlite"]
    assert copy.stat().st_mode & 0o777 == 0o600


def test_copy_that_is_judged_bad_is_not_there(source: Path, tmp_path: Path) -> None:
    """Nor is any part of it; and what had its name before still has it."""
    copy = tmp_path / "copy.sqlite"
    copy.write_text("the one before")

    def judge(_copy: Path) -> None:
        raise StorageDamaged("no good")

    with pytest.raises(StorageDamaged):
        copy_database(source, copy, judge=judge)
    assert copy.read_text() == "the one before"
    assert [name for name in names(tmp_path) if "part" in name] == []


def test_unfinished_copy_of_an_earlier_crash_is_no_hindrance(source: Path, tmp_path: Path) -> None:
    """It is done anew."""
    (tmp_path / "copy.sqlite.part").write_text("half of")
    copy_database(source, tmp_path / "copy.sqlite", judge=sound)
    assert numbers(tmp_path / "copy.sqlite") == list(range(10))
    assert "copy.sqlite.part" not in names(tmp_path)


def test_copy_to_where_nothing_can_be_written_is_told(source: Path, tmp_path: Path) -> None:
    """With the name of what could not be written."""
    with pytest.raises(StorageTrouble, match=r"nowhere/copy\.sqlite cannot be written"):
        copy_database(source, tmp_path / "nowhere" / "copy.sqlite", judge=sound)


def test_damage_is_found_by_reading_all_of_it(source: Path) -> None:
    """Also where no query would have come by."""
    close_for_good(source)
    sound(source)
    with source.open("r+b") as file:
        file.seek(4096)
        file.write(b"\xa5" * 4096)
    with pytest.raises(StorageDamaged, match="damaged"):
        sound(source)


def test_text_is_no_database(tmp_path: Path) -> None:
    """Whatever it is called."""
    (tmp_path / "list.sqlite").write_text("my shopping list, for the week" * 100)
    with pytest.raises(StorageDamaged, match="not a database"):
        sound(tmp_path / "list.sqlite")


def test_database_that_somebody_has_open_is_not_closed(source: Path) -> None:
    """So that nothing is put in its place under a server that serves."""
    with opened(source) as other:
        other.execute("SELECT count(*) FROM number").fetchone()
        with pytest.raises(StorageBusy):
            close_for_good(source)
    close_for_good(source)
    assert names(source.parent) == ["source.sqlite"]


def test_replaced_database_is_kept_with_what_was_beside_it(source: Path, tmp_path: Path) -> None:
    """A log left behind would be read into the database that took the place."""
    new, kept = tmp_path / "new.sqlite", tmp_path / "kept.sqlite"
    copy_database(source, new, judge=sound)
    with opened(new) as connection:
        connection.execute("DELETE FROM number WHERE n > 4")
    source.with_name("source.sqlite-wal").write_text("a log that nobody closed")
    source.chmod(0o640)
    replace_database(source, new, kept=kept)
    assert numbers(source) == [0, 1, 2, 3, 4]
    assert source.stat().st_mode & 0o777 == 0o640
    assert kept.with_name("kept.sqlite-wal").read_text() == "a log that nobody closed"
    kept.with_name("kept.sqlite-wal").unlink()
    assert numbers(kept) == list(range(10))
    assert names(tmp_path) == ["kept.sqlite", "source.sqlite"]


def test_name_that_is_taken_gets_a_number(tmp_path: Path) -> None:
    """An earlier copy may be the good one."""
    (tmp_path / "x.sqlite").touch()
    (tmp_path / "x-2.sqlite").touch()
    assert unused(tmp_path / "x.sqlite") == tmp_path / "x-3.sqlite"
