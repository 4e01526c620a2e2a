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


CLARITY = {65: (1, 2, 3, 3, 3), 270: (2, 4, 4, 5, 5), 1425: (3, 4, 5, 5, 5)}
"""Of five jars, by the minutes after the finings; then after each shaking, and what settled."""
RESETTLED = {1740: (2, 4, 4, 5, 4), 2100: (2, 3, 4, 4, 4)}
SEDIMENT_ML = (6, 9, 11, 16, 24)


def try_finings(brewery: Brewery, day: date) -> None:
    """Three weeks ago five jars of a gyle were fined at five rates and read as they should be.

    The second step was bright in time and did not settle again; from the third on it did.
    """
    gyle = next(gyle for gyle in reversed(brewery.gyles) if not BEERS[gyle.beer]["vegan"])
    book, office, moment = brewery.book, brewery.office, at(day, 11, 30)
    trial, started = book.new_id(moment), moment + timedelta(minutes=25)
    book.note(
        office, moment, "trial", trial, by=BARHAND, gyle=gyle.id, sample_ml=500,
        auxiliary="auxiliary_silica", auxiliary_lot=brewery.lots["auxiliary_silica"],
        isinglass_lot=brewery.lots["isinglass"],
        samples=[{"isinglass_centipt": 100 * n, "auxiliary_centipt": 50} for n in range(1, 6)],
    )  # fmt: skip
    auxiliary_at = write_instant(started - timedelta(minutes=15))
    book.note(
        office, started, "trial", trial, by=BARHAND, auxiliary_at=auxiliary_at,
        started_at=write_instant(started),
    )  # fmt: skip
    for after_min, scores in CLARITY.items():
        jars = [
            {"jar": n, "after_min": after_min, "clarity_tenths": 10 * score}
            for n, score in enumerate(scores, start=1)
        ]
        if after_min == max(CLARITY):
            jars = [
                jar | {"sediment_ul": ml * 1000} for jar, ml in zip(jars, SEDIMENT_ML, strict=True)
            ]
        read_at = started + timedelta(minutes=after_min)
        book.note(office, read_at, "trial_read", trial, by=BARHAND, jars=jars)
    for after_min, scores in RESETTLED.items():
        jars = [
            {"jar": n, "resettled_tenths": 10 * score} for n, score in enumerate(scores, start=1)
        ]
        read_at = started + timedelta(minutes=after_min)
        book.note(office, read_at, "trial_read", trial, by=BARHAND, jars=jars)
