"""Beers, gyles, places, customers: field by field the last in the order of happening stands."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.entries import Entry, order_key, row_type
from cellarapp.domain.fold import entries_by_subject
from cellarapp.domain.readings import merged
from cellarapp.domain.records import (
    MOST_EARLIER,
    MOST_LINKS,
    blank_record,
    drawn_ml,
    fold_record,
    personal_fields,
    step_record,
)

from .histories import (
    CUSTOMERS,
    GYLES,
    RECORD_FACTS,
    arrivals,
    canonical,
    entry_sets,
    later,
    record_sets,
)

kinds = st.sampled_from(sorted(RECORD_FACTS))


@given(data=st.data(), kind=kinds)
def test_record_is_the_same_whatever_order_it_arrived_in(data: st.DataObject, kind: str) -> None:
    """ORD-1, ORD-2: also each entry twice, and one by one."""
    entries = data.draw(record_sets(kind))
    arrived = data.draw(arrivals(entries))
    assert canonical(fold_record(kind, arrived)) == canonical(fold_record(kind, entries))


@given(data=st.data(), kind=kinds)
def test_last_to_set_a_field_decides_it(data: st.DataObject, kind: str) -> None:
    """ORD-1: last in the order of happening, not of arrival; set to null it is empty again."""
    entries = data.draw(record_sets(kind))
    expected: dict[str, object] = {}
    for entry in sorted(entries, key=order_key):
        if entry["kind"] == kind:
            expected |= entry["facts"]
        elif entry["kind"] == "erased":
            expected |= dict.fromkeys(personal_fields(entry))
    stands = {name: value for name, value in expected.items() if value is not None}
    assert fold_record(kind, entries)["fields"] == stands


@given(data=st.data())
def test_last_chase_is_the_one_shown(data: st.DataObject) -> None:
    """ORD-1: who asked last, and what was promised."""
    entries = data.draw(record_sets("customer"))
    chases = sorted((e for e in entries if e["kind"] == "chased"), key=order_key)
    chase = fold_record("customer", entries)["chase"]
    assert (chase["entry"] if chase else None) == (chases[-1]["id"] if chases else None)


@given(data=st.data())
def test_a_few_chases_before_the_last_are_kept(data: st.DataObject) -> None:
    """CHASE-1: the latest of them, in the order of happening; erased words are gone from all."""
    entries = data.draw(record_sets("customer"))
    chases = sorted((e for e in entries if e["kind"] == "chased"), key=order_key)
    erased = max((order_key(e) for e in entries if e["kind"] == "erased"), default="")
    earlier = fold_record("customer", entries).get("earlier", [])
    before = chases[:-1][-MOST_EARLIER:]
    assert [one["entry"] for one in earlier] == [e["id"] for e in before]
    assert [one["words"] for one in earlier] == [
        e["facts"].get("words", "") if order_key(e) > erased else "" for e in before
    ]


@given(entries=entry_sets)
def test_gyle_is_drawn_by_the_fills_that_count(entries: list[Entry]) -> None:
    """LIFE-4: a fill that was voided drew nothing; one that was renumbered still did."""
    counting = [e for those in entries_by_subject(entries).values() for e in those]
    fills = [e["facts"] for e in counting if e["kind"] == "filled"]
    drawn = {gyle: drawn_ml(gyle, counting) for gyle in GYLES}
    assert sum(drawn.values()) == sum(fill["volume_ml"] for fill in fills)


def test_entry_about_something_else_leaves_a_record_alone() -> None:
    """ORD-4: corrections of a record's entries stand among them and set nothing."""
    [voided] = later([], "voided", CUSTOMERS[0], {"target": "x"})
    assert step_record(blank_record("customer"), voided) == blank_record("customer")


@pytest.mark.parametrize(
    ("kind", "about"),
    [("filled", "container"), ("voided", "container"), ("beer", "beer"), ("chased", "customer")],
)
def test_a_kind_says_what_its_entries_are_about(kind: str, about: str) -> None:
    """ORD-1: so the same entries make the same rows, whichever of them comes first."""
    assert row_type(kind) == about


def test_of_two_readings_at_one_instant_the_warmer_stands() -> None:
    """TEMP-1."""
    assert merged([["2026-03-28T09:00:00.000Z", 120]], [["2026-03-28T09:00:00.000Z", 124]]) == [
        ["2026-03-28T09:00:00.000Z", 124]
    ]


@given(data=st.data(), stop_after=st.integers(0, MOST_LINKS + 5))
def test_so_many_of_the_latest_links_work(data: st.DataObject, stop_after: int) -> None:
    """LINK-1, in any order of arrival: none from before the stop, and of the rest the latest."""
    entries: list[Entry] = []
    for n in range(MOST_LINKS + 5):
        at = f"2026-03-28T09:00:{n:02d}.000Z"
        entries = later(entries, "linked", CUSTOMERS[0], {"hash": f"{n:064x}"}, at)
        if n == stop_after:
            entries = later(entries, "unlinked", CUSTOMERS[0], {}, at)
    links = fold_record("customer", data.draw(arrivals(entries)))["links"]
    working = [n for n in range(MOST_LINKS + 5) if n > stop_after or stop_after == MOST_LINKS + 5]
    assert [int(link["hash"], 16) for link in links] == working[-MOST_LINKS:]
