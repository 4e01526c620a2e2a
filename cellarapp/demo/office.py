"""The office: once a week whoever is late with their empties is rung."""

from datetime import date, timedelta

from cellarapp.demo.brewery import Brewery
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
        late = [
            (day - c.trip.due_on).days
            for c in held_by(brewery, customer)
            if c.trip is not None and c.trip.due_on < day
        ]
        if (len(late) < 2 and max(late, default=0) < 7) or day - customer.chased_on < PATIENCE:
            continue
        customer.chased_on = day
        customer.promised_on = _promise(brewery, customer, day)
        customer.will_keep = brewery.rng.random() < customer.habit.keeps_promises
        promised = customer.promised_on.isoformat() if customer.promised_on else null
        words = brewery.rng.choice(CHASES)
        brewery.book.note(
            brewery.office, next(moments), "chased", customer.id, by=OWNER, words=words,
            promised_on=promised,
        )  # fmt: skip


def _promise(brewery: Brewery, customer: Customer, day: date) -> date | None:
    """They name a day of the van's, or nothing."""
    if brewery.rng.random() < 0.15:
        return None
    next_day = (customer.delivery_day - day.weekday()) % 7 or 7
    return day + timedelta(days=next_day, weeks=customer.habit.puts_off_weeks)
