"""Positions: given in order, never twice."""

import pytest
from flask import Flask

from cellarapp.storage.errors import Overtaken
from cellarapp.storage.work import reading, writing


def take(count: int) -> int:
    with writing() as work:
        return work.head.take(count, seen=work.head.read())


def take_and_fail() -> None:
    with writing() as work:
        work.head.take(3, seen=work.head.read())
        raise ZeroDivisionError


def test_positions_follow_each_other(app: Flask) -> None:
    """The next one is one more than the last."""
    assert [take(3), take(1), take(2)] == [1, 4, 5]


def test_positions_of_a_transaction_that_failed_are_given_again(app: Flask) -> None:
    """Nobody has seen them."""
    with pytest.raises(ZeroDivisionError):
        take_and_fail()
    assert take(1) == 1


def test_head_that_moved_on_since_it_was_read_gives_no_position(app: Flask) -> None:
    """Whoever was overtaken has to look again at what it read."""
    with reading() as work:
        seen = work.head.read()
    take(1)
    with pytest.raises(Overtaken), writing() as work:
        work.head.take(1, seen=seen)


def test_there_is_only_ever_one_head(app: Flask) -> None:
    """Two epochs cannot stand side by side."""
    with pytest.raises(Overtaken), writing() as work:
        work.head.make(epoch="another", rules=1)
