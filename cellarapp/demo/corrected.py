"""Slips of earlier months, each put right by an entry: wrong numbers, undos, queries settled."""

from datetime import date, datetime, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.notebook import Wire
from cellarapp.demo.words import BARHAND, DRIVER, OWNER

SOON = timedelta(minutes=4)
DEAD_BATTERY = "1970-01-01T00:03:20.000Z"
"""What a tablet thinks whose battery was flat and that has not found the network since."""


def wrong_number(brewery: Brewery, day: date) -> None:
    """The second fill of the day was noted for a cask that is out, and renumbered at once."""
    noted = brewery.noted_on(day, "filled")[1]
    right = noted.wire["subject"]
    noted.wire["subject"] = brewery.standing("out", "firkin")[0].number
    brewery.book.note(
        brewery.bench, noted.at + SOON, "renumbered", noted.wire["subject"],
        target=noted.wire["id"], to=right,
    )  # fmt: skip


def wrong_pub(brewery: Brewery, day: date) -> None:
    """The office noted the wrong pub for it and undid that; the driver noted the right one."""
    noted = brewery.noted_on(day, "sent")[0]
    number = noted.wire["subject"]
    early = noted.at - timedelta(seconds=50)
    wrong = sent_elsewhere(brewery, early, noted.wire)
    brewery.book.note(brewery.office, early + timedelta(seconds=20), "voided", number, target=wrong)


def noted_twice(brewery: Brewery, day: date) -> None:
    """Two people noted one fill on two devices; in the evening the second note was taken out."""
    noted = brewery.noted_on(day, "filled")[3]
    number = noted.wire["subject"]
    second = brewery.book.note(
        brewery.office, noted.at + SOON, "filled", number, by=DRIVER, **noted.wire["facts"]
    )
    brewery.book.note(
        brewery.office, at(day, 19), "settled", number, by=OWNER,
        query=f"filled_twice:{noted.wire['id']}:{second}", way=f"void:{second}",
    )  # fmt: skip


def undone_and_redone(brewery: Brewery, day: date) -> None:
    """A move was undone by mistake, and the undo undone."""
    noted = brewery.noted_on(day, "moved")[0]
    number = noted.wire["subject"]
    book, bench = brewery.book, brewery.bench
    undo = book.note(bench, noted.at + SOON, "voided", number, target=noted.wire["id"])
    book.note(bench, noted.at + 2 * SOON, "voided", number, target=undo)


def settled_in_two_ways(brewery: Brewery, day: date) -> None:
    """Sent to two pubs; bar and van settled it differently, and the owner decided."""
    noted = brewery.noted_on(day, "sent")[-1]
    first = sent_elsewhere(brewery, noted.at - timedelta(hours=1), noted.wire)
    number, second = noted.wire["subject"], noted.wire["id"]
    query = f"sent_elsewhere:{first}:{second}"
    book, office, van = brewery.book, brewery.office, brewery.van
    one = book.note(office, at(day, 19), "settled", number, query=query, way="right")
    other = book.note(van, at(day, 19, 30), "settled", number, query=query, way=f"void:{first}")
    next_day = day + timedelta(days=1)
    book.note(
        office, at(next_day, 9, 30), "settled", number, by=OWNER, query=query, way=f"void:{first}",
        replaces=[one, other],
    )  # fmt: skip


def sent_elsewhere(brewery: Brewery, moment: datetime, sent: Wire) -> str:
    """The same container noted as sent to another pub as well, on the office's tablet."""
    other = next(c for c in brewery.customers if c.id != sent["facts"]["customer"])
    facts = {**sent["facts"], "customer": other.id}
    return brewery.book.note(brewery.office, moment, "sent", sent["subject"], by=OWNER, **facts)


def dead_battery(brewery: Brewery, day: date) -> None:
    """A move noted by a device that thought it was 1970; the owner said the receipt would do."""
    noted = brewery.noted_on(day, "moved")[-1]
    noted.wire["happened_at"] = DEAD_BATTERY
    brewery.book.note(
        brewery.office, at(day, 19), "settled", noted.wire["subject"], by=OWNER,
        query=f"impossible_time:{noted.wire['id']}", way="right",
    )  # fmt: skip


def hazy_and_sent(brewery: Brewery, day: date) -> None:
    """Set aside as hazy, sent all the same after a taste: it was right."""
    noted = brewery.noted_on(day, "sent")[-1]
    number, before = noted.wire["subject"], at(day - timedelta(days=1), 16)
    aside = brewery.book.note(brewery.bench, before, "set_aside", number, why="hazy on Tuesday")
    brewery.book.note(
        brewery.office, at(day, 18, 20), "settled", number, by=BARHAND,
        query=f"sent_set_aside:{aside}:{noted.wire['id']}", way="right",
    )  # fmt: skip
    brewery.book.note(brewery.office, at(day, 18, 21), "released", number)
