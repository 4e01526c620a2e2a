"""The brewery's own values of figures, as they stand in the ledger."""

import json

from cellarapp.domain.figures import FIGURES
from cellarapp.storage.work import reading


def brewery_settings() -> dict[str, float]:
    """By the figure's id. One that is retired counts no more: the default stands again."""
    with reading() as work:
        rows = work.rows.load(("setting", name) for name in FIGURES)
    found = {}
    for (_, name), row in rows.items():
        fields = json.loads(row.doc)["fields"]
        if not fields.get("retired") and "value_millionths" in fields:
            found[name] = fields["value_millionths"] / 10**6
    return found
