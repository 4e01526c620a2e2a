"""Transactions: how they begin, what they see, and what becomes of them."""

from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import replace

import pytest
from flask import Flask
from sqlalchemy import create_engine
from sqlalchemy.exc import IntegrityError

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.storage.db import db, engine_for_writing, set_up_engine
from cellarapp.storage.errors import StorageBusy, StorageTrouble
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading, writing

ROW = StoredRow("beer", "b", 1, "{}")


@contextmanager
def another_writer(config: Config) -> Iterator[None]:
    """Another process in the middle of a write."""
    engine = create_engine(config.database_url)
    set_up_engine(engine, busy_ms=50)
    with engine_for_writing(engine).connect() as connection, connection.begin():
        yield
    engine.dispose()


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


def test_row_that_is_there_already_is_a_mistake_of_ours(app: Flask) -> None:
    """Nobody else can have made it meanwhile, so that it is not worth trying again."""
    with writing() as work:
        work.rows.write(new=[ROW], changed=[])
    with pytest.raises(IntegrityError), writing() as work:
        work.rows.write(new=[ROW], changed=[])


def test_database_that_is_gone_is_trouble_and_not_a_fault_of_ours(app: Flask) -> None:
    """The caller can tell it from a mistake in the program."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE head")
    with pytest.raises(StorageTrouble), reading() as work:
        work.head.read()
