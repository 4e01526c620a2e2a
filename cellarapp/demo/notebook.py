"""What the brewery's three devices note, and when the brewery's server gets to hear of it."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from random import Random
from typing import Any, NamedTuple
from uuid import UUID

from cellarapp.demo.clock import at
from cellarapp.domain import RULES_VERSION
from cellarapp.domain.calendar import LONDON, write_instant

Wire = dict[str, Any]
"""An entry as a device sends it."""


class Received(NamedTuple):
    """An entry and when the server received it."""

    entry: Wire
    received_at: str


@dataclass
class Device:
    """A phone or tablet: who mostly holds it, and when it finds the network.

    Once a day, and in the months before on Sundays only, so that the whole history is told in
    some hundred receipts: each is a transaction, and a slow disk takes its time over every one.
    """

    id: str
    person: str
    connects: tuple[int, int]
    """Hour and minute, by a London clock."""
    daily_from: date
    """Before that day on Sundays only."""
    silent: list[tuple[date, date]] = field(default_factory=list)
    """From which day to which it was switched off, or forgotten in a coat."""

    def reaches(self, noted_at: datetime) -> datetime:
        """When what was noted then gets to the server."""
        day = noted_at.astimezone(LONDON).date()
        if day < self.daily_from:
            day = min(day + timedelta(days=6 - day.weekday()), self.daily_from)
        while any(a <= day <= b for a, b in self.silent) or at(day, *self.connects) <= noted_at:
            day += timedelta(days=1)
        return at(day, *self.connects)


@dataclass
class Noted:
    """An entry with the true time at which it was noted, whatever the device's clock said."""

    at: datetime
    device: Device
    wire: Wire


class Notebook:
    """Collects what is noted; afterwards numbers it by device and lays it in order of receipt."""

    def __init__(self, rng: Random, now: datetime) -> None:
        self.rng = rng
        self.now = now
        self.noted: list[Noted] = []

    def new_id(self, moment: datetime) -> str:
        """An id as a device makes it: time first (UUID version 7), the rest chance."""
        ms = int(moment.timestamp() * 1000)
        bits = (ms << 80) | (7 << 76) | (self.rng.getrandbits(12) << 64)
        return str(UUID(int=bits | (0b10 << 62) | self.rng.getrandbits(62)))

    def note(
        self,
        device: Device,
        moment: datetime,
        kind: str,
        subject: str,
        /,
        *,
        by: str | None = None,
        clock_said: str | None = None,
        **facts: Any,
    ) -> str:
        """Notes one entry and answers with its id. Facts that are None are left out.

        `clock_said` is what a device with a dead battery thought the time was. A fact whose name is
        a word of Python ends in an underscore; one that is to be null is given as `null`.
        """
        entry_id = self.new_id(moment)
        given = {name.rstrip("_"): value for name, value in facts.items() if value is not None}
        wire: Wire = {
            "id": entry_id,
            "device": device.id,
            "seq": 0,
            "kind": kind,
            "subject": subject,
            "happened_at": clock_said or write_instant(moment),
            "person": by or device.person,
            "facts": {name: None if value is null else value for name, value in given.items()},
            "rules": RULES_VERSION,
        }
        self.noted.append(Noted(moment, device, wire))
        return entry_id

    def received(self) -> Iterator[Received]:
        """Everything noted, in the order in which the server receives it, none after now."""
        number: dict[str, int] = {}
        arrived: list[tuple[datetime, str, int, Wire]] = []
        for noted in sorted(self.noted, key=lambda one: one.at):
            number[noted.device.id] = seq = number.get(noted.device.id, 0) + 1
            moment = min(noted.device.reaches(noted.at), self.now)
            arrived.append((moment, noted.device.id, seq, {**noted.wire, "seq": seq}))
        for moment, _, _, wire in sorted(arrived, key=lambda one: one[:3]):
            yield Received(wire, write_instant(moment))


class _Null:
    """Stands for a fact that is there and null."""


null = _Null()
