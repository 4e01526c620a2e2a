"""The van: takes what is ready round the customers and brings home what they have drunk."""

from datetime import date, datetime, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.fleet import Container, Trip
from cellarapp.demo.habits import Customer
from cellarapp.domain.calendar import write_instant
from cellarapp.domain.records import Record
from cellarapp.domain.trips import due_on

KEPT_FOR_THE_BAR = 6
MOST_TURNS = 4
"""Nobody takes more than their share so many times over."""
HOARD = 9
"""Whoever keeps so many for good gets no more."""


def deliver(brewery: Brewery, day: date) -> None:
    """One round."""
    week = brewery.days_ago(day) // 7
    stops = [c for c in brewery.customers if _stops_at(brewery, c, day, week)]
    loads = _share_out(brewery, day, [c for c in stops if c.called_on(week)])
    arrival = at(day, 9, brewery.rng.randint(0, 20))
    empties: list[Container] = []
    for customer in stops:
        moment = arrival
        for container in loads.get(customer.index, []):
            moment += timedelta(seconds=brewery.rng.randint(15, 50))
            send(brewery, moment, container, customer)
        empties += _handed_over(brewery, customer, day)
        arrival += timedelta(minutes=brewery.rng.randint(18, 40))
    _unload(brewery, day, empties)


def _stops_at(brewery: Brewery, customer: Customer, day: date, week: int) -> bool:
    if customer.promised_on == day and customer.will_keep:
        return True
    if customer.delivery_day != day.weekday() or not customer.called_on(week):
        return False
    return customer.habit.gives_back > 0 or len(held_by(brewery, customer)) < HOARD


def held_by(brewery: Brewery, customer: Customer) -> list[Container]:
    """What a customer has."""
    return [
        c
        for c in brewery.standing("out")
        if c.trip is not None and c.trip.customer == customer.index
    ]


def _share_out(
    brewery: Brewery, day: date, customers: list[Customer]
) -> dict[int, list[Container]]:
    """Deals what is ready, in turns by share, each the kind they like or else what there is."""
    for_the_bar = brewery.ready(day, "firkin", "pin")[:KEPT_FOR_THE_BAR]
    stock = [c for c in brewery.ready(day) if c not in for_the_bar]
    spare = len(stock)
    if day.weekday() == brewery.week.deliveries[0]:
        spare = (spare + 1) // 2
    turns = [c for c in customers for _ in range(c.habit.share)]
    loads: dict[int, list[Container]] = {}
    for _ in range(MOST_TURNS):
        brewery.rng.shuffle(turns)
        for customer in turns[:spare]:
            liked = brewery.rng.choice(customer.habit.takes)
            container = next((c for c in stock if c.kind == liked), stock[0])
            stock.remove(container)
            loads.setdefault(customer.index, []).append(container)
            spare -= 1
    return loads


def send(brewery: Brewery, moment: datetime, container: Container, customer: Customer) -> str:
    """Notes one container as sent, due back as the rule has it."""
    day, habit = moment.date(), customer.habit
    record: Record = {"fields": {"agreed_days": habit.agreed_days}, "set_by": {}}
    due = due_on(write_instant(moment), record)
    drunk_on = day + timedelta(days=brewery.rng.randint(*habit.drinks_days))
    container.state = "out"
    container.trip = Trip(customer.index, day, drunk_on, date.fromisoformat(due))
    return brewery.book.note(
        brewery.van, moment, "sent", container.number, customer=customer.id, due_on=due
    )


def _handed_over(brewery: Brewery, customer: Customer, day: date) -> list[Container]:
    empties = [
        c for c in held_by(brewery, customer) if c.trip is not None and c.trip.drunk_on <= day
    ]
    if customer.promised_on == day and customer.will_keep:
        return empties
    if len(empties) < customer.habit.lot:
        return []
    return [c for c in empties if brewery.rng.random() < customer.habit.gives_back]


def _unload(brewery: Brewery, day: date, empties: list[Container]) -> None:
    """In the yard; now and then one is rolled to the others and nobody notes it."""
    note, yard = brewery.book.note, brewery.places["yard"]
    moments = brewery.minutes(day, 16, 0.8)
    for container in empties:
        trip, fill, moment, chance = (
            container.trip,
            container.fill,
            next(moments),
            brewery.rng.random(),
        )
        if trip is None or fill is None:
            continue
        customer = brewery.customers[trip.customer].id
        if chance < 0.02:
            ullage_ml = brewery.rng.randint(2, 9) * fill.volume_ml // 10_000 * 1000
            note(
                brewery.van, moment, "returned", container.number, ullage_ml=ullage_ml,
                place=yard, customer=customer,
            )  # fmt: skip
            later = moment + timedelta(minutes=50)
            note(brewery.bench, later, "emptied", container.number, why="ullage, credit given")
        elif chance > 0.03 or brewery.days_ago(day) < 40:
            note(brewery.van, moment, "returned", container.number, place=yard, customer=customer)
        container.drained(day)
