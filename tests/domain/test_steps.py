"""The steps: whatever comes next can be noted, and what cannot be right is asked about."""

from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.entries import CONTAINER_KINDS, CORRECTION_KINDS, Entry, order_key
from cellarapp.domain.fold import entries_by_subject, fold, step
from cellarapp.domain.numbers import is_number
from cellarapp.domain.queries import live_settlements, open_queries
from cellarapp.domain.readiness import Stage, readiness
from cellarapp.domain.standing import Standing, blank
from cellarapp.domain.steps import HANDLED, STEPS

from .histories import FACTS, TIMES, entry_sets, later, of_one, uncorrected

NEXT_YEAR = "2027-01-04T09:00:00.000Z"


@given(entries=entry_sets, kind=st.sampled_from(sorted(FACTS)), data=st.data())
def test_next_entry_can_always_be_made(
    entries: list[Entry], kind: str, data: st.DataObject
) -> None:
    """LIFE-22: nothing that is well formed ever raises, whatever the standing."""
    facts = data.draw(FACTS[kind])
    for number, counting in entries_by_subject(entries).items():
        if is_number(number):
            standing = fold(number, counting)
            after = step(standing, later(entries, kind, number, facts, NEXT_YEAR)[-1]).standing
            assert after["last"].startswith(NEXT_YEAR)
            assert readiness(after, None, TIMES[-1])["stage"] in get_args(Stage)


@given(entries=uncorrected.map(of_one))
def test_standing_never_contradicts_itself(entries: list[Entry]) -> None:
    """LIFE-22: the facets agree after every entry, however odd the entries."""
    standing = blank("117")
    for entry in sorted(entries, key=order_key):
        standing = step(standing, entry).standing
        assert contradictions(standing) == []


def contradictions(standing: Standing) -> list[str]:
    place, trip, contents = standing["place"], standing["trip"], standing["contents"]
    held, serving = standing["held"], standing["serving"]
    ids = [query["id"] for query in standing["queries"]]
    wrong = {
        "out and at the brewery": trip is not None and not (place and place["with_customer"]),
        "at another customer": bool(trip and place and place["at"] != trip["customer"]),
        "out and on the stillage": trip is not None and serving is not None,
        "more left than it held": bool(contents and contents["left_ml"] < 0),
        "scrapped and out": bool(held and held["state"] == "scrapped" and trip and not ids),
        "kind and shape": (standing["kind"] is None) != (standing["shape"] is None),
        "one query twice": len(set(ids)) != len(ids),
        "open but not raised": not {q["id"] for q in open_queries(standing)} <= set(ids),
        "lapsed and raised": not contents
        and any(q["rule"] == "unwashed" for q in standing["queries"]),
    }
    return [words for words, is_so in wrong.items() if is_so]


@given(entries=uncorrected.map(of_one))
def test_query_names_its_rule_and_entries(entries: list[Entry]) -> None:
    """LIFE-21: the id says which rule and which entries quarrel; all of them are in the ledger."""
    known = {entry["id"] for entry in entries}
    for query in fold("117", entries)["queries"]:
        assert query["id"] == ":".join([query["rule"], *query["entries"]])
        assert set(query["entries"]) <= known


def test_every_kind_has_its_step() -> None:
    """LIFE-1 to LIFE-16: and so has every correction, which leaves its container as it is."""
    assert STEPS.keys() == CONTAINER_KINDS | CORRECTION_KINDS
    assert HANDLED < CONTAINER_KINDS
    assert FACTS.keys() == CONTAINER_KINDS


@pytest.mark.parametrize("kind", sorted(CORRECTION_KINDS - {"settled"}))
def test_correction_leaves_the_container_as_it_is(kind: str) -> None:
    """ORD-3: it acts on the entry that it is about, not as an event of its own."""
    [entry] = later([], kind, "117", {})
    assert {**step(blank("117"), entry).standing, "last": ""} == blank("117")


def test_replaced_settlement_is_no_longer_live() -> None:
    """LIFE-21: replaced by one that is itself replaced, it stays replaced."""
    first = {"entry": "a", "way": "right", "replaces": []}
    second = {"entry": "b", "way": "void:x", "replaces": ["a"]}
    third = {"entry": "c", "way": "right", "replaces": ["b"]}
    assert live_settlements([first, second, third]) == [third]
