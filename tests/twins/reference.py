"""The server's side of every rule, under the names that the twin answers to."""

from collections.abc import Callable
from functools import partial
from typing import Any

from cellarapp.domain import asset_number, calendar, numbers, trips
from cellarapp.domain.calculations import CALCULATIONS
from cellarapp.domain.cellar.told import Around, cask_inputs
from cellarapp.domain.containers import most_that_fits_ml
from cellarapp.domain.corrections import resolve
from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import Settings
from cellarapp.domain.fold import entries_by_subject, fold, step
from cellarapp.domain.queries import open_queries
from cellarapp.domain.readiness import best_before_on, readiness
from cellarapp.domain.records import Record, drawn_ml, fold_record
from cellarapp.domain.roles import may_put_right, may_record
from cellarapp.domain.standing import blank

from .trade_answers import worked


def ledger(entries: list[Entry]) -> dict[str, Any]:
    """Each container's standing, open queries and inferred steps, and what corrections did."""
    resolved = resolve(entries)
    standings: dict[str, Any] = {}
    inferred: dict[str, list[str]] = {}
    for subject, counting in entries_by_subject(entries).items():
        if not numbers.is_number(subject):
            continue
        standing = fold(subject, counting)
        opened = [query["id"] for query in open_queries(standing)]
        standings[subject] = {"standing": standing, "open": opened}
        stepped = blank(subject)
        for entry in sorted(counting, key=order_key):
            stepped, implied = step(stepped, entry)
            if implied:
                inferred[entry["id"]] = implied
    return {
        "standings": standings,
        "inferred": inferred,
        "counts_for": resolved.counts_for,
        "dropped_by": resolved.dropped_by,
    }


def records(kind: str, entries: list[Entry]) -> dict[str, Any]:
    subject = entries[0]["subject"] if entries else ""
    return {
        "record": fold_record(kind, entries),
        "drawn_ml": drawn_ml(subject, entries),
    }


def readiness_of(
    entries: list[Entry], beer: Record | None, now: str, own: Settings | None = None
) -> Any:
    return readiness(fold("117", entries), beer, now, own)


def cask_inputs_of(entries: list[Entry], around: dict[str, Record | None]) -> Any:
    return _whole_as_whole(cask_inputs(fold("117", entries), Around(**around)))


def _whole_as_whole(value: Any) -> Any:
    """The phone writes 8 degrees as 8, not as 8.0."""
    if isinstance(value, dict):
        return {name: _whole_as_whole(one) for name, one in value.items()}
    if isinstance(value, list):
        return [_whole_as_whole(one) for one in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


RULES: dict[str, Callable[..., Any]] = {
    "normal_number": numbers.normal_number,
    "bare_digits": numbers.bare_digits,
    "matches": numbers.matches,
    "run_of_numbers": numbers.run_of_numbers,
    "take_apart": asset_number.take_apart,
    "most_that_fits_ml": most_that_fits_ml,
    "london_date": calendar.london_date,
    "add_days": calendar.add_days,
    "days_between": calendar.days_between,
    "london_minute": calendar.london_minute,
    "london_instant": calendar.london_instant,
    "same_time_after": calendar.same_time_after,
    "ledger": ledger,
    "records": records,
    "readiness": readiness_of,
    "cask_inputs": cask_inputs_of,
    "best_before_on": best_before_on,
    "due_on": trips.due_on,
    "days_out": trips.days_out,
    "days_overdue": trips.days_overdue,
    "may_record": may_record,
    "may_put_right": lambda role, kind, own: may_put_right(role, kind, own=own),
    **{name: partial(worked, name) for name in CALCULATIONS},
}


def answer(rule: str, *args: Any) -> tuple[str, Any]:
    """What the server's rule says, in the form in which the twin answers."""
    try:
        return "value", RULES[rule](*args)
    except DomainError as refusal:
        return "error", refusal.slug
