"""READY: when a full container can go on sale, and how long it stays good.

A first rule: so many days from racking, each beer its own.
"""

from typing import Literal, TypedDict

from cellarapp.domain.calendar import add_days, london_date, same_time_after
from cellarapp.domain.figures import figure
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Standing

Stage = Literal["empty", "conditioning", "ready", "stillaged", "working", "on_sale", "past"]


class Readiness(TypedDict):
    """Where a full container stands on its way to the glass.

    `ready_at` and `off_at` are instants, `best_before` a day; off once it is on sale only.
    """

    stage: Stage
    ready_at: str | None
    best_before: str | None
    off_at: str | None


def beer_days(beer: Record | None, name: str) -> int:
    """A beer's own number of days, or the figure of the trade where it says none."""
    own = beer["fields"].get(name) if beer is not None else None
    return int(figure(name) if own is None else own)


def best_before_on(racked_at: str, beer: Record | None) -> str:
    """READY-1: best before, counted in days on London's calendar from racking."""
    return add_days(london_date(racked_at), beer_days(beer, "best_before_days"))


def readiness(standing: Standing, beer: Record | None, now: str) -> Readiness:
    """READY-2: conditioning for the beer's days, then ready, until best before or taken off.

    READY-3: the clock of days on sale starts with tapping. Past means past one of the two: the
    best-before day itself is still good.
    """
    contents, serving = standing["contents"], standing["serving"]
    if contents is None:
        return {"stage": "empty", "ready_at": None, "best_before": None, "off_at": None}
    ready_at = same_time_after(contents["since"], beer_days(beer, "conditioning_days"))
    best_before = contents["best_before"]
    off_at = None
    stage: Stage = "ready" if now >= ready_at else "conditioning"
    if serving is not None:
        stage = "working" if serving["vented"] else "stillaged"
        if serving["tapped"] is not None:
            stage = "on_sale"
            off_at = same_time_after(serving["tapped"]["since"], beer_days(beer, "on_sale_days"))
    if (best_before is not None and london_date(now) > best_before) or (off_at or now) < now:
        stage = "past"
    return {"stage": stage, "ready_at": ready_at, "best_before": best_before, "off_at": off_at}
