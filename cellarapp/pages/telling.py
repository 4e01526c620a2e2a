"""What is said on a page comes into the ledger as an entry, by the one write path."""

from datetime import datetime
from typing import Any
from uuid import uuid4

from cellarapp.domain import RULES_VERSION
from cellarapp.domain.calendar import write_instant
from cellarapp.ledger.problem import FieldError
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch

PAGES_DEVICE = "00000000-0000-0000-0000-000000000001"
"""Stands for a device in the entries that are made here. Nobody is paired with it."""


def tell(kind: str, number: str, facts: dict[str, Any], by: str, now: datetime) -> list[FieldError]:
    """Make an entry about a container; answer what has to be put right first, nothing if it is in.

    Said again in the same words while it stands, it is in already.

    Args:
        kind: what a page may record: reported or told.
        number: the container's, in normal form.
        facts: as the form of the kind reads them.
        by: who says so, as it is to stand in the history.
        now: when it is said.
    """
    said = {
        "id": str(uuid4()),
        "device": PAGES_DEVICE,
        "seq": 1,  # of what is said in the same millisecond the id decides
        "kind": kind,
        "subject": number,
        "happened_at": write_instant(now),
        "person": by,
        "facts": facts,
        "rules": RULES_VERSION,
    }
    [verdict] = take_in(Batch(PAGES_DEVICE, now, now, [said], once=True)).verdicts
    if verdict.word in ("accepted", "known"):
        return []
    if verdict.word == "refused" and verdict.problem is not None:
        return verdict.problem.errors
    raise RuntimeError(f"an entry of a page is {verdict.word}: {verdict.problem}")
