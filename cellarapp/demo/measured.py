"""What is measured beside the casks: cellar temperatures, gyles, washing solutions."""

from datetime import date, timedelta

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.words import BEERS, DRIVER, OWNER
from cellarapp.domain.calendar import write_instant

RECENT_DAYS = 45
"""Temperatures and solutions further back are of no use to anybody who looks."""


def read_thermometers(brewery: Brewery, day: date) -> None:
    """In the morning, and in the afternoon when the door has stood open."""
    if brewery.days_ago(day) > RECENT_DAYS:
        return
    for hour, warmth in [(8, 0), (15, 6)]:
        for place, usual in [("cold", 114), ("stillage", 121)]:
            moment = at(day, hour, brewery.rng.randint(3, 25))
            reading = usual + warmth + brewery.rng.randint(-5, 5)
            brewery.book.note(
                brewery.office, moment, "temperature", brewery.places[place],
                series=[[write_instant(moment), reading]],
            )  # fmt: skip


def measure_gyles(brewery: Brewery, day: date) -> None:
    """On the day before, a gyle's gravity and what else decides its doses is written down."""
    for gyle in brewery.gyles:
        if not timedelta(0) < gyle.racked_on - day <= timedelta(days=3):
            continue
        rng, limit_e4 = brewery.rng, BEERS[gyle.beer]["limit_gravity_e4"]
        # Little of its extract is left, or it would need no sugar.
        present_e4 = limit_e4 + 1 + rng.randint(2, 8) // 2
        original_e4 = limit_e4 + round(BEERS[gyle.beer]["abv_tenths"] * 7.6)
        brewery.book.note(
            brewery.bench, at(day, 16, 30), "gyle", gyle.id, by=OWNER, loss_ml=12_000,
            original_gravity_e4=original_e4, present_gravity_e4=present_e4,
            highest_temp_decidegc=rng.randint(192, 218), fining_temp_decidegc=rng.randint(98, 121),
            yeast_thousands_per_ml=100 * rng.randint(5, 16), ph_hundredths=rng.randint(398, 421),
        )  # fmt: skip


def mix_solution(brewery: Brewery, day: date, washed: int) -> None:
    """Caustic for the day's washing, titrated once; the one of last time is thrown away."""
    if brewery.days_ago(day) > RECENT_DAYS:
        return
    book, bench, moment = brewery.book, brewery.bench, at(day, 12, 40)
    if brewery.solution:
        book.note(bench, moment, "solution", brewery.solution, by=DRIVER, thrown_away=True)
    brewery.solution = solution = book.new_id(moment)
    made_at = moment + timedelta(minutes=12)
    book.note(
        bench, made_at, "solution", solution, by=DRIVER, agent="caustic", name="Caustic tank",
        made_at=write_instant(made_at), volume_ml=120_000, made_mg_per_l=20_000,
        least_mg_per_l=15_000, most_uses=60, most_hours=72,
    )  # fmt: skip
    if washed:
        book.note(bench, at(day, 15, 50), "solution_used", solution, by=DRIVER, uses=washed)
        strength = 100 * brewery.rng.randint(168, 192)
        book.note(
            bench, at(day, 15, 55), "solution_checked", solution, by=DRIVER,
            strength_mg_per_l=strength,
        )  # fmt: skip
