"""Rows: found by key, by page and by position."""

import pytest
from flask import Flask

from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading, writing

ROWS = [
    StoredRow("beer", "b1", 4, "{}"),
    StoredRow("container", "117", 1, "{}"),
    StoredRow("container", "118", 5, "{}"),
    StoredRow("gyle", "a1", 2, "{}"),
]
"""In the order of keys."""


@pytest.fixture(autouse=True)
def four_rows(app: Flask) -> None:
    with writing() as work:
        work.rows.write(new=ROWS, changed=[])


def test_pages_hold_every_row_once_in_the_order_of_keys() -> None:
    """Also where a page ends within a type, and between two."""
    for limit in range(1, 6):
        found, after = [], None
        with reading() as work:
            while page := work.rows.page(after, limit):
                found += page
                after = page[-1].key
        assert found == ROWS


def test_changes_come_in_the_order_of_positions() -> None:
    """The first ones first, so that the rest can be asked for after them."""
    with reading() as work:
        assert [row.position for row in work.rows.changed_since(1, 2)] == [2, 4]


def test_changed_row_is_replaced_whole() -> None:
    """It has one position only, the new one."""
    changed = StoredRow("container", "117", 9, '{"fills":1}')
    with writing() as work:
        work.rows.write(new=[], changed=[changed])
    with reading() as work:
        assert work.rows.load([changed.key]) == {changed.key: changed}
        assert [row.position for row in work.rows.changed_since(0, 9)] == [2, 4, 5, 9]


def test_more_keys_than_one_statement_carries_are_all_looked_for() -> None:
    """Lists are asked for in pieces."""
    keys = [("container", str(number)) for number in range(2000)]
    with reading() as work:
        assert sorted(work.rows.load(keys)) == [("container", "117"), ("container", "118")]
