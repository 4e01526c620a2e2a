"""The months as they pass, day by day, up to yesterday evening."""

from datetime import date, datetime, timedelta

from cellarapp.demo import beginning, finings, loading, measured, office, outside, racking, van
from cellarapp.demo.bar import Bar
from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import Week
from cellarapp.demo.slips import Slips

SILENCES = [(-131, -126), (-66, -64), (-17, -15)]
"""From which day to which van, office and bench had no network, counted from today."""


def live(now: datetime, today: date, seed: int) -> Brewery:
    """The whole history."""
    brewery = beginning.begin(now, Week(today), seed)
    for device, (first, last) in zip(
        (brewery.van, brewery.office, brewery.bench), SILENCES, strict=True
    ):
        spell = (today + timedelta(days=first), today + timedelta(days=last))
        device.silent.append(spell)
    bar = Bar(brewery)
    slips = Slips(brewery, bar)
    for day in brewery.past_days():
        racking.brew(brewery, day)
        if not brewery.week.closed(day):
            _pass(brewery, bar, day)
            slips.go_by(day)
            if brewery.days_ago(day) == 1:
                outside.say(brewery, day)
                loading.make_up(brewery, day)
                bar.write_hours(day)
    return brewery


def _pass(brewery: Brewery, bar: Bar, day: date) -> None:
    week, weekday = brewery.week, day.weekday()
    measured.read_thermometers(brewery, day)
    finings.take_delivery(brewery, day)
    racking.pour_away(brewery, day)
    bar.morning(day)
    if weekday == week.racking:
        racking.rack(brewery, day)
    if weekday == week.kegging:
        racking.keg(brewery, day)
    if weekday in week.deliveries:
        van.deliver(brewery, day)
    if weekday == week.calling:
        office.ring_round(brewery, day)
    if weekday == week.washing:
        racking.take_up_again(brewery, day)
        measured.mix_solution(brewery, day, racking.wash(brewery, day))
        measured.measure_gyles(brewery, day)
    if brewery.days_ago(day) == 182:
        beginning.new_casks(brewery)
    bar.afternoon(day)
    bar.evening(day)
    if brewery.days_ago(day) == 20:
        finings.try_finings(brewery, day)
    if brewery.days_ago(day) == 2:
        office.ring_the_worst(brewery, day)
    if brewery.days_ago(day) == 1:
        bar.plan_saturday(day)
