"""A server killed in the middle of pushes, again and again: nothing lost, nothing doubled.

Two breweries at a time for each kind of database, each with three phones that push without a pause.
When a phone gets no answer it sends the same entries again after the next start, as phones do. What
it is told then says what the kill had hit: entries that are accepted had not been committed,
entries that are known had, and only the answer was lost.
"""

import os
import random
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from http.client import HTTPException
from pathlib import Path
from threading import Event, Semaphore
from time import perf_counter
from typing import Any

import pytest
from flask import Flask

from cellarapp import create_app
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.pulling import current_head
from cellarapp.storage.db import close_connections
from cellarapp.storage.work import reading

from ..conftest import DATABASES, config_in
from ..making import Phone, push_body
from ..postgres import Cluster, cluster
from .server import Forge, Server, forging, push

BREWERIES = 2
KILLS = int(os.environ.get("CELLAR_KILLS", "100"))
"""Of each brewery's server."""
PHONES = 3
LOOKS = 2000
"""At the ledger, for a push to be committed."""
MOST_PUSHES = 4
"""A kill comes after so many answers at the most, or within the push that follows them."""
LEAST_OF_EACH = 10
"""Kills of either kind, for each database: before the commit, and after it."""


@pytest.fixture(scope="module")
def forge() -> Iterator[Forge]:
    with forging() as running:
        yield running


@pytest.fixture(scope="module")
def safe_postgres() -> Iterator[Cluster]:
    with cluster(safe=True) as running:
        yield running


@dataclass
class Pushing:
    """A phone that pushes: what it has been told, and what the kills did to it."""

    phone: Phone
    server: Server
    told: dict[str, int] = field(default_factory=dict)
    """The position of each entry that was acknowledged."""
    sent: list[dict[str, Any]] = field(default_factory=list)
    """All entries, in the order in which they were made."""
    waiting: list[dict[str, Any]] = field(default_factory=list)
    cut_off: bool = False
    """Whether a kill came between sending what is waiting and its answer."""
    hits: Counter[str] = field(default_factory=Counter)
    answered: Semaphore = field(default_factory=lambda: Semaphore(0))
    """Goes up with each answer, and when no more will come."""

    def push_until_cut_off(self, stop: Event) -> None:
        """Send, make more, and so on, until nobody answers."""
        try:
            self._push(stop)
        finally:
            self.answered.release(MOST_PUSHES)

    def _push(self, stop: Event) -> None:
        while not stop.is_set():
            self._make()
            try:
                answer = push(self.server, push_body(self.waiting, device=self.phone.device))
            except ConnectionRefusedError:
                return
            except (OSError, HTTPException):
                self.cut_off = True
                return
            self._acknowledge(answer["results"])
            self.answered.release()

    def _make(self) -> None:
        """Two fills of containers that all phones fill, and a void of the second one."""
        if not self.waiting:
            first, second = (self.phone.filled(f"F{n}") for n in range(2))
            void = self.phone.entry("voided", "F1", target=second["id"])
            self.waiting = [first, second, void]
            self.sent += self.waiting

    def _acknowledge(self, results: list[dict[str, Any]]) -> None:
        words = {result["verdict"] for result in results}
        assert len(words) == 1, f"half of a push was taken in: {results}"
        [word] = words
        assert word in ("accepted", "known")
        if self.cut_off:
            self.hits["after the commit" if word == "known" else "before the commit"] += 1
        else:
            assert word == "accepted"
        self.told |= {result["id"]: result["position"] for result in results}
        self.waiting, self.cut_off = [], False


def live_through_kills(
    app: Flask, server: Server, phones: list[Pushing], draw: random.Random
) -> None:
    """Start and kill, while the phones push; at the end they get everything off."""
    with app.app_context(), ThreadPoolExecutor(len(phones)) as pool:
        for last in [False] * KILLS + [True]:
            server.start()
            stop = Event()
            for one in phones:
                one.answered = Semaphore(0)
            pushing = [pool.submit(one.push_until_cut_off, stop) for one in phones]
            wait_for_the_moment(phones, draw)
            if last:
                stop.set()
            else:
                server.kill()
            for one in pushing:
                one.result()


def wait_for_the_moment(phones: list[Pushing], draw: random.Random) -> None:
    """Some answers on; and then any time within the next push, or as soon as it is committed."""
    for _ in range(draw.randint(1, MOST_PUSHES)):
        began = perf_counter()
        draw.choice(phones).answered.acquire()
    push_s = perf_counter() - began
    if draw.random() < 0.5:
        # Not a wait for anything: the moment is drawn.
        Event().wait(draw.uniform(0, push_s))
        return
    before = current_head()
    for _ in range(LOOKS):
        if current_head() != before:
            return


def nothing_is_lost_or_doubled(app: Flask, server: Server, phones: list[Pushing]) -> None:
    """Sent again it changes nothing, and the ledger is what the phones were told."""
    for one in phones:
        assert list(one.told) == [entry["id"] for entry in one.sent]
        for start in range(0, len(one.sent), 500):
            again = push(server, push_body(one.sent[start : start + 500]))["results"]
            assert {result["verdict"] for result in again} == {"known"}
            assert all(one.told[result["id"]] == result["position"] for result in again)
    server.kill()
    told = {entry_id: at for one in phones for entry_id, at in one.told.items()}
    with app.app_context():
        assert check() == []
        with reading() as work:
            entries = list(work.entries.all_by_subject())
    assert {one.entry["id"]: one.entry["position"] for one in entries} == told
    assert len(entries) == len(told)


def one_brewery(forge: Forge, app: Flask, config: Config, seed: int) -> Counter[str]:
    """What the kills hit."""
    server = Server(forge, config)
    phones = [Pushing(Phone(f"{seed} {n}"), server) for n in range(PHONES)]
    try:
        live_through_kills(app, server, phones, random.Random(seed))
        nothing_is_lost_or_doubled(app, server, phones)
    finally:
        server.kill()
    return sum((one.hits for one in phones), Counter())


@pytest.mark.parametrize("kind", DATABASES)
def test_what_was_acknowledged_stands_exactly_once(
    kind: str, forge: Forge, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    """Whenever the server dies."""
    breweries = []
    for n in range(BREWERIES):
        folder = tmp_path / str(n)
        folder.mkdir()
        address = ""
        if kind == "postgresql":
            address = request.getfixturevalue("safe_postgres").database()
        config = config_in(folder, address)
        breweries.append((create_app(config), config))
    with ThreadPoolExecutor(BREWERIES) as pool:
        found = [
            pool.submit(one_brewery, forge, app, config, seed)
            for seed, (app, config) in enumerate(breweries)
        ]
        hits = sum((one.result() for one in found), Counter())
    for app, _ in breweries:
        with app.app_context():
            close_connections()
    assert min(hits["before the commit"], hits["after the commit"]) >= LEAST_OF_EACH, hits
