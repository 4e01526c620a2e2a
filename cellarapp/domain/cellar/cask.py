"""What the rules of readiness are told of one full container."""

from typing import NamedTuple

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.days import days_to_condition
from cellarapp.domain.cellar.temperatures import HISTORY_FIELDS, History, asked_history
from cellarapp.domain.working import Working

CASK_FIELDS = (
    "shape", "holds_ml", "filled_at", "conditioning_days", "best_before_on", "on_sale_days",
    "fined", "fined_at", "moves", "last_moved_at", "stillaged_at", "vented_at", "hard_spile_at",
    "tapped_at", "first_drawn_at", "tasted_at", "fill_temp_c", *HISTORY_FIELDS,
)  # fmt: skip
AFTER_FILLING = "Not before it was filled."
FINED_WHY = "Whether isinglass was added."


class Cask(NamedTuple):
    """A full container: times are instants, None for what has not happened.

    A step implies the ones before it: what is tapped has been vented, and stands on a stillage.
    """

    shape: str
    holds_ml: float | None
    filled_at: str
    conditioning_days: int
    best_before_on: str | None
    on_sale_days: int | None
    fined: bool
    fined_at: str | None
    moves: int
    last_moved_at: str | None
    stillaged_at: str | None
    vented_at: str | None
    hard_spile_at: str | None
    tapped_at: str | None
    first_drawn_at: str | None
    tasted_at: str | None
    fill_temp_c: float | None
    history: History


def asked_cask(work: Working, asked: CellarAsked) -> Cask:
    """The container that a rule was told of."""
    filled_at = asked.instant("filled_at")

    def later(field: str) -> str | None:
        return asked.maybe_instant(field, filled_at, AFTER_FILLING)

    tapped_at = later("tapped_at")
    hard_spile_at = later("hard_spile_at") or tapped_at
    vented_at = later("vented_at") or hard_spile_at
    return Cask(
        shape=asked.shape() if asked.has("shape") else "cask",
        holds_ml=asked.maybe_number("holds_ml"),
        filled_at=filled_at,
        conditioning_days=days_to_condition(work, asked.maybe_whole("conditioning_days")),
        best_before_on=asked.maybe_day("best_before_on"),
        on_sale_days=asked.maybe_whole("on_sale_days"),
        fined=asked.yes("fined", FINED_WHY, default=True),
        fined_at=later("fined_at"),
        moves=asked.maybe_whole("moves") or 0,
        last_moved_at=later("last_moved_at"),
        stillaged_at=later("stillaged_at") or vented_at,
        vented_at=vented_at,
        hard_spile_at=hard_spile_at,
        tapped_at=tapped_at,
        first_drawn_at=later("first_drawn_at"),
        tasted_at=later("tasted_at"),
        fill_temp_c=asked.maybe_number("fill_temp_c"),
        history=asked_history(asked),
    )
