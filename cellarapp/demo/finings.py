"""What goes into a cask beside beer: lots of finings, the dose of each fill, and a trial."""

from datetime import date, timedelta
from typing import Any

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.fleet import Container
from cellarapp.demo.words import BARHAND, BEERS, OWNER
from cellarapp.domain.calendar import write_instant

LOT_WEEKS = 8
"""How long a lot lasts: less than its life in a fridge."""
PRIMINGS_ML_PER_L = 1.2
"""Of a syrup of a kilogram to the litre: about a quarter of a volume more of CO2."""
SPARE_DAYS = 176
"""So many days ago a tub too many of isinglass came in: it is near the end of its half year."""
LOTS = {"isinglass": "IF", "auxiliary_silica": "AX"}


def take_delivery(brewery: Brewery, day: date) -> None:
    """Every few weeks a new lot of each comes in, and the old one is used up."""
    if "spare" not in brewery.lots and brewery.days_ago(day) <= SPARE_DAYS:
        _take_in(brewery, "spare", day, what="isinglass", letters="IF")
    weeks, rest = divmod((day - brewery.week.first_day).days, 7)
    if "isinglass" in brewery.lots and (rest != 1 or weeks % LOT_WEEKS):
        return
    book, bench, moment = brewery.book, brewery.bench, at(day, 11, 15)
    for what, letters in LOTS.items():
        if what in brewery.lots:
            book.note(bench, moment, "lot", brewery.lots[what], retired=True)
        _take_in(brewery, what, day, what=what, letters=letters, opened_on=day.isoformat())


def _take_in(brewery: Brewery, key: str, day: date, letters: str, **more: str) -> None:
    moment = at(day, 11, 15)
    brewery.lots[key] = brewery.book.new_id(moment)
    brewery.book.note(
        brewery.bench, moment + timedelta(minutes=2), "lot", brewery.lots[key], by=OWNER,
        name=f"{letters}{brewery.rng.randint(1000, 9999)}", received_on=day.isoformat(),
        stored_temp_decidegc=40, **more,
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


def try_finings(brewery: Brewery, day: date) -> None:
    """Three weeks ago five jars of a gyle were fined at five rates and read as they should be.

    The second step was bright in time and did not settle again; from the third on it did.
    """
    gyle = next(gyle for gyle in reversed(brewery.gyles) if not BEERS[gyle.beer]["vegan"])
    samples = [
        {
            "isinglass_centipt": isinglass,
            "auxiliary_centipt": 50,
            "clarity": [
                {"after_min": after_min, "score_tenths": 10 * score}
                for after_min, score in zip([65, 270, 1425], scores, strict=True)
            ],
            "resettled_tenths": [10 * score for score in resettled],
            "sediment_ul": sediment_ml * 1000,
        }
        for isinglass, scores, resettled, sediment_ml in [
            (100, (1, 2, 3), (2, 2), 6),
            (200, (2, 4, 4), (4, 3), 9),
            (300, (3, 4, 5), (4, 4), 11),
            (400, (3, 5, 5), (5, 4), 16),
            (500, (3, 5, 5), (4, 4), 24),
        ]
    ]
    moment = at(day, 11, 30)
    brewery.book.note(
        brewery.office, moment, "trial", brewery.book.new_id(moment), by=BARHAND, gyle=gyle.id,
        sample_ml=500, samples=samples, auxiliary="auxiliary_silica",
        auxiliary_at=write_instant(moment - timedelta(minutes=20)),
        started_at=write_instant(moment - timedelta(minutes=5)),
    )  # fmt: skip
