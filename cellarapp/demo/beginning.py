"""The first days: beers, places and customers are written down, and every container registered."""

from datetime import datetime, timedelta
from random import Random
from typing import Any

from cellarapp.demo.brewery import Beer, Brewery
from cellarapp.demo.clock import Week, at
from cellarapp.demo.fleet import LOTS, NEW_FIRKINS, Lot, in_lot, registration
from cellarapp.demo.habits import HABITS, Customer
from cellarapp.demo.notebook import Device, Notebook
from cellarapp.demo.words import (
    BARHAND,
    BEERS,
    BREWERY,
    CUSTOMERS,
    DRIVER,
    OWNER,
    PHONE,
    PLACES,
    VILLAGES,
)


def beer_days(abv_tenths: int) -> int:
    """Best before by strength: common practice, as a brewery might set it."""
    return 28 if abv_tenths < 40 else 42 if abv_tenths <= 50 else 56 if abv_tenths <= 70 else 84


def begin(now: datetime, week: Week, seed: int) -> Brewery:
    """The brewery on its first day with the app."""
    rng = Random(f"{seed} {week.today.isoformat()}")
    book = Notebook(rng, now)
    first = at(week.first_day, 8)
    daily_from = week.today - timedelta(days=45)
    bench = Device(book.new_id(first), OWNER, (23, 40), daily_from)
    van = Device(book.new_id(first), DRIVER, (17, 45), daily_from)
    office = Device(book.new_id(first), BARHAND, (23, 40), daily_from)
    brewery = Brewery(week, rng, book, bench, van, office)
    _write_records(brewery)
    for lot in LOTS:
        register(brewery, lot, first + timedelta(hours=2))
    return brewery


def _write_records(brewery: Brewery) -> None:
    book, office = brewery.book, brewery.office
    moments = brewery.minutes(brewery.week.first_day, 8, 1.5)
    book.note(office, next(moments), "brewery", "brewery", by=OWNER, **BREWERY)
    for name, facts in PLACES.items():
        moment = next(moments)
        brewery.places[name] = book.new_id(moment)
        book.note(office, moment, "place", brewery.places[name], by=OWNER, **facts)
    for beer in BEERS:
        moment = next(moments)
        said: dict[str, Any] = {
            "conditioning_days": 7,
            "best_before_days": beer_days(beer["abv_tenths"]),
            "on_sale_days": 3 if beer["abv_tenths"] < 50 else 4,
            **beer,
        }
        days = (said[f"{name}_days"] for name in ("conditioning", "best_before", "on_sale"))
        brewery.beers.append(Beer(book.new_id(moment), *days))
        book.note(office, moment, "beer", brewery.beers[-1].id, by=OWNER, **said)
    for index, customer in enumerate(CUSTOMERS):
        _write_customer(brewery, next(moments), index, customer)


def _write_customer(brewery: Brewery, moment: datetime, index: int, words: dict[str, str]) -> None:
    habit = HABITS[words["is"]]
    delivery_day = brewery.week.deliveries[index % 2]
    customer_id = brewery.book.new_id(moment)
    brewery.customers.append(Customer(customer_id, index, habit, delivery_day, index))
    brewery.book.note(
        brewery.office,
        moment,
        "customer",
        customer_id,
        by=OWNER,
        name=words["name"],
        contact=words["contact"],
        phone=PHONE.format(100 + index),
        map=_position(words["name"], index),
        agreed_days=habit.agreed_days,
        delivery_day=delivery_day,
    )


def _position(name: str, index: int) -> dict[str, int]:
    """In its village, some streets from the others."""
    latitude_e6, longitude_e6 = next(at for village, at in VILLAGES.items() if village in name)
    return {
        "latitude_e6": latitude_e6 + 700 * (index % 5),
        "longitude_e6": longitude_e6 + 900 * (index % 7),
    }


def register(brewery: Brewery, lot: Lot, moment: datetime) -> None:
    """Registers the containers of a lot one after the other, standing in the yard."""
    rng = brewery.rng
    for container in in_lot(lot):
        moment += timedelta(seconds=rng.randint(8, 25))
        tare_g = lot.tare_g + 10 * rng.randint(-25, 25)
        facts = registration(container, tare_g)
        brewery.book.note(
            brewery.office, moment, "registered", container.number, by=OWNER,
            place=brewery.places["yard"], **facts,
        )  # fmt: skip
        container.idle_since = moment.date()
        brewery.fleet[container.number] = container


def new_casks(brewery: Brewery) -> None:
    """Half a year ago a dozen firkins were bought."""
    day = brewery.week.today - timedelta(days=182)
    register(brewery, NEW_FIRKINS, at(day, 10))
