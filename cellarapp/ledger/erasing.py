"""Erases what entries say of a person: the one thing that is ever changed in an entry.

An erasure is an entry like any other. Whatever was said of that customer's people before it, on
record already or arriving later, is stored without it; id, order and hash of the entry stay, so
that the fold, the counts and the recognition of what is sent twice are as they were. Whether the
erasure counts plays no part: what is gone is gone, in whatever order the entries came.
"""

from collections import defaultdict
from collections.abc import Sequence
from typing import Any

from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.records import personal_fields
from cellarapp.ledger.canonical import document
from cellarapp.storage.mapping import StoredEntry
from cellarapp.storage.work import Work

SAYING = ("customer", "chased")
"""Kinds of entries that say something of a customer's people."""
OF_FINDERS = ("words", "name", "phone")
"""What a report says of its finder; where the container is stays."""


def blank_erased(work: Work, fresh: Sequence[StoredEntry]) -> None:
    """Blank the fresh entries that come before an erasure, and the stored ones before a fresh."""
    asked = {one.entry["subject"] for one in fresh if one.entry["kind"] in (*SAYING, "erased")}
    if not asked:
        return
    stored = work.entries.about(asked, ("erased",))
    erasures: dict[str, list[Entry]] = defaultdict(list)
    for one in [*stored, *fresh]:
        if one.entry["kind"] == "erased":
            erasures[one.entry["subject"]].append(one.entry)
    for one in fresh:
        one.entry["facts"] = _blanked(one.entry, erasures)
    erased_now = {one.entry["subject"] for one in fresh if one.entry["kind"] == "erased"}
    before = [one.entry for one in work.entries.about(erased_now, SAYING)]
    blanked = {entry["id"]: (entry["facts"], _blanked(entry, erasures)) for entry in before}
    work.entries.blank({i: document(now) for i, (was, now) in blanked.items() if was != now})


def _blanked(entry: Entry, erasures: dict[str, list[Entry]]) -> dict[str, Any]:
    """What is left of an entry's facts."""
    facts = entry["facts"]
    if entry["kind"] not in SAYING:
        return facts
    for erasure in erasures.get(entry["subject"], []):
        if order_key(entry) > order_key(erasure):
            continue
        if entry["kind"] == "customer":
            facts = facts | {name: None for name in personal_fields(erasure) if name in facts}
        elif "words" in facts:
            facts = facts | {"words": ""}
    return facts


def forget_finders(work: Work, fresh: Sequence[StoredEntry]) -> list[StoredEntry]:
    """Blank what reports say of their finders; answer the stored ones, whose rows change by it.

    Each report by itself: nobody knows which of them are one person's.
    """
    asked = {one.entry["facts"]["target"] for one in fresh if one.entry["kind"] == "forgotten"}
    reports = [one for one in fresh if one.entry["kind"] == "reported"]
    if reports:
        before = work.entries.of_kinds(("forgotten",))
        asked_before = {one.entry["facts"]["target"] for one in before}
        for one in reports:
            if one.entry["id"] in asked | asked_before:
                one.entry["facts"] = _of_nobody(one.entry)
    stored = [one for one in work.entries.by_id(asked) if one.entry["kind"] == "reported"]
    work.entries.blank({one.entry["id"]: document(_of_nobody(one.entry)) for one in stored})
    return stored


def _of_nobody(report: Entry) -> dict[str, Any]:
    return {name: value for name, value in report["facts"].items() if name not in OF_FINDERS}
