"""Containers that went astray: one lost and found, one scrapped, one missing to this day."""

from datetime import date, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.words import BARHAND, OWNER


def lost_and_found(brewery: Brewery, day: date) -> None:
    """Not there when the empties were counted; two days later it stood behind the boiler."""
    number = (brewery.standing("dirty", "keg_50") or brewery.standing("dirty"))[-1].number
    found_on = day + timedelta(days=2)
    note, office = brewery.book.note, brewery.office
    note(office, at(day, 17, 20), "missing", number, by=OWNER, why="not there at the count")
    note(office, at(day, 17, 22), "noted", number, by=OWNER, words="last seen by the steps")
    note(office, at(found_on, 11, 5), "found", number, place=brewery.places["yard"])


def scrapped(brewery: Brewery, day: date) -> None:
    """A kilderkin with a split seam: set aside, looked at, scrapped."""
    container = (brewery.standing("dirty", "kilderkin") or brewery.standing("dirty"))[0]
    number, container.state = container.number, "scrapped"
    note, bench = brewery.book.note, brewery.bench
    note(bench, at(day, 12, 10), "set_aside", number, why="weeps at the seam")
    later = at(day + timedelta(days=6), 10, 30)
    note(bench, later, "scrapped", number, why="seam split, not worth a weld")


def missing(brewery: Brewery, day: date) -> None:
    """The longest out of all: the pub says they never had it. Its trip stays open."""
    out = [(c.trip.since, c.number, c) for c in brewery.standing("out") if c.trip is not None]
    *_, container = min(out, key=lambda one: one[:2])
    container.state = "missing"
    brewery.book.note(
        brewery.office, at(day, 14, 45), "missing", container.number, by=BARHAND,
        why="they say they never had it",
    )  # fmt: skip
