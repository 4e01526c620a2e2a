"""The figures of the trade, read once from figures.json, which the phone reads too.

Each has a value, its unit, whether it is published, common practice or from memory, and its source.
What is not published is a setting of the brewery, with the value here as its default.
"""

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any, NotRequired, TypedDict

from cellarapp.domain.inputs import number_in

Settings = Mapping[str, object]
"""The brewery's own values, by the ids of the figures that they stand in for."""


MILLIONTHS = 10**6
"""The brewery's own values are noted in whole millionths, so that nothing is rounded on the way."""


class Figure(TypedDict):
    """One figure of the trade with what it is called and where it comes from.

    `low` and `high` bound what a brewery may set in its place; of a list, which rises, each of
    its values, and `least` and `most` how many there are.
    """

    name: str
    value: Any
    unit: str
    kind: str
    source: str | None
    read_on: str | None
    remark: str
    low: NotRequired[float]
    high: NotRequired[float]
    least: NotRequired[int]
    most: NotRequired[int]


FIGURES: dict[str, Figure] = json.loads(
    (files(__package__) / "figures.json").read_text(encoding="utf-8")
)


def figure(name: str) -> Any:
    """The value of a figure by its id. Raises KeyError for an unknown one."""
    return FIGURES[name]["value"]


def setting(name: str, settings: Settings | None) -> float:
    """The brewery's own value of a figure that is one number, or the figure itself.

    Raises: OutOfRange when the brewery's value is no number or beyond the figure's own range.
    """
    own = (settings or {}).get(name)
    known = FIGURES[name]
    if own is None:
        return float(known["value"])
    return number_in(
        name, own, known.get("low"), known.get("high"), known["unit"], "A setting of the brewery."
    )


def setting_list(name: str, settings: Settings | None) -> list[float]:
    """The brewery's own values of a figure that is a list, or the figure itself.

    Raises: OutOfRange when the brewery's is no list, too short or too long, or one of its values
        is no number, beyond the figure's own range or below the one before it.
    """
    own = (settings or {}).get(name)
    known = FIGURES[name]
    if own is None:
        return [float(one) for one in known["value"]]
    values = own if isinstance(own, list) else []
    count = len(own) if isinstance(own, list) else "not a list"
    number_in(name, count, known["least"], known["most"], "values", "A setting of the brewery.")
    why = "A setting of the brewery, none below the one before it."
    found = []
    low = known["low"]
    for one in values:
        found.append(number_in(name, one, low, known["high"], known["unit"], why))
        low = one  # as it was written: a refusal names 5 and not 5.0, as the phone does
    return found
