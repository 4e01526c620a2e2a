"""The bench's sheet: what goes into each container, and what to draw for them all."""

from typing import NamedTuple

from cellarapp.domain.bench.fillings import asked_fillings, in_all, total_ml
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

UNITS = ("mL", "g")
DIGITS = 1
MOST_ADDITIONS = 20


class Addition(NamedTuple):
    """Something that is added by the litre: liquids in mL, which take up room, or grams."""

    per_l: float
    unit: str


def asked_additions(asked: Asked) -> list[Addition]:
    """The additions asked about, in the order in which they go in."""
    additions = []
    for index, row in enumerate(asked.parts("additions", MOST_ADDITIONS, "additions")):
        part = Asked(row, "per_l", "unit", at=f"additions[{index}].")
        unit = part.choice("unit", UNITS, "Liquids by volume, all else by weight.")
        additions.append(Addition(part.number("per_l"), unit))
    return additions


def bench_sheet(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """RACK-2: the dose of every addition for each container, and the totals to draw.

    Liquid additions are inside the fill, so the beer is what is left of it. Asked: containers,
    additions with per_l and unit.
    """
    asked, work = Asked(inputs, "containers", "additions"), Working(settings)
    fillings, additions = asked_fillings(asked), asked_additions(asked)
    all_ml = work.step("All containers = sum of count x fill", total_ml(fillings), "mL", 0)
    liquid = sum(addition.per_l for addition in additions if addition.unit == "mL")
    work.step("Liquid additions in a litre", liquid, "mL", 3)
    if liquid > 0:
        work.caution("additions_inside_fill")
    doses = [
        [half_up(a.per_l * filling.volume_ml / 1000, DIGITS) for a in additions]
        for filling in fillings
    ]
    rows = [
        {
            **filling.row(),
            "doses": given,
            "liquid_ml": half_up(liquid * filling.volume_ml / 1000, DIGITS),
            "beer_ml": half_up(filling.volume_ml * (1 - liquid / 1000), DIGITS),
        }
        for filling, given in zip(fillings, doses, strict=True)
    ]
    of_each = [[given[index] for given in doses] for index in range(len(additions))]
    return work.done(
        {
            "containers": rows,
            "totals": [in_all(fillings, given) for given in of_each],
            "count": sum(filling.count for filling in fillings),
            "volume_ml": int(all_ml),
            "beer_ml": half_up(all_ml * (1 - liquid / 1000), DIGITS),
            "dilution_pct": half_up(liquid / 10, 3),
        }
    )
