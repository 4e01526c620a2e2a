"""The office: once a week whoever is late with their empties is rung."""

from datetime import date, datetime, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.habits import Customer
from cellarapp.demo.notebook import null
from cellarapp.demo.van import held_by
from cellarapp.demo.words import CHASES, OWNER

PATIENCE = timedelta(days=12)
"""Nobody is rung again before."""


def ring_round(brewery: Brewery, day: date) -> None:
    """Rings those who have two or more overdue, or one by a week."""
    moments = brewery.minutes(day, 10, 9)
    for customer in brewery.customers:
        late = _days_late(brewery, customer, day)
        is_late = len(late) >= 2 or max(late, default=0) >= 7
        if is_late and day - customer.chased_on >= PATIENCE:
            _ring(brewery, next(moments), customer, _promise(brewery, customer, day))


def ring_the_worst(brewery: Brewery, day: date) -> None:
    """Just before today, so that a promise is still to come: who has most overdue names a day."""
    today = brewery.week.today
    if not any(c.promised_on is not None and c.promised_on >= today for c in brewery.customers):
        name_days = [c for c in brewery.customers if c.habit.names_days]
        worst = max(name_days, key=lambda c: len(_days_late(brewery, c, day)))
        ahead = (worst.delivery_day - today.weekday()) % 7 or 7
        _ring(brewery, at(day, 11, 20), worst, today + timedelta(days=ahead))


def _days_late(brewery: Brewery, customer: Customer, day: date) -> list[int]:
    return [
        (day - c.trip.due_on).days
        for c in held_by(brewery, customer)
        if c.trip is not None and c.trip.due_on < day
    ]


def _ring(brewery: Brewery, moment: datetime, customer: Customer, promised_on: date | None) -> None:
    customer.chased_on, customer.promised_on = moment.date(), promised_on
    customer.will_keep = brewery.rng.random() < customer.habit.keeps_promises
    brewery.book.note(
        brewery.office, moment, "chased", customer.id, by=OWNER,
        words=brewery.rng.choice(CHASES),
        promised_on=promised_on.isoformat() if promised_on else null,
    )  # fmt: skip


def _promise(brewery: Brewery, customer: Customer, day: date) -> date | None:
    """They name a day of the van's, or nothing."""
    if brewery.rng.random() < 0.15 or not customer.habit.names_days:
        return None
    next_day = (customer.delivery_day - day.weekday()) % 7 or 7
    return day + timedelta(days=next_day, weeks=customer.habit.puts_off_weeks)
