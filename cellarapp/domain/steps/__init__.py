"""What each kind of entry does to a container's standing (LIFE-1 to LIFE-19).

Every function changes the fresh standing it is given and answers with the steps it had to infer.
Nothing here refuses: what cannot be right raises a query and the work goes on (LIFE-22).
"""

from collections.abc import Callable

from cellarapp.domain.entries import Entry
from cellarapp.domain.standing import Standing
from cellarapp.domain.steps import bench, holding, serving, trips

Step = Callable[[Standing, Entry], list[str]]

STEPS: dict[str, Step] = {
    "registered": bench.registered,
    "washed": bench.washed,
    "inspected": bench.inspected,
    "filled": bench.filled,
    "dosed": bench.dosed,
    "moved": serving.moved,
    "stillaged": serving.stillaged,
    "vented": serving.vented,
    "tapped": serving.tapped,
    "stooped": serving.stooped,
    "dipped": serving.dipped,
    "checked": serving.checked,
    "planned": serving.planned,
    "emptied": serving.emptied,
    "sent": trips.sent,
    "returned": trips.returned,
    "set_aside": holding.set_aside,
    "released": holding.released,
    "missing": trips.missing,
    "found": trips.found,
    "scrapped": holding.scrapped,
    "noted": holding.words_only,
    "reported": trips.reported,
    "told": trips.told,
    "forgotten": holding.words_only,
    "voided": holding.words_only,
    "renumbered": holding.words_only,
    "settled": holding.settled,
}

HANDLED = frozenset(STEPS) - {
    "registered", "planned", "missing", "scrapped", "noted", "reported", "told", "forgotten",
    "voided", "renumbered", "settled",
}  # fmt: skip
"""Kinds in which somebody has the container in hand, so that it cannot be missing."""
