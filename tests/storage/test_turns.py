"""Threads that write take turns, in the order in which they asked."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from cellarapp.storage.errors import StorageBusy
from cellarapp.storage.turns import Turns

PATIENCE_S = 60


def test_first_come_first_served() -> None:
    """Whoever has just had a turn and asks again stands behind those who wait."""
    turns, had = Turns(), list[str]()

    def take(name: str, times: int) -> None:
        for _ in range(times):
            with turns.taken(within_s=PATIENCE_S):
                had.append(name)

    def queue(pool: ThreadPoolExecutor, name: str, times: int) -> None:
        behind = turns.waiting
        pool.submit(take, name, times)
        while turns.waiting == behind:
            pass

    with ThreadPoolExecutor(3) as pool, turns.taken(within_s=PATIENCE_S):
        queue(pool, "eager", 2)
        queue(pool, "patient", 1)
        queue(pool, "late", 1)
    assert had == ["eager", "patient", "late", "eager"]


def test_one_at_a_time() -> None:
    """Nobody else is within while somebody is."""
    turns, within, seen = Turns(), list[int](), list[int]()

    def take(name: int) -> None:
        for _ in range(200):
            with turns.taken(within_s=PATIENCE_S):
                within.append(name)
                seen.append(len(within))
                within.remove(name)

    with ThreadPoolExecutor(4) as pool:
        for name in range(4):
            pool.submit(take, name)
    assert seen == [1] * 800


def test_who_gives_up_or_fails_is_in_nobodys_way() -> None:
    """Neither a wait that was too long nor an error within leaves a turn taken."""
    turns = Turns()
    with ThreadPoolExecutor(1) as pool, turns.taken(within_s=PATIENCE_S):

        def ask() -> None:
            with turns.taken(within_s=0.01):
                pass

        assert isinstance(pool.submit(ask).exception(), StorageBusy)
        assert turns.waiting == 1
    with pytest.raises(ZeroDivisionError), turns.taken(within_s=PATIENCE_S):
        raise ZeroDivisionError
    with turns.taken(within_s=PATIENCE_S):
        assert turns.waiting == 1
    assert turns.waiting == 0
