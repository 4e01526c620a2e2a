"""Positions become visible in the order in which they were given: a slow push and a quick one.

The slow one has its position and is not committed yet when the quick one wants to write. On SQLite
there is nothing to get wrong; on PostgreSQL a sequence, which is the obvious source of positions,
gets it wrong.
"""

from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import AbstractContextManager, contextmanager
from threading import Event

import pytest
from flask import Flask

from cellarapp.storage.db import db
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading, writing

from ..conftest import database_on

Writing = Callable[[str], AbstractContextManager[None]]
"""Writes a row of this name with the next position, commits at the end."""
PATIENCE_S = 60


@pytest.fixture
def database(request: pytest.FixtureRequest) -> Iterator[str]:
    with database_on("postgresql", request) as address:
        yield address


@contextmanager
def as_we_do(name: str) -> Iterator[None]:
    """One that writes at a time, the head moved within."""
    with writing() as work:
        head = work.head.read()
        work.rows.write(new=[StoredRow("beer", name, head.position + 1, "{}")], changed=[])
        work.head.write(position=head.position + 1)
        yield


@contextmanager
def from_a_sequence(name: str) -> Iterator[None]:
    """As many at a time as there are, each with a number that no other one gets."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql(
            f"INSERT INTO row VALUES ('beer', '{name}', nextval('positions'), '{{}}')"
        )
        yield


def waiting() -> bool:
    """Whether somebody waits for the right to write."""
    asked = "SELECT count(*) FROM pg_locks WHERE locktype = 'advisory' AND NOT granted"
    with db.engine.connect() as connection:
        return bool(connection.exec_driver_sql(asked).scalar())


def poll(cursor: int) -> list[StoredRow]:
    with reading() as work:
        return work.rows.changed_since(cursor, 10)


def seen_by_a_poller(app: Flask, write: Writing) -> list[str]:
    """The rows that a phone gets: it pulls after the quick one has its way, and at the end."""
    has_its_position, may_commit = Event(), Event()

    def slow() -> None:
        with app.app_context(), write("slow"):
            has_its_position.set()
            assert may_commit.wait(PATIENCE_S)

    def quick() -> None:
        with app.app_context(), write("quick"):
            pass

    with ThreadPoolExecutor(2) as pool:
        first = pool.submit(slow)
        assert has_its_position.wait(PATIENCE_S)
        second = pool.submit(quick)
        while not second.done() and not waiting():
            pass
        found = poll(0)
        may_commit.set()
        first.result()
        second.result()
    found += poll(max([row.position for row in found], default=0))
    return [row.id for row in found]


def test_phone_that_polls_sees_the_slow_push_and_the_quick_one(app: Flask) -> None:
    """The quick one waits until the slow one can be seen."""
    assert seen_by_a_poller(app, as_we_do) == ["slow", "quick"]


def test_with_a_sequence_it_would_never_see_the_slow_one(app: Flask) -> None:
    """The quick one's later position is visible first, and the cursor goes past the other."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("CREATE SEQUENCE positions")
    assert seen_by_a_poller(app, from_a_sequence) == ["quick"]
    assert [row.id for row in poll(0)] == ["slow", "quick"]
