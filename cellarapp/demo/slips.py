"""What goes wrong, and when: each slip once, counted in weeks before today.

Those of earlier months were put right by somebody; those of the last days wait for whoever looks.
"""

from collections.abc import Callable
from datetime import date
from typing import NamedTuple

from cellarapp.demo import astray, corrected, waiting
from cellarapp.demo.bar import Bar
from cellarapp.demo.brewery import Brewery
from cellarapp.demo.racking import weeks_before_today

Happens = Callable[[Brewery, date], None]


ENOUGH = {"filled": 5, "sent": 1, "moved": 1}
"""How often a kind of entry has to have been noted on a day for a slip to befall it."""


class Slip(NamedTuple):
    """What happens on which of the week's days, how many weeks before today."""

    on: str
    weeks_ago: int
    happens: Happens
    needs: str = ""
    """A kind of entry that has to have been noted often enough that day."""


SLIPS = [
    Slip("racking", 50, corrected.wrong_number, "filled"),
    Slip("delivery", 44, corrected.wrong_pub, "sent"),
    Slip("racking", 40, corrected.noted_twice, "filled"),
    Slip("racking", 33, corrected.undone_and_redone, "moved"),
    Slip("washing", 30, astray.lost_and_found),
    Slip("delivery", 25, corrected.settled_in_two_ways, "sent"),
    Slip("washing", 23, astray.scrapped),
    Slip("racking", 20, corrected.dead_battery, "moved"),
    Slip("delivery", 15, corrected.hazy_and_sent, "sent"),
    Slip("calling", 10, astray.missing),
    Slip("racking", 2, waiting.too_much, "filled"),
    Slip("racking", 1, waiting.filled_twice, "filled"),
    Slip("kegging", 1, waiting.not_washed),
    Slip("delivery", 1, waiting.sent_to_two, "sent"),
    Slip("uplift", 1, waiting.sent_set_aside, "sent"),
]


class Slips:
    """Lets each slip happen once, after everything else of its day has been noted."""

    def __init__(self, brewery: Brewery, bar: Bar) -> None:
        week = brewery.week
        self.brewery, self.bar = brewery, bar
        self.to_come = list(SLIPS)
        self.weekdays = {
            "racking": week.racking,
            "kegging": week.kegging,
            "washing": week.washing,
            "delivery": week.deliveries[0],
            "uplift": week.deliveries[1],
            "calling": week.calling,
        }

    def go_by(self, day: date) -> None:
        """A slip whose day was a holiday, or too quiet, happens the week after."""
        week = weeks_before_today(self.brewery, day)
        for slip in list(self.to_come):
            due = week <= slip.weeks_ago and self.weekdays[slip.on] == day.weekday()
            noted = self.brewery.noted_on(day, slip.needs) if due else []
            if due and len(noted) >= ENOUGH.get(slip.needs, 0):
                self.to_come.remove(slip)
                slip.happens(self.brewery, day)
        if self.brewery.days_ago(day) == 2:
            waiting.no_clock(self.brewery, day)
        if self.brewery.days_ago(day) == 1:
            waiting.dip_rose(self.bar, day)
