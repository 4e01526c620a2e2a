"""The made-up brewery: what all that happens there has in common."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from random import Random

from cellarapp.demo.clock import Week, at
from cellarapp.demo.fleet import Container, State
from cellarapp.demo.habits import Customer
from cellarapp.demo.notebook import Device, Notebook, Noted


@dataclass
class Gyle:
    """One brewed batch and how much of it is still in the tank."""

    id: str
    number: int
    beer: int
    brewed_on: date
    racked_on: date
    left_ml: int


@dataclass
class Beer:
    """A beer's record, with its days filled in."""

    id: str
    conditioning_days: int
    best_before_days: int
    on_sale_days: int


@dataclass
class Brewery:
    """Everything there is, and chance to stir it."""

    week: Week
    rng: Random
    book: Notebook
    bench: Device
    van: Device
    office: Device
    places: dict[str, str] = field(default_factory=dict)
    beers: list[Beer] = field(default_factory=list)
    gyles: list[Gyle] = field(default_factory=list)
    customers: list[Customer] = field(default_factory=list)
    fleet: dict[str, Container] = field(default_factory=dict)
    lots: dict[str, str] = field(default_factory=dict)
    """Which lot of each of the finings is in use."""
    solution: str = ""
    """Which washing solution is in the tank."""

    def standing(self, state: State, *kinds: str) -> list[Container]:
        """The containers in a state, of some kinds or any, longest idle first."""
        found = (c for c in self.fleet.values() if c.state == state)
        return sorted(
            (c for c in found if not kinds or c.kind in kinds),
            key=lambda c: (c.idle_since, len(c.number), c.number),
        )

    def ready(self, day: date, *kinds: str) -> list[Container]:
        """Full ones that may be sold that day, the shortest dated first."""
        found = [
            (c.fill.best_before, len(c.number), c.number, c)
            for c in self.standing("full", *kinds)
            if c.fill is not None and c.fill.ready_on <= day and not c.kept
        ]
        return [c for *_, c in sorted(found, key=lambda one: one[:3])]

    def noted_on(self, day: date, kind: str) -> list[Noted]:
        """What was noted of a kind on a day, in order."""
        found = [n for n in self.book.noted if n.wire["kind"] == kind and n.at.date() == day]
        return sorted(found, key=lambda noted: noted.at)

    def days_ago(self, day: date) -> int:
        """How long before today a day was."""
        return (self.week.today - day).days

    def minutes(self, day: date, hour: int, apart: float) -> Iterator[datetime]:
        """Moments from that hour on, so many minutes apart, give or take."""
        minute = self.rng.uniform(0, 9)
        while True:
            yield at(day, hour, minute)
            minute += apart * self.rng.uniform(0.6, 1.5)

    def past_days(self) -> Iterable[date]:
        """Every day of the history up to yesterday: today is left to whoever looks."""
        day = self.week.first_day
        while day < self.week.today:
            yield day
            day += timedelta(days=1)
