"""Fills an empty database with a made-up brewery, as if its phones had sent everything in time."""

import sys
from collections.abc import Iterable, Iterator
from datetime import datetime
from itertools import groupby
from typing import TYPE_CHECKING

from cellarapp.accounts.people import make_up
from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.domain.calendar import write_instant
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch

if TYPE_CHECKING:
    from cellarapp.demo import Received

MOST_ENTRIES = 500


def fill(config: Config, *, now: datetime, seed: int) -> int:
    """Fill the database; 1 if there is something in it already, or not all of it was accepted."""
    from cellarapp import demo  # not needed by a server that has data of its own

    with opened(config):
        if current_head().position > 0:
            print("cellarapp: the database is not empty; nothing was added.", file=sys.stderr)
            return 1
        make_up(demo.PEOPLE, now)
        batches = _batches(demo.entries(write_instant(now), seed))
        verdicts = [verdict for batch in batches for verdict in take_in(batch).verdicts]
    accepted = sum(verdict.word == "accepted" for verdict in verdicts)
    print(f"{accepted} of {len(verdicts)} entries of a made-up brewery were recorded")
    return 0 if accepted == len(verdicts) else 1


def _batches(entries: Iterable["Received"]) -> Iterator[Batch]:
    """What one device sent at one time goes in together, as it would have over the network."""
    for (device, received_at), group in groupby(entries, _sent_together):
        elements: list[object] = [one.entry for one in group]
        moment = datetime.fromisoformat(received_at)
        for start in range(0, len(elements), MOST_ENTRIES):
            yield Batch(device, moment, moment, elements[start : start + MOST_ENTRIES])


def _sent_together(one: "Received") -> tuple[str, str]:
    return str(one.entry["device"]), one.received_at
