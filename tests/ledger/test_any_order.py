"""The same entries give the same ledger, however they are sent (ORD-1 to ORD-4)."""

from typing import Any

from flask import Flask
from hypothesis import given, settings
from hypothesis import strategies as st

from cellarapp.domain.entries import Entry
from cellarapp.ledger.check import check
from cellarapp.ledger.rebuild import rebuild
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.rows import Key
from cellarapp.storage.work import reading

from ..domain.histories import GYLES, arrivals, entry_sets, record_sets
from ..making import batch
from .looking import begin_again, docs, head_position

OF_THE_WIRE = (
    "id", "device", "seq", "kind", "subject", "happened_at", "person", "facts", "rules",
)  # fmt: skip


def as_sent(entry: Entry) -> dict[str, Any]:
    """An entry as a phone sends it, with no volume that would be refused.

    What is refused is a question of what is known at the time, and not of the fold.
    """
    sent: dict[str, Any] = {name: value for name, value in entry.items() if name in OF_THE_WIRE}
    facts = dict(entry["facts"])
    if entry["kind"] == "registered":
        facts["capacity_ml"] = 40_915
    if entry["kind"] == "filled":
        facts["volume_ml"] = max(1, facts["volume_ml"])
    return sent | {"facts": facts}


def pushed(pieces: list[list[dict[str, Any]]]) -> dict[str, Any]:
    """Push the pieces one after the other into an empty ledger; answer all that it holds."""
    begin_again()
    for piece in pieces:
        take_in(batch(piece))
    return {"docs": docs(), "counts": counts()}


def counts() -> dict[str, Any]:
    with reading() as work:
        return {
            one.entry["id"]: (one.counts_for, one.dropped_by)
            for one in work.entries.all_by_subject()
        }


def pieces_of(entries: list[dict[str, Any]]) -> st.SearchStrategy[list[list[dict[str, Any]]]]:
    """The entries in order, cut into pushes anywhere."""
    cuts = st.lists(st.integers(0, len(entries)), max_size=6).map(sorted)
    return cuts.map(
        lambda at: [entries[a:b] for a, b in zip([0, *at], [*at, len(entries)], strict=True)]
    )


mixed = st.tuples(entry_sets, record_sets("gyle"), record_sets("customer")).map(
    lambda sets: [as_sent(e) for e in [*sets[0], *retold(sets[1], "g"), *retold(sets[2], "k")]]
)


def retold(entries: list[Entry], mark: str) -> list[Entry]:
    """The same entries under ids and devices of their own; a gyle's are about one filled from."""
    told = []
    for entry in entries:
        kind = entry["kind"]
        own = {
            "id": entry["id"][:8] + ("-0001" if mark == "g" else "-0002") + entry["id"][13:],
            "device": entry["device"][:8] + ("-0001" if mark == "g" else "-0002")
            + entry["device"][13:],
            "subject": GYLES[0] if kind == "gyle" else entry["subject"],
        }  # fmt: skip
        told.append({**entry, **own})
    return told  # type: ignore[return-value]


@settings(max_examples=120, deadline=None)
@given(data=st.data(), entries=mixed)
def test_any_order_any_split_and_any_repetition_gives_the_same_ledger(
    shared_app: Flask, data: st.DataObject, entries: list[dict[str, Any]]
) -> None:
    """Late entries, corrections before what they correct, pushes sent twice."""
    arrived = data.draw(arrivals(entries))  # type: ignore[arg-type]
    pieces = data.draw(pieces_of(arrived))  # type: ignore[arg-type]
    with shared_app.app_context():
        at_once = pushed([entries])
        assert pushed(pieces) == at_once
        assert check() == []


@settings(max_examples=40, deadline=None)
@given(data=st.data(), entries=mixed)
def test_rows_are_always_what_a_rebuild_would_make_of_them(
    shared_app: Flask, data: st.DataObject, entries: list[dict[str, Any]]
) -> None:
    """Checked after every push on the way, not at the end alone."""
    pieces = data.draw(pieces_of(data.draw(st.permutations(entries))))
    with shared_app.app_context():
        begin_again()
        for piece in pieces:
            take_in(batch(piece))
            assert check() == []
        before = docs(), head_position()
        assert rebuild() == 0
        assert (docs(), head_position()) == before


def test_the_histories_are_worth_the_trouble(shared_app: Flask) -> None:
    """The property above would hold of an empty ledger as well."""
    seen: dict[str, int] = {"dropped": 0, "moved": 0, "queries": 0, "drawn": 0, "trips": 0}

    @settings(max_examples=60, deadline=None, derandomize=True)
    @given(entries=mixed)
    def look(entries: list[dict[str, Any]]) -> None:
        with shared_app.app_context():
            found = pushed([entries])
            subjects = {entry["id"]: entry["subject"] for entry in entries}
            for entry_id, (counts_for, dropped_by) in found["counts"].items():
                seen["dropped"] += dropped_by is not None
                seen["moved"] += counts_for not in (None, subjects[entry_id])
            rows: dict[Key, str] = found["docs"]
            seen["queries"] += sum('"rule":' in doc for doc in rows.values())
            seen["trips"] += sum("[[" in doc for key, doc in rows.items() if key[0] == "trips")
            seen["drawn"] += sum(
                '"drawn_ml":0' not in doc for key, doc in rows.items() if key[0] == "gyle"
            )

    look()
    assert min(seen.values()) > 10, seen
