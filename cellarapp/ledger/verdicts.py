"""What is pushed and what is answered."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal

from cellarapp.domain.entries import Entry
from cellarapp.ledger.problem import Problem
from cellarapp.storage.work import Work

Word = Literal["accepted", "known", "held", "refused"]

Rights = Callable[[Work, Sequence[Entry]], Sequence[Problem | None]]
"""For each of some entries why it has to be held, or None."""


@dataclass(frozen=True, slots=True)
class Batch:
    """Entries as a device sent them, each of them any JSON at all.

    `sent_at` is the device's time of sending, `received_at` ours of receiving. `device` is the
    one that sent, which may hand over what another one wrote. `rights` judges who may record
    what; none where whoever hands over has decided that already. With `once` an entry is known
    too when what it says stands already, under whatever id.
    """

    device: str
    sent_at: datetime
    received_at: datetime
    elements: list[object]
    rights: Rights | None = None
    once: bool = False

    @property
    def offset(self) -> timedelta:
        """What the device's clock was behind by, transport included."""
        return self.received_at - self.sent_at


@dataclass(frozen=True, slots=True)
class Verdict:
    """What became of one element. `id` is as it was sent; none if there was none to read."""

    id: str | None
    word: Word
    position: int | None = None
    problem: Problem | None = None


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a batch: a verdict for each element, in the order they were sent."""

    epoch: str
    head: int
    verdicts: list[Verdict]
