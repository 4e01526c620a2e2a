"""The figures of the trade, read once from figures.json, which the phone reads too.

Each has a value, its unit, whether it is published, common practice or from memory, and its source.
"""

import json
from importlib.resources import files
from typing import Any, TypedDict


class Figure(TypedDict):
    """One figure of the trade with where it comes from."""

    value: Any
    unit: str
    kind: str
    source: str | None
    read_on: str | None
    remark: str


FIGURES: dict[str, Figure] = json.loads(
    (files(__package__) / "figures.json").read_text(encoding="utf-8")
)


def figure(name: str) -> Any:
    """The value of a figure by its id. Raises KeyError for an unknown one."""
    return FIGURES[name]["value"]
