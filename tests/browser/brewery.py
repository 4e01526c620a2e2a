"""The small brewery that most journeys happen in, told to its server as a phone would tell it."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from typing import Any

from cellarapp.domain.calendar import london_date

from ..making import Phone as Device
from ..making import made_id, push_body
from .server import Server

KEGS = ["K12", "K13"]
CASKS = [str(number) for number in range(101, 141)]
DIRTY = [str(number) for number in range(201, 206)]
BEERS = {"Oystercatcher": 42, "Winter Lamp": 38}
"""In tenths of % vol. Oystercatcher has to condition, Winter Lamp is ready at once."""


def ago(**how_long: float) -> str:
    """A time before now, as entries carry it."""
    then = datetime.now(UTC) - timedelta(**how_long)
    return then.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def in_days(days: int) -> date:
    """The day in so many days, as it is counted in London."""
    return date.fromisoformat(london_date(ago())) + timedelta(days=days)


def days_ago(days: int) -> str:
    return in_days(-days).isoformat()


@dataclass
class Brewery:
    """A server with something in its ledger, and the office's device that put it there."""

    server: Server
    office: Device = field(default_factory=lambda: Device("office"))

    def tell(self, entries: Sequence[dict[str, Any]]) -> None:
        """Record entries, all of which must be taken."""
        body = push_body(entries, device=self.office.device, sent_at=ago())
        results = self.server.post("/api/push", body)["results"]
        assert [one for one in results if one["verdict"] != "accepted"] == []

    def fill(self, *numbers: str, gyle: str = "901", at: str = "") -> None:
        """Fill firkins, by default some minutes ago."""
        when = at or ago(minutes=5)
        self.tell([self.office.filled(n, gyle=gyle_id(gyle), at=when) for n in numbers])

    def send(self, *numbers: str, to: str, days: int) -> None:
        """Fill firkins and send them to a customer so many days ago, due back after a fortnight."""
        self.fill(*numbers, at=f"{days_ago(days + 1)}T12:00:00.000Z")
        facts = {"customer": customer_id(to), "due_on": days_ago(days - 14)}
        # At noon, so that no night on which the clocks change makes it a day more or less.
        at = f"{days_ago(days)}T12:00:00.000Z"
        self.tell([self.office.entry("sent", n, at=at, **facts) for n in numbers])


def gyle_id(number: str) -> str:
    return made_id(f"gyle {number}")


def customer_id(name: str) -> str:
    return made_id(f"customer {name}")


def place_id(name: str) -> str:
    return made_id(f"place {name}")


def begin(server: Server) -> Brewery:
    """Two beers with a gyle each, washed firkins, dirty firkins, kegs, places and customers."""
    brewery = Brewery(server)
    brewery.tell([*_records(brewery.office), *_containers(brewery.office)])
    return brewery


def _records(office: Device) -> list[dict[str, Any]]:
    long_ago = {"at": ago(days=60)}
    beers = [
        office.entry("beer", made_id(name), **long_ago, name=name, abv_tenths=strength)
        for name, strength in BEERS.items()
    ]
    days = {"Oystercatcher": 3, "Winter Lamp": 0}
    for name, conditioning in days.items():
        facts = {"conditioning_days": conditioning, "best_before_days": 42, "on_sale_days": 3}
        beers.append(office.entry("beer", made_id(name), **long_ago, **facts))
    gyles = [
        office.entry(
            "gyle",
            gyle_id(number),
            at=ago(days=6),
            number=number,
            beer=made_id(beer),
            brewed_on=days_ago(6),
            volume_ml=2_000_000,
        )
        for number, beer in [("901", "Oystercatcher"), ("902", "Winter Lamp")]
    ]
    roles = {"Cold room": "store", "Stillage": "stillage", "Yard": "yard"}
    places = [
        office.entry("place", place_id(name), **long_ago, name=name, role=role)
        for name, role in roles.items()
    ]
    customers = [
        office.entry("customer", customer_id(name), **long_ago, name=name, agreed_days=14)
        for name in ("Ferry House", "Lantern")
    ]
    return [*beers, *gyles, *places, *customers]


def _containers(office: Device) -> list[dict[str, Any]]:
    entered = [office.registered(number, at=ago(days=50)) for number in [*CASKS, *DIRTY]]
    keg = {"kind": "keg_30", "capacity_ml": 30_000}
    entered += [office.registered(number, at=ago(days=50), **keg) for number in KEGS]
    washed = [office.entry("washed", number, at=ago(days=40)) for number in [*CASKS, *KEGS]]
    emptied = [office.entry("returned", number, at=ago(days=2)) for number in DIRTY]
    return [*entered, *emptied, *washed]
