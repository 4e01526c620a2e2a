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


class Slip(NamedTuple):
    """What happens on which of the week's days, how many weeks before today."""

    on: str
    weeks_ago: int
    happens: Happens


SLIPS = [
    Slip("racking", 50, corrected.wrong_number),
    Slip("delivery", 44, corrected.wrong_pub),
    Slip("racking", 40, corrected.noted_twice),
    Slip("racking", 33, corrected.undone_and_redone),
    Slip("washing", 30, astray.lost_and_found),
    Slip("delivery", 25, corrected.settled_in_two_ways),
    Slip("washing", 23, astray.scrapped),
    Slip("racking", 20, corrected.dead_battery),
    Slip("delivery", 15, corrected.hazy_and_sent),
    Slip("calling", 10, astray.missing),
    Slip("racking", 2, waiting.too_much),
    Slip("racking", 1, waiting.filled_twice),
    Slip("kegging", 1, waiting.not_washed),
    Slip("delivery", 1, waiting.sent_to_two),
    Slip("uplift", 1, waiting.sent_set_aside),
]


def slip(brewery: Brewery, bar: Bar, day: date) -> None:
    """Lets go wrong what goes wrong that day, after everything else has been noted."""
    week = brewery.week
    weekdays = {
        "racking": week.racking,
        "kegging": week.kegging,
        "washing": week.washing,
        "delivery": week.deliveries[0],
        "uplift": week.deliveries[1],
        "calling": week.calling,
    }
    for one in SLIPS:
        same_week = weeks_before_today(brewery, day) == one.weeks_ago
        if same_week and weekdays[one.on] == day.weekday():
            one.happens(brewery, day)
    if brewery.days_ago(day) == 2:
        waiting.no_clock(brewery, day)
    if brewery.days_ago(day) == 1:
        waiting.dip_rose(bar, day)
