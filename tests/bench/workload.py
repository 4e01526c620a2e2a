"""The same work for ours and for the floor: containers, their lives, and a morning's fills."""

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

from ..making import Phone, batch, made_id

CONTAINERS = 10_000
A_LIFE = ("washed", "filled", "moved", "sent", "returned")
BEGAN = datetime(2025, 1, 6, 8, 0, tzinfo=UTC)
CUSTOMER = made_id("customer")
PLACE = made_id("place")

FACTS: dict[str, dict[str, Any]] = {
    "washed": {},
    "moved": {"place": PLACE},
    "sent": {"customer": CUSTOMER, "due_on": "2025-06-01"},
    "returned": {"place": PLACE},
}


def number(n: int) -> str:
    return str(10_000 + n)


def history(entries: int, containers: int = CONTAINERS) -> Iterator[list[dict[str, Any]]]:
    """So many entries about so many containers, in the batches that phones send."""
    yield from _batches(_lives(Phone("history"), entries, containers))


def house(home: int = 3_000, full: int = 400) -> Iterator[list[dict[str, Any]]]:
    """After a history that ended with all sent: so many are back, and so many of those full."""
    yield from _batches(_at_home(Phone("house"), home, full))


def _batches(entries: Iterable[dict[str, Any]]) -> Iterator[list[dict[str, Any]]]:
    some = list[dict[str, Any]]()
    for one in entries:
        some.append(one)
        if len(some) == 500:
            yield some
            some = []
    yield some


def _lives(phone: Phone, entries: int, containers: int) -> Iterator[dict[str, Any]]:
    made = min(entries, containers)
    yield from (phone.registered(number(n)) for n in range(made))
    round_no = 0
    while made < entries:
        kind = A_LIFE[round_no % len(A_LIFE)]
        at = (BEGAN + timedelta(days=7 * round_no)).isoformat(timespec="milliseconds")
        for n in range(min(containers, entries - made)):
            yield (
                phone.filled(number(n), at=at, gyle=made_id(f"gyle {n % 60}"))
                if kind == "filled"
                else phone.entry(kind, number(n), at=at, **FACTS[kind])
            )
            made += 1
        round_no += 1


def _at_home(phone: Phone, home: int, full: int) -> Iterator[dict[str, Any]]:
    returned, washed, filled = (f"2026-11-{day}T09:00:00.000Z" for day in (22, 23, 24))
    yield from (phone.entry("returned", number(n), at=returned, place=PLACE) for n in range(home))
    yield from (phone.entry("washed", number(n), at=washed) for n in range(full))
    for n in range(full):
        yield phone.filled(number(n), at=filled, gyle=made_id(f"gyle {n % 8}"))


def fills(phone: Phone, count: int, first: int = 0) -> list[dict[str, Any]]:
    """A morning's fills, each of another container."""
    gyle = made_id("gyle of today")
    return [
        phone.filled(number(first + n), at="2026-11-25T09:00:00.000Z", gyle=gyle)
        for n in range(count)
    ]


__all__ = ["CONTAINERS", "batch", "fills", "history", "house", "number"]
