"""Tries again what was held because this server, or an earlier release of it, was at fault.

Called at every start: what a newer release can read is taken in without its author doing anything.
"""

import json
from datetime import datetime, timedelta

from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch
from cellarapp.storage.held import HeldEntry
from cellarapp.storage.work import reading

WORTH_TRYING = ("unknown-kind", "own-fault")


def release_held() -> int:
    """Take in what can be taken in now; answer how many entries that were."""
    with reading() as work:
        waiting = [one for one in work.held.all() if one.reason in WORTH_TRYING]
    verdicts = [take_in(_as_sent(one)).verdicts[0] for one in waiting]
    return sum(verdict.word == "accepted" for verdict in verdicts)


def _as_sent(one: HeldEntry) -> Batch:
    """The entry as it came, with the times it came with."""
    received_at = datetime.fromisoformat(one.received_at)
    sent_at = received_at - timedelta(milliseconds=one.offset_ms)
    return Batch(one.device, sent_at, received_at, [json.loads(one.raw)])
