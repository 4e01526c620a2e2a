"""Voids and renumbers: a correction does what making the entry rightly would have done."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.corrections import is_correction, resolve
from cellarapp.domain.entries import CONTAINER_KINDS, Entry

from .histories import DEVICES, NUMBERS, TIMES, entry_sets, faces, later, uncorrected


def voiding(entries: list[Entry], target: Entry, at: str = TIMES[-1]) -> list[Entry]:
    return later(entries, "voided", target["subject"], {"target": target["id"]}, at)


def renumbering(entries: list[Entry], target: Entry, to: str, at: str) -> list[Entry]:
    facts = {"target": target["id"], "to": to}
    return later(entries, "renumbered", target["subject"], facts, at)


@given(entries=entry_sets, data=st.data())
def test_void_takes_its_target_out_whatever_that_is(
    entries: list[Entry], data: st.DataObject
) -> None:
    """ORD-3: the standings are those of a ledger in which the target was never noted."""
    target = data.draw(st.sampled_from(entries))
    at = data.draw(st.sampled_from(TIMES))
    without = [entry for entry in entries if entry is not target]
    assert faces(voiding(entries, target, at)) == faces(without)


@given(entries=entry_sets, data=st.data())
def test_voided_void_gives_back_what_was_there(entries: list[Entry], data: st.DataObject) -> None:
    """ORD-3: undoing an undo leaves everything as it was."""
    voided = voiding(entries, data.draw(st.sampled_from(entries)))
    assert faces(voiding(voided, voided[-1])) == faces(entries)


@given(entries=uncorrected, data=st.data())
def test_renumbered_entry_counts_as_if_made_for_the_other(
    entries: list[Entry], data: st.DataObject
) -> None:
    """ORD-3: "wrong number" on the screen."""
    target, to = data.draw(st.sampled_from(entries)), data.draw(st.sampled_from(NUMBERS))
    rightly = [{**e, "subject": to} if e is target else e for e in entries]
    assert faces(renumbering(entries, target, to, TIMES[0])) == faces(rightly)


@given(entries=uncorrected, data=st.data())
def test_renumbered_to_and_back_is_where_it_was(entries: list[Entry], data: st.DataObject) -> None:
    """ORD-3: of two renumbers of one entry the later in order stands."""
    target, to = data.draw(st.sampled_from(entries)), data.draw(st.sampled_from(NUMBERS))
    there = renumbering(entries, target, to, TIMES[3])
    assert faces(renumbering(there, target, target["subject"], TIMES[4])) == faces(entries)


@given(entries=entry_sets)
def test_correction_waits_while_its_target_is_not_known(entries: list[Entry]) -> None:
    """ORD-3: a phone that was off for three weeks still holds what the other one corrected."""
    unknown: Entry = {**entries[0], "id": "not-here"}
    assert faces(voiding(entries, unknown)) == faces(entries)
    assert faces(renumbering(entries, unknown, "12", TIMES[0])) == faces(entries)


@given(entries=entry_sets)
def test_every_entry_counts_or_is_taken_out(entries: list[Entry]) -> None:
    """ORD-3: no entry is lost, and only what happened to a container changes its container."""
    resolved = resolve(entries)
    assert resolved.counts_for.keys() | resolved.dropped_by.keys() == {e["id"] for e in entries}
    assert not resolved.counts_for.keys() & resolved.dropped_by.keys()
    for entry in entries:
        if entry["kind"] not in CONTAINER_KINDS and entry["id"] in resolved.counts_for:
            assert resolved.counts_for[entry["id"]] == entry["subject"]


def test_void_named_is_one_and_the_same() -> None:
    """ORD-3: of several voids of one entry that all stand the least id is named."""
    for washed, first, second, undo, redo in itertools.permutations("abcde"):
        targets = {washed: "", first: washed, second: washed, undo: first, redo: undo}
        entries: list[Entry] = []
        for name, target in targets.items():
            kind, facts = ("voided", {"target": target}) if target else ("washed", {})
            entries = later(entries, kind, "117", facts)
            entries[-1]["id"] = name
        assert resolve(entries).dropped_by == {washed: min(first, second), undo: redo}


def test_entries_that_void_each_other_all_stand() -> None:
    """ORD-3: no screen makes such a ring, and none must make the fold hang."""
    first = later([], "voided", "117", {"target": "00000000-0000-7000-8000-f00000000001"})
    ring = voiding(first, first[0])
    assert resolve(ring).dropped_by == {}


def test_corrections_are_told_apart_from_what_happened() -> None:
    """ORD-3: only a correction may change what another entry counts for."""
    [washed] = later([], "washed", "117", {})
    [voided] = later([], "voided", "117", {"target": washed["id"]})
    assert (is_correction(washed), is_correction(voided)) == (False, True)
    assert washed["device"] == DEVICES[0]
