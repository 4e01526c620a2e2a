"""The brewery's own bar: casks stillaged, vented, tapped, dipped every evening, emptied."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import Any

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.fleet import Container
from cellarapp.demo.words import OWNER
from cellarapp.domain.calendar import write_instant
from cellarapp.domain.figures import MILLIONTHS

HANDPUMPS = 2
OPENS = [16, 16, 16, 16, 12, 12, 12]
"""Its hour from Monday to Sunday."""
CLOSES = 22
SEDIMENT_ML = 1_700
"""What stays in a firkin: published by a brewery and the revenue for a firkin, see figures."""


@dataclass
class Pull:
    """A cask on its way through the bar."""

    container: Container
    stillaged_on: date
    left_ml: int
    tapped_at: datetime | None = None
    spile: str | None = None
    stooped: bool = False


@dataclass
class Bar:
    """What lies on the stillage, in the order in which it was set there."""

    brewery: Brewery
    pulls: list[Pull] = field(default_factory=list)

    @property
    def on_sale(self) -> list[Pull]:
        return [pull for pull in self.pulls if pull.tapped_at is not None]

    def morning(self, day: date) -> None:
        """Spiles are seen to, and the next casks set on the stillage."""
        moments = self.brewery.minutes(day, 10, 4)
        for pull in self.pulls:
            quiet = pull.stillaged_on <= day - timedelta(days=2)
            if pull.tapped_at is None and pull.spile == "soft" and quiet:
                self._spile(pull, next(moments), "hard")
        for pull in self.on_sale:
            low = pull.left_ml < pull.container.capacity_ml * 2 // 5
            if low and not pull.stooped and self.brewery.rng.random() < 0.4:
                pull.stooped = True
                self._note(pull, next(moments), "stooped")
        self._fill_handpumps(day, moments)
        while len(self.pulls) - len(self.on_sale) < 3 and self._stillage(day, next(moments)):
            pass

    def afternoon(self, day: date) -> None:
        """What was set on the stillage in the morning is vented; now and then nobody notes it."""
        moments = self.brewery.minutes(day, 15, 3)
        for pull in self.pulls:
            if pull.stillaged_on == day and self.brewery.rng.random() < 0.93:
                self._spile(pull, next(moments), "soft")

    def evening(self, day: date) -> None:
        """After closing: dipped or turned out, and the next one tapped to settle overnight."""
        busy = 1.6 if day.weekday() in (4, 5) else 1.0
        moments = self.brewery.minutes(day, 22, 4)
        for pull in self.on_sale:
            drawn_ml = int(self.brewery.rng.uniform(9_000, 15_000) * busy)
            pull.left_ml = max(0, pull.left_ml - drawn_ml) // 100 * 100
            if pull.left_ml <= SEDIMENT_ML:
                self._turn_out(pull, next(moments), None)
            elif self._over_tomorrow(pull, day):
                self._turn_out(pull, next(moments), "over its days on sale")
            else:
                self._note(pull, next(moments), "dipped", left_ml=pull.left_ml)
        self._fill_handpumps(day, moments)

    def plan_saturday(self, day: date) -> None:
        """A cask that waits its turn is picked for one o'clock on Saturday."""
        waiting = [pull for pull in self.pulls if pull.tapped_at is None]
        if waiting:
            saturday = day + timedelta(days=1 + ((4 - day.weekday()) % 7 or 7))
            sale_at = write_instant(at(saturday, 13))
            self._note(waiting[-1], at(day, 18, 20), "planned", sale_at=sale_at)

    def write_hours(self, day: date) -> None:
        """When it is open, in minutes after Monday's midnight: a cask runs out by these."""
        hours = [24 * n + hour for n, opens in enumerate(OPENS) for hour in (opens, CLOSES)]
        values = [60 * hour * MILLIONTHS for hour in hours]
        self.brewery.book.note(
            self.brewery.office, at(day, 18, 30), "setting", "bar_hours", by=OWNER,
            values_millionths=values,
        )  # fmt: skip

    def _fill_handpumps(self, day: date, moments: Iterator[datetime]) -> None:
        for pull in self.pulls:
            settled = pull.tapped_at is None and pull.stillaged_on < day
            if settled and len(self.on_sale) < HANDPUMPS:
                self._tap(pull, next(moments))

    def _over_tomorrow(self, pull: Pull, day: date) -> bool:
        fill, tapped_at = pull.container.fill, pull.tapped_at
        if fill is None or tapped_at is None:
            return False
        days = self.brewery.beers[fill.beer].on_sale_days
        return (day - tapped_at.date()).days >= days - 1

    def _stillage(self, day: date, moment: datetime) -> bool:
        ready = self.brewery.ready(day, "firkin", "pin")
        lying = {pull.container.fill.beer for pull in self.pulls if pull.container.fill}
        other = [c for c in ready if c.fill and c.fill.beer not in lying]
        chosen = next(iter(other or ready), None)
        if chosen is None or chosen.fill is None:
            return False
        chosen.state = "bar"
        self.pulls.append(Pull(chosen, day, chosen.fill.volume_ml))
        self._note(self.pulls[-1], moment, "stillaged", place=self.brewery.places["stillage"])
        return True

    def _spile(self, pull: Pull, moment: datetime, spile: str) -> None:
        pull.spile = spile
        self._note(pull, moment, "vented", spile=spile)

    def _tap(self, pull: Pull, moment: datetime) -> None:
        temp = self.brewery.rng.randint(112, 131)
        clear = "bright" if pull.spile else "a slight haze"
        self._note(pull, moment, "checked", temp_decidegc=temp, clarity=clear, taste="clean")
        pull.tapped_at = moment + timedelta(minutes=1)
        self._note(pull, pull.tapped_at, "tapped")

    def _turn_out(self, pull: Pull, moment: datetime, why: str | None) -> None:
        self._note(pull, moment, "emptied", why=why)
        pull.container.drained(moment.date())
        self.pulls.remove(pull)

    def _note(self, pull: Pull, moment: datetime, kind: str, **facts: Any) -> None:
        note, office = self.brewery.book.note, self.brewery.office
        note(office, moment, kind, pull.container.number, **facts)
