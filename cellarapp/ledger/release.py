"""Takes in what was held: what an owner has decided to, and what was held by a fault of ours.

Tried at every start, so that what a newer release can read is taken in without its author doing
anything, and a decision that a crash cut short is carried out.
"""

import json
from collections.abc import Callable
from datetime import datetime, timedelta

from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch, Rights, Verdict
from cellarapp.storage.held import HeldEntry
from cellarapp.storage.work import reading

RightsOf = Callable[[str], Rights]

WORTH_TRYING = ("unknown-kind", "own-fault")


def release_held(rights: RightsOf) -> int:
    """Take in what can be taken in now; answer how many entries that were.

    Args:
        rights: the rights of what a device sent, by its id.
    """
    with reading() as work:
        held = work.held.all()
    decided = [take_decided(one) for one in held if one.decision == "take"]
    waiting = [one for one in held if one.decision is None and one.reason in WORTH_TRYING]
    tried = [_take(one, rights(one.device)) for one in waiting]
    return sum(verdict.word == "accepted" for verdict in [*decided, *tried])


def take_decided(one: HeldEntry) -> Verdict:
    """Take in what an owner has decided to; nobody's rights are asked for any more."""
    return _take(one, None)


def _take(one: HeldEntry, rights: Rights | None) -> Verdict:
    """Hand in an entry as it came, with the times it came with."""
    received_at = datetime.fromisoformat(one.received_at)
    sent_at = received_at - timedelta(milliseconds=one.offset_ms)
    again = Batch(one.device, sent_at, received_at, [json.loads(one.raw)], rights)
    return take_in(again).verdicts[0]
