"""The brewer's week: a gyle is brewed, containers are washed, and the beer of last week racked."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from cellarapp.demo.brewery import Brewery, Gyle
from cellarapp.demo.finings import doses_of
from cellarapp.demo.fleet import USUAL_ML, Container, Fill
from cellarapp.demo.words import DRIVER, OWNER, TURN
from cellarapp.domain.calendar import add_days, london_date, write_instant

FIRST_NUMBER = 312
INTO_CASKS = [("firkin", 9), ("kilderkin", 1), ("pin", 2)]
INTO_KEGS = [("keg_30", 4), ("keg_50", 2), ("firkin", 1)]
CLEAN = {"firkin": 14, "kilderkin": 3, "pin": 5, "keg_30": 7, "keg_50": 5}
"""How many of each kind are clean when the washing is done."""
KEPT_WEEK = 6
"""A firkin racked with the kegs so many weeks ago was overlooked, and is short dated today."""


def rackings(brewery: Brewery) -> Iterator[date]:
    """The days on which a gyle is racked, the one that waits today and the next included."""
    week = brewery.week
    day = week.first_day + timedelta(days=9)
    day += timedelta(days=(week.racking - day.weekday()) % 7)
    while week.brewed_on(day) < week.today:
        yield day
        day += timedelta(days=7)


def brew(brewery: Brewery, day: date) -> None:
    """Brews the gyle that will be racked the week after."""
    for count, racked_on in enumerate(rackings(brewery)):
        if brewery.week.brewed_on(racked_on) != day:
            continue
        moment = next(brewery.minutes(day, 16, 20))
        beer = TURN[weeks_before_today(brewery, racked_on) % len(TURN)]
        volume_ml = 10_000 * brewery.rng.randint(77, 82)
        number = FIRST_NUMBER + count
        gyle = Gyle(brewery.book.new_id(moment), number, beer, day, racked_on, volume_ml)
        brewery.gyles.append(gyle)
        brewery.book.note(
            brewery.office, moment, "gyle", gyle.id, by=OWNER, number=str(number),
            beer=brewery.beers[beer].id, brewed_on=day.isoformat(), volume_ml=volume_ml,
        )  # fmt: skip


def weeks_before_today(brewery: Brewery, day: date) -> int:
    """In which week before today a day lies; nought for today and what is to come this week."""
    return -(-brewery.days_ago(day) // 7)


def wash(brewery: Brewery, day: date) -> int:
    """Washes what has waited longest, and looks into some of it; answers how many it washed."""
    moments, washed = brewery.minutes(day, 13, 4), 0
    for kind, target in CLEAN.items():
        missing = target - len(brewery.standing("clean", kind))
        for container in brewery.standing("dirty", kind)[: max(0, missing)]:
            _wash(brewery, next(moments), container)
            washed += 1
    return washed


def _wash(brewery: Brewery, moment: datetime, container: Container) -> None:
    note, bench, chance = brewery.book.note, brewery.bench, brewery.rng.random()
    agent = brewery.rng.choice(["caustic", "caustic", "caustic, then acid"])
    note(bench, moment, "washed", container.number, by=DRIVER, with_=agent)
    container.state, container.idle_since = "clean", moment.date()
    soon = moment + timedelta(minutes=2)
    if chance < 0.15:
        note(bench, soon, "inspected", container.number, by=DRIVER, passed=True)
    elif chance < 0.17:
        why = brewery.rng.choice(["smells of vinegar", "beer stone at the keystone"])
        note(bench, soon, "inspected", container.number, by=DRIVER, passed=False, why=why)
        container.state = "aside"


def take_up_again(brewery: Brewery, day: date) -> None:
    """What was set aside is seen to after a week or so, and washed with the next ones."""
    for container in brewery.standing("aside"):
        if day - container.idle_since >= timedelta(days=10):
            moment = next(brewery.minutes(day, 11, 3))
            brewery.book.note(brewery.bench, moment, "released", container.number)
            container.state, container.idle_since = "dirty", day


def rack(brewery: Brewery, day: date) -> None:
    """The gyle that is due goes into casks."""
    for gyle in brewery.gyles:
        if gyle.racked_on == day:
            _fill(brewery, day, gyle, INTO_CASKS)


def keg(brewery: Brewery, day: date) -> None:
    """What is left of it goes into kegs, and the last of all into a firkin."""
    racked = [gyle for gyle in brewery.gyles if gyle.racked_on < day]
    if racked:
        filled = _fill(brewery, day, racked[-1], INTO_KEGS)
        if weeks_before_today(brewery, racked[-1].racked_on) == KEPT_WEEK:
            filled[-1].kept = True


def _fill(brewery: Brewery, day: date, gyle: Gyle, plan: list[tuple[str, int]]) -> list[Container]:
    moments = brewery.minutes(day, 9, 3)
    filled = [
        container
        for kind, count in plan
        for container in brewery.standing("clean", kind)[:count]
        if fill_one(brewery, next(moments), container, gyle)
    ]
    roll_away(brewery, day, filled)
    return filled


def fill_one(brewery: Brewery, moment: datetime, container: Container, gyle: Gyle) -> bool:
    """Fills one container; the last of a gyle comes short, and less than half is not racked."""
    usual_ml = USUAL_ML[container.kind]
    volume_ml = min(usual_ml, gyle.left_ml // 100 * 100)
    if volume_ml < usual_ml // 2:
        return False
    beer = brewery.beers[gyle.beer]
    racked_on = london_date(write_instant(moment))
    best_before = add_days(racked_on, beer.best_before_days)
    entry = brewery.book.note(
        brewery.bench, moment, "filled", container.number, gyle=gyle.id, volume_ml=volume_ml,
        best_before=best_before, place=brewery.places["racking"],
        doses=doses_of(brewery, container, gyle.beer, volume_ml),
    )  # fmt: skip
    gyle.left_ml -= volume_ml
    ready_on = date.fromisoformat(racked_on) + timedelta(days=beer.conditioning_days + 1)
    last_day = date.fromisoformat(best_before)
    container.racked(Fill(entry, gyle.id, gyle.beer, volume_ml, moment, ready_on, last_day))
    return True


def roll_away(brewery: Brewery, day: date, filled: list[Container]) -> None:
    """In the afternoon they go to the cold room, noted as one run."""
    moments = brewery.minutes(day, 15, 0.4)
    for container in filled:
        brewery.book.note(
            brewery.bench, next(moments), "moved", container.number, by=DRIVER,
            place=brewery.places["cold"],
        )  # fmt: skip


def pour_away(brewery: Brewery, day: date) -> None:
    """Beer past its date goes down the drain."""
    moments = brewery.minutes(day, 8, 5)
    for container in brewery.standing("full"):
        if container.fill is not None and container.fill.best_before < day and not container.kept:
            note = brewery.book.note
            note(brewery.bench, next(moments), "emptied", container.number, why="past its date")
            container.drained(day)
