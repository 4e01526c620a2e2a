"""Sentences that warn, in our own words: one file, which the phone reads too.

They defer to local rules, the product's own sheet and licensed practice; none replaces them.
"""

import json
from importlib.resources import files
from typing import TypedDict


class Caution(TypedDict):
    """A warning, and where what it says is published."""

    words: str
    source: str | None


CAUTIONS: dict[str, Caution] = json.loads(
    (files(__package__) / "cautions.json").read_text(encoding="utf-8")
)
