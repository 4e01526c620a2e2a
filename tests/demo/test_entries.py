"""The demo's entries: always the same, well formed, in time, and none of them from the future."""

from collections import defaultdict
from itertools import pairwise

import pytest
from flask import Flask
from freezegun import freeze_time

from cellarapp import demo
from cellarapp.domain.calendar import parse_instant
from cellarapp.domain.corrections import resolve
from cellarapp.ledger import check
from cellarapp.ledger.forms import FORMS
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch
from cellarapp.pages.customer import BY_THE_CUSTOMER
from cellarapp.pages.finder import FINDER

from ..domain.histories import canonical
from .scene import NOWS, scene

NOW = NOWS[0]


def test_same_seed_and_time_give_the_same_entries_on_any_day() -> None:
    """Two people who look at the demo see the same, and no clock is read on the way."""
    once = canonical(list(demo.entries(NOW, 7)))
    with freeze_time("2031-01-01"):
        assert canonical(list(demo.entries(NOW, 7))) == once


def test_another_seed_is_another_brewery() -> None:
    """Chance comes from the seed."""
    assert canonical(list(demo.entries(NOW, 7))) != canonical(list(demo.entries(NOW, 8)))


@pytest.mark.parametrize("now", NOWS)
def test_every_entry_is_well_formed(now: str) -> None:
    """As the write path reads them."""
    wrong = [
        (received.entry, faults)
        for received in demo.entries(now, 1)
        if (faults := FORMS[received.entry["kind"]].validate(received.entry))
    ]
    assert wrong == []


@pytest.mark.parametrize("now", NOWS)
def test_ids_are_the_devices_own_and_used_once(now: str) -> None:
    """ORD-2: version 7, as a phone makes them."""
    ids = [entry["id"] for entry in scene(now).entries]
    assert len(set(ids)) == len(ids)
    assert all(entry_id[14] == "7" and entry_id[19] in "89ab" for entry_id in ids)


@pytest.mark.parametrize("now", NOWS)
def test_entries_arrive_in_order_and_not_after_now(now: str) -> None:
    """Nothing has been received from the future, and little before it happened."""
    entries = scene(now).entries
    received = [entry["received_at"] for entry in entries]
    assert received == sorted(received)
    assert received[-1] <= now
    assert all(e["effective_at"] <= e["received_at"] for e in entries)
    assert {e["clock"] for e in entries} == {"ok", "impossible"}


@pytest.mark.parametrize("now", NOWS)
def test_three_devices_number_what_they_note_in_order(now: str) -> None:
    """ORD-1: each from 1, without a hole, in the order in which it happened."""
    by_device = defaultdict(list)
    for entry in scene(now).entries:
        by_device[entry["device"]].append(entry)
    assert len(by_device) == 3
    for noted in by_device.values():
        assert [entry["seq"] for entry in noted] == list(range(1, len(noted) + 1))
        times = [e["happened_at"] for e in noted if e["clock"] == "ok"]
        assert all(first <= later for first, later in pairwise(times))
    people = {entry["person"] for entry in scene(now).entries} - {FINDER, BY_THE_CUSTOMER}
    assert len(people) == 3


@pytest.mark.parametrize("now", NOWS)
def test_history_is_fourteen_months_long(now: str) -> None:
    """From its first day to yesterday evening."""
    times = [parse_instant(e["happened_at"]) for e in scene(now).entries if e["clock"] == "ok"]
    assert 420 <= (parse_instant(now) - min(times)).days <= 440
    assert (parse_instant(now) - max(times)).total_seconds() < 36 * 3600


@pytest.mark.parametrize("now", NOWS)
def test_some_entries_come_days_late(now: str) -> None:
    """A phone that was off: what it noted takes its place in the past."""
    late = [
        (parse_instant(e["received_at"]) - parse_instant(e["effective_at"])).days
        for e in scene(now).entries
    ]
    assert 2 <= max(late) <= 14


@pytest.mark.parametrize("now", NOWS)
def test_corrections_are_all_about_entries_that_are_there(now: str) -> None:
    """ORD-3: a void, a void of a void, a renumber, and ways out of queries."""
    entries = scene(now).entries
    known = {entry["id"] for entry in entries}
    targets = [e["facts"]["target"] for e in scene(now).of_kind("voided", "renumbered")]
    settled = [e["facts"]["query"] for e in scene(now).of_kind("settled")]
    quarrel = {entry for query in settled for entry in query.split(":")[1:]}
    assert {*targets} | quarrel <= known
    assert len(resolve(entries).dropped_by) == 4
    assert len(targets) == 4
    assert len(settled) >= 6


def test_write_path_accepts_every_entry_and_agrees_with_the_rules(app: Flask) -> None:
    """ORD-4: taken in as they come; the rows are what the whole ledger says."""
    assert app
    words = set()
    together: dict[tuple[str, str], list[object]] = {}
    for received in demo.entries(NOW, 1):
        key = (received.received_at, received.entry["device"])
        together.setdefault(key, []).append(received.entry)
    for (received_at, device), entries in together.items():
        moment = parse_instant(received_at)
        outcome = take_in(Batch(device, moment, moment, entries))
        words |= {verdict.word for verdict in outcome.verdicts}
    assert words == {"accepted"}
    assert check.check() == []
