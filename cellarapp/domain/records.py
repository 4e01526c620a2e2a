"""Beers, gyles, places and customers: field by field the last in the order of happening stands."""

from typing import Any, NotRequired, TypedDict

from cellarapp.domain.entries import CUSTOMER_KINDS, RECORD_KINDS, Entry, order_key
from cellarapp.domain.numbers import is_number
from cellarapp.domain.standing import Mark, mark


class Chase(Mark):
    """The last time somebody asked a customer for containers, and what was promised."""

    words: str
    promised_on: str | None


class Record(TypedDict):
    """The fields of one thing, and for each the order key of the entry that set it."""

    fields: dict[str, Any]
    set_by: dict[str, str]
    drawn_ml: NotRequired[int]
    chase: NotRequired[Chase | None]


def blank_record(subject_type: str) -> Record:
    """A thing of which nothing is known yet: a gyle may be filled from before it is described."""
    record: Record = {"fields": {}, "set_by": {}}
    if subject_type == "gyle":
        record["drawn_ml"] = 0
    if subject_type == "customer":
        record["chase"] = None
    return record


def subject_type(subject: str, kinds: set[str]) -> str | None:
    """What a subject is: a number is a container, anything else is what its entries call it.

    None while nothing but corrections speak of it.
    """
    if is_number(subject):
        return "container"
    named = sorted(kinds & RECORD_KINDS)
    if named:
        return named[0]
    return "customer" if kinds & CUSTOMER_KINDS else None


def set_fields(record: Record, entry: Entry) -> Record:
    """The record after an entry that sets fields, or notes a chase; it may come in any order."""
    key = order_key(entry)
    if entry["kind"] == "chased":
        return _chased(record, entry, key)
    if entry["kind"] not in RECORD_KINDS:
        return record
    fresh = {n: v for n, v in entry["facts"].items() if key > record["set_by"].get(n, "")}
    return {
        **record,
        "fields": {**record["fields"], **fresh},
        "set_by": {**record["set_by"], **dict.fromkeys(fresh, key)},
    }


def _chased(record: Record, entry: Entry, key: str) -> Record:
    if key <= record["set_by"].get("chase", ""):
        return record
    chase: Chase = {
        **mark(entry),
        "words": entry["facts"].get("words", ""),
        "promised_on": entry["facts"].get("promised_on"),
    }
    return {**record, "chase": chase, "set_by": {**record["set_by"], "chase": key}}


def fold_record(subject_type: str, entries: list[Entry]) -> Record:
    """A record from its entries in any order. Litres drawn from a gyle come from its fills."""
    record = blank_record(subject_type)
    for entry in entries:
        record = set_fields(record, entry)
    return record


def drawn_ml(gyle: str, counting: list[Entry]) -> int:
    """What the fills that count have drawn from a gyle, mL."""
    return sum(
        e["facts"]["volume_ml"]
        for e in counting
        if e["kind"] == "filled" and e["facts"]["gyle"] == gyle
    )
