"""The owner decides about what is held: it is taken in, or put aside."""

from datetime import datetime

from cellarapp.accounts.audit import note
from cellarapp.accounts.principal import Principal
from cellarapp.accounts.refusal import Refusal
from cellarapp.ledger.release import take_decided
from cellarapp.storage.held import HeldEntry
from cellarapp.storage.models import Decision
from cellarapp.storage.work import writing

OWNERS_TO_TAKE = ("rights", "revoked-device")
"""Reasons that an owner's word does away with; others are no matter of rights."""
DONE = {"take": "held entry taken in", "put_aside": "held entry put aside"}


def decide(who: Principal, content_hash: str, decision: Decision, now: datetime) -> None:
    """Decide about one held entry. Raises: Refusal.

    The decision is kept before it is carried out: should the server stop in between, it is carried
    out at the next start.
    """
    with writing() as work:
        held = work.held.find(content_hash)
        if held is None:
            raise Refusal("not-found", "Nothing is held under this name any more.")
        if decision == "take" and held.reason not in OWNERS_TO_TAKE:
            raise Refusal("cannot-take")
        work.held.decide(content_hash, decision)
        note(work, who, now, DONE[decision], held.entry_id)
    if decision == "take":
        _carry_out(held)


def _carry_out(held: HeldEntry) -> None:
    verdict = take_decided(held)
    if verdict.word in ("accepted", "known"):
        return
    with writing() as work:
        work.held.decide(held.content_hash, None)
    raise Refusal("cannot-take", verdict.problem.detail if verdict.problem else "")
