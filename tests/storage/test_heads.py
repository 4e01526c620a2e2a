"""The head: one row, which says how far the ledger has come."""

from dataclasses import replace

import pytest
from flask import Flask
from sqlalchemy.exc import IntegrityError

from cellarapp.storage.work import reading, writing


def move_and_fail() -> None:
    with writing() as work:
        work.head.write(position=3, checksum=5)
        raise ZeroDivisionError


def test_head_is_where_it_was_moved_to(app: Flask) -> None:
    """The same ledger, further on."""
    with writing() as work:
        before = work.head.read()
        work.head.write(position=7, checksum=11)
    with reading() as work:
        assert work.head.read() == replace(before, position=7, checksum=11)


def test_head_stays_where_it_was_when_a_transaction_fails(app: Flask) -> None:
    """Positions that nobody has seen are given again."""
    with pytest.raises(ZeroDivisionError):
        move_and_fail()
    with reading() as work:
        assert work.head.read().position == 0


def test_there_is_only_ever_one_head(app: Flask) -> None:
    """Two epochs cannot stand side by side."""
    with pytest.raises(IntegrityError), writing() as work:
        work.head.make(epoch="another", rules=1)
