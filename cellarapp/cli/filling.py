"""Fills an empty database with a made-up brewery, as if its phones had sent everything in time."""

import sys
from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta
from typing import Any

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch

MOST_ENTRIES = 500
DELAY = timedelta(minutes=1)
"""Between the last entry of a batch and its receipt."""


def fill(config: Config, *, now: datetime, seed: int) -> int:
    """Fill the database; 1 if there is something in it already."""
    from cellarapp import demo  # not needed by a server that has data of its own

    with opened(config):
        if current_head().position > 0:
            print("cellarapp: the database is not empty; nothing was added.", file=sys.stderr)
            return 1
        entries = demo.entries(now.date(), seed)
        for batch in _batches(entries, now):
            take_in(batch)
    print(f"{len(entries)} entries of a made-up brewery were recorded")
    return 0


def _batches(entries: Iterable[dict[str, Any]], now: datetime) -> Iterator[Batch]:
    ordered = sorted(entries, key=lambda entry: str(entry["happened_at"]))
    for start in range(0, len(ordered), MOST_ENTRIES):
        some = ordered[start : start + MOST_ENTRIES]
        last = datetime.fromisoformat(some[-1]["happened_at"])
        received_at = min(last + DELAY, now)
        yield Batch(str(some[-1]["device"]), received_at, received_at, list(some))
