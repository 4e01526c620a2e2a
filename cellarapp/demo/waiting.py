"""Slips of the last days, which nobody has put right: one query of each sort."""

from datetime import date, timedelta

from cellarapp.demo.bar import Bar
from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.corrected import DEAD_BATTERY, sent_elsewhere
from cellarapp.demo.racking import fill_one
from cellarapp.demo.words import BARHAND, DRIVER, OWNER

TOO_MUCH_ML = 42_400
"""For a firkin: 42.4 was written where 40.4 was meant."""


def too_much(brewery: Brewery, day: date) -> None:
    """More written down than a firkin holds; it went out since."""
    noted = brewery.noted_on(day, "filled")[2]
    noted.wire["facts"]["volume_ml"] = TOO_MUCH_ML


def filled_twice(brewery: Brewery, day: date) -> None:
    """Two phones filled one number within the hour from two gyles: one of them was another cask."""
    noted = brewery.noted_on(day, "filled")[4]
    number = noted.wire["subject"]
    brewery.fleet[number].kept = True
    spare = brewery.standing("clean", "firkin")[0]
    spare.state = "aside"  # really the one that was filled: nobody takes it for empty
    spare.idle_since = day
    last = brewery.gyles[-3]
    facts = {**noted.wire["facts"], "gyle": last.id, "volume_ml": 20_500}
    later = noted.at + timedelta(minutes=22)
    brewery.book.note(brewery.office, later, "filled", number, by=DRIVER, **facts)


def not_washed(brewery: Brewery, day: date) -> None:
    """A keg that came back dirty was filled: washed by hand and not noted, or not washed."""
    container = (brewery.standing("dirty", "keg_30", "keg_50") or brewery.standing("dirty"))[-1]
    gyle = next(g for g in reversed(brewery.gyles) if g.racked_on < day)
    gyle.left_ml = max(gyle.left_ml, container.capacity_ml)
    fill_one(brewery, at(day, 14, 5), container, gyle)
    container.kept = True


def sent_to_two(brewery: Brewery, day: date) -> None:
    """The office had it down for one pub the evening before, the driver left it at another."""
    noted = brewery.noted_on(day, "sent")[0]
    sent_elsewhere(brewery, at(day - timedelta(days=1), 17, 10), noted.wire)


def sent_set_aside(brewery: Brewery, day: date) -> None:
    """Set aside because it tasted of apples, and loaded by somebody who did not know."""
    noted = brewery.noted_on(day, "sent")[-1]
    brewery.book.note(
        brewery.bench, at(day - timedelta(days=1), 16, 20), "set_aside", noted.wire["subject"],
        why="tastes of green apples",
    )  # fmt: skip


def no_clock(brewery: Brewery, day: date) -> None:
    """A check noted on a tablet that thought it was 1970."""
    container = brewery.ready(day)[0]
    brewery.book.note(
        brewery.office, at(day, 16, 40), "checked", container.number, by=OWNER,
        clock_said=DEAD_BATTERY, clarity="bright", temp_decidegc=118,
    )  # fmt: skip


def dip_rose(bar: Bar, day: date) -> None:
    """A second dip of the evening shows more than the first: one of the two was misread."""
    pull, book = bar.on_sale[-1], bar.brewery.book
    number, low_ml = pull.container.number, pull.left_ml * 6 // 1000 * 100
    for minute, person, left_ml in [(3, BARHAND, low_ml), (5, OWNER, low_ml + 2_000)]:
        moment = at(day, 23, minute)
        book.note(bar.brewery.office, moment, "dipped", number, by=person, left_ml=left_ml)
