"""READY: the stage of a full container, and the dates that hang on its racking and tapping.

Here alone the stage is decided, from two times: when it has conditioned and when it is off sale.
They come from its days, which lists of hundreds ask for, or from `ready` in domain/cellar, which
also heeds temperature where the brewery lets it count, and says of one container why.
"""

from typing import Literal, TypedDict

from cellarapp.domain.calendar import add_days, london_date
from cellarapp.domain.cellar.days import (
    after_days,
    days_on_sale,
    days_to_condition,
    window_days,
)
from cellarapp.domain.figures import Settings
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Standing
from cellarapp.domain.working import Working

Stage = Literal["empty", "conditioning", "ready", "stillaged", "working", "on_sale", "past"]


class Readiness(TypedDict):
    """Where a full container stands on its way to the glass.

    `ready_at` and `off_at` are instants, `best_before` a day; off once it is on sale only.
    """

    stage: Stage
    ready_at: str | None
    best_before: str | None
    off_at: str | None


def own_days(beer: Record | None, name: str) -> int | None:
    """What a beer says of itself; None where it says nothing."""
    own = beer["fields"].get(name) if beer is not None else None
    return None if own is None else int(own)


def best_before_on(
    racked_at: str, beer: Record | None, shape: str | None = None, settings: Settings | None = None
) -> str:
    """READY-1: best before, counted in days on London's calendar from racking (SHELF-1)."""
    own, strength = own_days(beer, "best_before_days"), own_days(beer, "abv_tenths")
    days = window_days(Working(settings), shape, strength, own)
    return add_days(london_date(racked_at), days)


def stage_of(standing: Standing, ready_at: str, off_at: str | None, now: str) -> Stage:
    """READY-2: conditioning, then ready, then as far as it has come on the stillage.

    Past is past one of two, best before or off sale: the best-before day itself is still good.
    """
    contents, serving = standing["contents"], standing["serving"]
    if contents is None:
        return "empty"
    best_before = contents["best_before"]
    if best_before is not None and london_date(now) > best_before:
        return "past"
    if off_at is not None and off_at < now:
        return "past"
    if serving is None:
        return "ready" if now >= ready_at else "conditioning"
    if serving["tapped"] is not None:
        return "on_sale"
    return "working" if serving["vented"] else "stillaged"


def readiness(
    standing: Standing, beer: Record | None, now: str, settings: Settings | None = None
) -> Readiness:
    """READY-3: conditioned after its days (COND-1), off so many days after tapping (SALE-1)."""
    contents, serving = standing["contents"], standing["serving"]
    if contents is None:
        return {"stage": "empty", "ready_at": None, "best_before": None, "off_at": None}
    work = Working(settings)
    days = days_to_condition(work, own_days(beer, "conditioning_days"))
    ready_at = after_days(contents["since"], days)
    off_at = None
    if serving is not None and serving["tapped"] is not None:
        shape = "keg" if standing["shape"] == "keg" else "cask"
        on_sale = days_on_sale(work, shape, own_days(beer, "on_sale_days"))
        off_at = after_days(serving["tapped"]["since"], on_sale)
    return {
        "stage": stage_of(standing, ready_at, off_at, now),
        "ready_at": ready_at,
        "best_before": contents["best_before"],
        "off_at": off_at,
    }
