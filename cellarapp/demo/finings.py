"""What goes into a cask beside beer: lots of finings as they come in, and the dose of each fill."""

from datetime import date, timedelta
from typing import Any

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.fleet import Container
from cellarapp.demo.words import BEERS, OWNER

LOT_WEEKS = 8
"""How long a lot lasts: less than its life in a fridge."""
PRIMINGS_ML_PER_L = 1.2
"""Of a syrup of a kilogram to the litre: about a quarter of a volume more of CO2."""
LOTS = {"isinglass": "IF", "auxiliary_silica": "AX"}


def take_delivery(brewery: Brewery, day: date) -> None:
    """Every few weeks a new lot of each comes in, and the old one is used up."""
    weeks, rest = divmod((day - brewery.week.first_day).days, 7)
    if brewery.lots and (rest != 1 or weeks % LOT_WEEKS):
        return
    book, bench, moment = brewery.book, brewery.bench, at(day, 11, 15)
    for what, letters in LOTS.items():
        if what in brewery.lots:
            book.note(bench, moment, "lot", brewery.lots[what], retired=True)
        brewery.lots[what] = book.new_id(moment)
        book.note(
            bench, moment + timedelta(minutes=2), "lot", brewery.lots[what], by=OWNER, what=what,
            name=f"{letters}{brewery.rng.randint(1000, 9999)}", received_on=day.isoformat(),
            stored_temp_decidegc=40,
        )  # fmt: skip


def doses_of(brewery: Brewery, container: Container, beer: int, volume_ml: int) -> Any:
    """Primings and finings of a cask, by its beer's rates; nothing for kegs and unfined beer."""
    said = BEERS[beer]
    if container.kind.startswith("keg") or said["vegan"]:
        return None
    doses: list[dict[str, Any]] = [
        {"what": "primings", "amount_ml": round(volume_ml * PRIMINGS_ML_PER_L / 1000)}
    ]
    for what, field in [
        ("auxiliary_silica", "auxiliary_ml_per_hl"),
        ("isinglass", "isinglass_ml_per_hl"),
    ]:
        amount_ml = round(volume_ml * said[field] / 100_000)
        doses.append({"what": what, "amount_ml": amount_ml, "lot": brewery.lots[what]})
    return doses
