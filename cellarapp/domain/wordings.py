"""What the brewery writes to others: each text with its default and the names it may hold.

The brewery's own words for one are a setting under its id. The phone reads the same file.
"""

import json
from importlib.resources import files
from typing import TypedDict


class Wording(TypedDict):
    """A text; each of the names in `holds` may stand in it in braces."""

    title: str
    label: str
    words: str
    holds: list[str]


WORDINGS: dict[str, Wording] = json.loads(
    (files(__package__) / "wordings.json").read_text(encoding="utf-8")
)
