"""The brewery's own values of figures, as they stand in the ledger."""

import json

from cellarapp.domain.figures import FIGURES, MILLIONTHS
from cellarapp.storage.work import reading


def brewery_settings() -> dict[str, float | list[float]]:
    """By the figure's id. One that is retired counts no more: the default stands again."""
    with reading() as work:
        rows = work.rows.load(("setting", name) for name in FIGURES)
    found: dict[str, float | list[float]] = {}
    for (_, name), row in rows.items():
        fields = json.loads(row.doc)["fields"]
        if fields.get("retired"):
            continue
        if "least" not in FIGURES[name] and "value_millionths" in fields:
            found[name] = fields["value_millionths"] / MILLIONTHS
        elif "least" in FIGURES[name] and "values_millionths" in fields:
            found[name] = [one / MILLIONTHS for one in fields["values_millionths"]]
    return found
