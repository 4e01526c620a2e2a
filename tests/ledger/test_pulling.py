"""What phones pull: every change once the ledger has it, in order, and nothing left out."""

import pytest
from flask import Flask
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.ledger.pulling import AnotherLedger, head_and_count, page, pull

from ..making import Phone
from .looking import begin_again, docs, words
from .polling import Held


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
