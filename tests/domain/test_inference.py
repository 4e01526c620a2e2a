"""Inferred steps: marked, bearing the entry that implied them, gone once somebody noted them."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.fold import Step, fold, step
from cellarapp.domain.standing import Standing, blank

from .histories import CUSTOMERS, DEVICES, later, of_one, uncorrected

MARKED = ["place", "contents", "clean", "held", "trip", "returned", "registered"]


def steps_of(entries: list[Entry]) -> list[tuple[Standing, Entry, Step]]:
    """Each entry with the standing before it and what came of it."""
    standing, found = blank("117"), []
    for entry in sorted(entries, key=order_key):
        after = step(standing, entry)
        found.append((standing, entry, after))
        standing = after.standing
    return found


def as_noted(name: str, entry: Entry) -> Entry:
    """The entry that somebody would have made of an inferred step."""
    facts: dict[str, dict[str, Any]] = {
        "moved": {"place": entry["facts"].get("place")},
        "sent": {"customer": CUSTOMERS[0], "due_on": None},
        "vented": {"spile": "soft"},
    }
    return {**entry, "id": f"{entry['id']}-{name}", "kind": name, "facts": facts.get(name, {})}


def marks_of(standing: Standing) -> list[Any]:
    """Every mark that the standing carries."""
    serving: Any = standing["serving"] or {}
    given: Any = standing
    found = [given[facet] for facet in MARKED] + list(serving.values())
    return [mark for mark in found if mark is not None]


@given(entries=uncorrected.map(of_one))
def test_what_was_noted_is_not_inferred(entries: list[Entry]) -> None:
    """LIFE-20: with the missing entries in their place nothing is inferred any more."""
    for standing, entry, after in steps_of(entries):
        completed = standing
        for name in after.inferred:
            completed = step(completed, as_noted(name, entry)).standing
        assert step(completed, entry).inferred == []


@given(entries=uncorrected.map(of_one))
def test_inferred_step_bears_the_entry_it_came_from(entries: list[Entry]) -> None:
    """LIFE-20: its mark names that entry, that entry's time and person."""
    by_id = {entry["id"]: entry for entry in entries}
    for _, _, after in steps_of(entries):
        for mark in marks_of(after.standing):
            cause = by_id[mark["entry"]]
            assert (mark["since"], mark["by"]) == (cause["effective_at"], cause["person"])


@given(entries=uncorrected.map(of_one))
def test_mark_is_inferred_only_where_a_step_was(entries: list[Entry]) -> None:
    """LIFE-20: an entry that implied nothing leaves no inferred mark."""
    implied = {entry["id"] for _, entry, after in steps_of(entries) if after.inferred}
    for mark in marks_of(fold("117", entries)):
        assert not mark["inferred"] or mark["entry"] in implied


@given(entries=uncorrected.map(of_one), data=st.data())
def test_late_return_takes_the_inferred_one_away(entries: list[Entry], data: st.DataObject) -> None:
    """LIFE-20: washed and no return on record; then the yard's phone finds its signal."""
    before = entries[: data.draw(st.integers(0, len(entries)))]
    trip = {"customer": CUSTOMERS[0], "due_on": None}
    out = later(before, "sent", "117", trip, "2026-11-02T08:00:00.000Z")
    washed = later(out, "washed", "117", {}, "2026-11-09T10:00:00.000Z")
    assert "returned" in steps_of(washed)[-1][2].inferred
    late = later(washed, "returned", "117", {}, "2026-11-08T17:00:00.000Z")
    assert steps_of(late)[-1][2].inferred == []
    back = fold("117", late)["returned"]
    assert back is not None
    assert (back["entry"], back["inferred"]) == (late[-1]["id"], False)
    assert late[-1]["device"] == DEVICES[0]
