"""Transactions: how they begin, what they see, and what becomes of them."""

import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from dataclasses import replace

import pytest
from flask import Flask

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.storage.db import db
from cellarapp.storage.errors import Overtaken, StorageBusy, StorageTrouble
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading, writing

ROW = StoredRow("beer", "b", 1, "{}")


@contextmanager
def another_writer(config: Config) -> Iterator[sqlite3.Connection]:
    """Another process in the middle of a write."""
    assert config.database_file is not None
    with closing(sqlite3.connect(config.database_file, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield other


@pytest.mark.parametrize(
    ("setting", "value"),
    [("journal_mode", "wal"), ("synchronous", 2), ("foreign_keys", 1), ("busy_timeout", 15_000)],
)
def test_connection_is_set_up(app: Flask, setting: str, value: object) -> None:
    """Full synchronous: what was acknowledged outlives a power cut."""
    with db.engine.connect() as connection:
        assert connection.exec_driver_sql(f"PRAGMA {setting}").scalar() == value


def test_write_waits_at_its_beginning_and_then_gives_up(config: Config) -> None:
    """It asks for the right to write before it has read anything."""
    with (
        opened(replace(config, busy_ms=50)),
        another_writer(config),
        pytest.raises(StorageBusy),
        writing(),
    ):
        pass


def test_write_waits_for_another_thread_and_then_gives_up(config: Config) -> None:
    """In the same way as for another process."""
    with opened(replace(config, busy_ms=50)) as app, writing(), ThreadPoolExecutor(1) as pool:
        fault = pool.submit(write_once, app).exception()
    assert isinstance(fault, StorageBusy)


def write_once(app: Flask) -> None:
    with app.app_context(), writing():
        pass


def test_reading_does_not_wait_for_a_writer(app: Flask, config: Config) -> None:
    """A pull goes on while a push is being written."""
    with another_writer(config), reading() as work:
        assert work.head.read().position == 0


def test_reading_sees_one_state_from_start_to_end(app: Flask) -> None:
    """What is committed meanwhile belongs to the next reading."""
    with reading() as work:
        before = work.rows.count()
        with writing() as other:
            other.rows.write(new=[ROW], changed=[])
        assert work.rows.count() == before
    with reading() as work:
        assert work.rows.count() == before + 1


def write_and_fail() -> None:
    with writing() as work:
        work.rows.write(new=[ROW], changed=[])
        raise ZeroDivisionError


def test_fault_leaves_nothing_behind(app: Flask) -> None:
    """All of a transaction or none of it."""
    with pytest.raises(ZeroDivisionError):
        write_and_fail()
    with reading() as work:
        assert work.rows.count() == 0


def test_row_that_another_one_made_meanwhile_is_no_fault(app: Flask) -> None:
    """It means that the transaction has to begin again."""
    with writing() as work:
        work.rows.write(new=[ROW], changed=[])
    with pytest.raises(Overtaken), writing() as work:
        work.rows.write(new=[ROW], changed=[])


def test_database_that_is_gone_is_trouble_and_not_a_fault_of_ours(app: Flask) -> None:
    """The caller can tell it from a mistake in the program."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE head")
    with pytest.raises(StorageTrouble), reading() as work:
        work.head.read()
