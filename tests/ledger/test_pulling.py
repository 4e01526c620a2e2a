"""What phones pull: every change once the ledger has it, in order, and nothing left out."""

from concurrent.futures import ThreadPoolExecutor, wait
from pathlib import Path
from threading import Event

import pytest
from flask import Flask
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.ledger.checksum import MODULUS, share
from cellarapp.ledger.pulling import AnotherLedger, head_and_count, page, pull
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.rows import Key

from ..making import Phone, batch
from .looking import begin_again, docs, words


class Held:
    """A phone's rows: what it has pulled so far."""

    def __init__(self) -> None:
        self.cursor = 0
        self.rows: dict[Key, tuple[int, str]] = {}
        self.checksum: int | None = None

    def pull(self, limit: int) -> bool:
        """One page; whether there is more."""
        found = pull(None, self.cursor, limit)
        for row in found.rows:
            assert row.position > self.cursor
            self.rows[row.key] = (row.position, row.doc)
        self.cursor = found.next
        self.checksum = None if found.more else found.head.checksum
        return found.more

    def sum(self) -> int:
        """The checksum as a phone counts it."""
        return sum(share(*key, position) for key, (position, _) in self.rows.items()) % MODULUS

    def docs(self) -> dict[Key, str]:
        return {key: doc for key, (_, doc) in self.rows.items()}


@settings(max_examples=40, deadline=None)
@given(
    steps=st.lists(st.tuples(st.integers(0, 12), st.booleans()), min_size=1, max_size=12),
    limit=st.integers(1, 7),
)
def test_a_phone_that_pulls_in_between_ends_with_the_server_rows(
    shared_app: Flask, steps: list[tuple[int, bool]], limit: int
) -> None:
    """Pages of any size, pushes between the pages; the checksums agree at every end."""
    with shared_app.app_context():
        begin_again()
        phone, held = Phone(), Held()
        for number, pulls in steps:
            words(phone.filled(f"F{number}"))
            if pulls and not held.pull(limit):
                assert held.sum() == held.checksum
        while held.pull(limit):
            pass
        assert held.docs() == docs()
        assert held.sum() == held.checksum


def test_a_reader_that_polls_misses_nothing_of_four_writers(app: Flask, tmp_path: Path) -> None:
    """Positions become visible in order: what is behind the cursor has been seen."""
    writers, pushes = 4, 12
    done = Event()

    def write(name: int) -> None:
        phone = Phone(f"writer {name}")
        with app.app_context():
            for number in range(pushes):
                take_in(batch([phone.filled(f"F{number}"), phone.filled(f"W{name}")]))

    def poll() -> Held:
        held = Held()
        with app.app_context():
            while not done.is_set():
                held.pull(5)
            while held.pull(5):
                pass
        return held

    with ThreadPoolExecutor(writers + 1) as pool:
        reading = pool.submit(poll)
        writing = [pool.submit(write, name) for name in range(writers)]
        wait(writing)
        done.set()
        held = reading.result()
    assert [one.exception() for one in writing] == [None] * writers
    assert held.docs() == docs()
    assert len(held.rows) == pushes + writers + 1
    assert held.sum() == held.checksum


@pytest.mark.parametrize(("epoch", "since"), [("another", 0), (None, 100)])
def test_phone_from_another_ledger_is_told_so(app: Flask, epoch: str | None, since: int) -> None:
    """Another epoch, or a cursor from the future: the server was restored."""
    with pytest.raises(AnotherLedger):
        pull(epoch, since, 10)


def test_pages_and_then_a_pull_give_all_rows(app: Flask) -> None:
    """Rows that change between two pages come again with the pull."""
    phone = Phone()
    words(*[phone.filled(f"F{number}") for number in range(25)])
    position = head_and_count()[0].position
    first = page(None, 10)
    words(phone.entry("tapped", "F0"), phone.filled("F99"))
    held = {row.key: row.doc for row in first.rows}
    following = first.next
    while following is not None:
        another = page(following, 10)
        held |= {row.key: row.doc for row in another.rows}
        following = another.next
    assert held != docs()
    held |= {row.key: row.doc for row in pull(None, position, 100).rows}
    assert held == docs()
