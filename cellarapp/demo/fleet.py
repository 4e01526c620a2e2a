"""The containers as the brewery really has them, whatever the ledger makes of them."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, Literal

from cellarapp.domain.containers import CONTAINER_KINDS

State = Literal["dirty", "clean", "full", "bar", "out", "aside", "missing", "scrapped"]


@dataclass
class Lot:
    """One numbered series of one kind of container, with its usual weight empty."""

    kind: str
    prefix: str
    first: int
    last: int
    tare_g: int


LOTS = [
    Lot("pin", "", 1, 32, 5_900),
    Lot("firkin", "", 101, 208, 9_600),
    Lot("kilderkin", "", 301, 326, 18_700),
    Lot("keg_30", "K", 1, 50, 9_900),
    Lot("keg_50", "K", 51, 90, 12_400),
]
"""Pins and small kegs share their digits: 12 and K12 both exist."""
NEW_FIRKINS = Lot("firkin", "", 209, 220, 9_450)
"""Bought half a year ago."""

KEGS = ("keg_30", "keg_50")
KEG_LIMIT_MILLIBAR = 3_000
"""As it is stamped on them."""

USUAL_ML = {
    "pin": 20_400, "firkin": 40_900, "kilderkin": 81_800, "keg_30": 30_000, "keg_50": 50_000,
}  # fmt: skip
"""What is written down for a full one."""


@dataclass
class Fill:
    """The beer in a container."""

    entry: str
    gyle: str
    beer: int
    volume_ml: int
    racked_at: datetime
    ready_on: date
    best_before: date


@dataclass
class Trip:
    """With a customer since a day; by which day they have drunk it and when it is due back."""

    customer: int
    since: date
    drunk_on: date
    due_on: date


@dataclass
class Container:
    """One container and where it has got to."""

    number: str
    kind: str
    state: State = "dirty"
    idle_since: date = date.min
    fill: Fill | None = None
    trip: Trip | None = None
    kept: bool = False
    """Stands behind the others: nobody sells it."""

    @property
    def capacity_ml(self) -> int:
        return int(CONTAINER_KINDS[self.kind]["capacity_ml"] or 0)

    def racked(self, fill: Fill) -> None:
        self.state, self.fill = "full", fill

    def drained(self, day: date) -> None:
        self.state, self.fill, self.trip, self.idle_since = "dirty", None, None, day


def in_lot(lot: Lot) -> list[Container]:
    """The containers of a lot."""
    return [Container(f"{lot.prefix}{n}", lot.kind) for n in range(lot.first, lot.last + 1)]


def registration(container: Container, tare_g: int) -> dict[str, Any]:
    """The facts of registering it."""
    facts = {"kind": container.kind, "capacity_ml": container.capacity_ml, "tare_g": tare_g}
    return facts | ({"limit_millibar": KEG_LIMIT_MILLIBAR} if container.kind in KEGS else {})
