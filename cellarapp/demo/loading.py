"""The round that waits for whoever looks: made up on the last evening, and not driven yet."""

from datetime import date, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.van import held_by
from cellarapp.demo.words import OWNER

STOPS = 3
MOST = 6


def make_up(brewery: Brewery, day: date) -> None:
    """One or two containers for each of the three who have most of ours and do give them back.

    The longest dated go: the bar keeps the others. Some are ready in the course of the day only.
    """
    customers = [c for c in brewery.customers if c.habit.gives_back > 0]
    customers.sort(key=lambda c: len(held_by(brewery, c)), reverse=True)
    tomorrow = brewery.week.today + timedelta(days=1)
    stock = [c.number for c in brewery.ready(tomorrow)[-MOST:]]
    moments = brewery.minutes(day, 17, 4)
    for turn, customer in enumerate(customers[:STOPS]):
        moment = next(moments)
        brewery.book.note(
            brewery.office, moment, "drop", brewery.book.new_id(moment), by=OWNER,
            customer=customer.id, on=brewery.week.today.isoformat(), numbers=stock[turn::STOPS],
        )  # fmt: skip
