"""The fold: from entries to standings (ORD-1 to ORD-4).

The same entries give the same standing whatever order they arrived in and however often.
"""

from typing import NamedTuple

from cellarapp.domain.corrections import resolve
from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.inference import be_in_hand
from cellarapp.domain.queries import raise_query
from cellarapp.domain.standing import Standing, blank
from cellarapp.domain.steps import HANDLED, STEPS


class Step(NamedTuple):
    """A standing after an entry, and the steps that the entry implied."""

    standing: Standing
    inferred: list[str]


def step(standing: Standing, entry: Entry) -> Step:
    """Steps a standing forward by one entry that comes after all it has seen.

    The standing given is left as it was. LIFE-15: anything that happens to a scrapped container
    is a query. LIFE-23: an entry whose time cannot be right is folded at its receipt and queried.
    """
    fresh = standing.copy()
    inferred = be_in_hand(fresh) if entry["kind"] in HANDLED else []
    if entry["kind"] == "found":
        inferred = []
    held = fresh["held"]
    if held is not None and held["state"] == "scrapped" and entry["kind"] in HANDLED:
        raise_query(fresh, "after_scrapped", [held["entry"], entry["id"]], entry, did=entry["kind"])
    if entry["clock"] == "impossible":
        raise_query(
            fresh, "impossible_time", [entry["id"]], entry, happened_at=entry["happened_at"]
        )
    inferred = inferred + STEPS[entry["kind"]](fresh, entry)
    fresh["last"] = order_key(entry)
    return Step(fresh, inferred)


def fold(number: str, entries: list[Entry]) -> Standing:
    """The standing of a container from the entries that count for it, in any order (ORD-1)."""
    standing = blank(number)
    for entry in sorted(entries, key=order_key):
        standing = step(standing, entry).standing
    return standing


def entries_by_subject(entries: list[Entry]) -> dict[str, list[Entry]]:
    """ORD-2, ORD-3: the entries that count, under the subject they count for, each once.

    Every subject that any entry was ever about is there, with an empty list if nothing counts.
    """
    known = {e["id"]: e for e in entries}
    counts_for = resolve(list(known.values())).counts_for
    subjects: dict[str, list[Entry]] = {e["subject"]: [] for e in known.values()}
    for entry_id, subject in counts_for.items():
        subjects.setdefault(subject, []).append(known[entry_id])
    return subjects
