"""Several requests at the same time."""

from concurrent.futures import ThreadPoolExecutor

from flask import Flask

from cellarapp.ledger.check import check
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch

from ..making import Phone, batch
from .looking import standing


def push_all(app: Flask, pushes: list[Batch]) -> list[list[str]]:
    """The verdicts on pushes that come all at once."""

    def push(one: Batch) -> list[str]:
        with app.app_context():
            return [verdict.word for verdict in take_in(one).verdicts]

    with ThreadPoolExecutor(len(pushes)) as pool:
        return list(pool.map(push, pushes))


def test_same_push_several_times_at_once_is_accepted_once(app: Flask) -> None:
    """ORD-2: two tabs without a lock, or a phone that was too quick to try again."""
    push = batch([Phone("a").filled("117"), Phone("b").filled("118")])
    found = push_all(app, [push] * 6)
    assert sorted(found) == [["accepted", "accepted"]] + [["known", "known"]] * 5


def test_containers_that_many_phones_fill_at_once_are_folded_right(app: Flask) -> None:
    """Each push reads what the one before it wrote."""
    phones = [Phone(f"phone {n}") for n in range(6)]
    found = push_all(app, [batch([p.filled("117"), p.entry("tapped", "117")]) for p in phones])
    assert found == [["accepted", "accepted"]] * 6
    assert standing("117")["fills"] == 6
    assert check() == []
