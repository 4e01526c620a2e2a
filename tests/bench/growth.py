"""A ledger as it may be after many years: 100,000 containers and 2,000,000 entries.

Pulling 100 changed rows from it beside a ledger of 10,000 entries, in turn; and what the server
needs in memory, the database on the disk and the first load in time.

Only the first 5,000 entries are taken in as they would be. The others are copies of these under
other ids, numbers and positions, made by SQLite itself, which takes minutes rather than hours.
"""

import json
import resource
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path
from time import perf_counter

from flask import Flask
from flask.testing import FlaskClient

from cellarapp import create_app
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import close_connections

from ..conftest import config_in
from ..making import Phone, batch, push_body
from ..signed_in import signed_in
from .timing import compare, say
from .workload import fills, history

SMALL = (10_000, 500)
FIRST = (5_000, 250)
"""Entries and containers."""
TIMES = 400
PULLS = 60
ENTRIES = """
INSERT INTO entry
SELECT printf('%08x', :n) || substr(id, 9), position + 20000 * :n, device, seq + 10000 * :n, kind,
    CAST(subject AS INTEGER) + 1000 * :n, CAST(subject AS INTEGER) + 1000 * :n, dropped_by, target,
    query, gyle, happened_at, effective_at, received_at,
    substr(order_key, 1, length(order_key) - 36) || printf('%08x', :n) || substr(id, 9), clock,
    person, facts, rules, content_hash
FROM entry WHERE position <= 20000
"""
ROWS = """
INSERT INTO row
SELECT type, CAST(id AS INTEGER) + 1000 * :n, position + 20000 * :n,
    replace(doc, '"number":"' || id, '"number":"' || (CAST(id AS INTEGER) + 1000 * :n))
FROM row WHERE position <= 20000 AND type = 'container'
"""


def take_in_history(folder: Path, entries: int, containers: int) -> Flask:
    """A server with so much history behind it."""
    app = create_app(config_in(folder))
    with app.app_context():
        for some in history(entries, containers):
            take_in(batch(some))
        close_connections()
    return app


def grow(folder: Path) -> Flask:
    """A server with TIMES as much behind it as was taken in."""
    app = take_in_history(folder, *FIRST)
    [file] = folder.glob("*.sqlite")
    began = perf_counter()
    with closing(sqlite3.connect(file)) as connection:
        for n in range(1, TIMES):
            connection.execute(ENTRIES, {"n": n})
            connection.execute(ROWS, {"n": n})
        connection.execute("UPDATE head SET position = (SELECT max(position) FROM row)")
        connection.commit()
        [entries] = connection.execute("SELECT count(*) FROM entry").fetchone()
    size = file.stat().st_size
    print(f"{entries:,} entries made within {perf_counter() - began:.0f} s")
    print(f"{size / 2**20:.0f} MiB on the disk, {size / entries:.0f} bytes an entry", flush=True)
    return app


class Pulling:
    """A phone that pulls 100 rows which another one has just changed."""

    def __init__(self, app: Flask) -> None:
        self._app = app
        self._client: FlaskClient = signed_in(app)
        self._phone = Phone("evening")
        self._since = 0

    def change(self) -> None:
        with self._app.app_context():
            self._since = current_head().position
        body = json.dumps(push_body(fills(self._phone, 100)))
        self._client.post("/api/push", data=body, content_type="application/json")

    def pull(self) -> None:
        answer = self._client.get(f"/api/pull?since={self._since}&limit=500")
        assert len(answer.json["rows"]) >= 100

    def first_load(self) -> int:
        after, got = "", 0
        while after is not None:
            page = self._client.get(f"/api/snapshot/pages?after={after}").json
            got, after = got + len(page["rows"]), page["next"]
        return got


def resident_mib() -> float:
    """The most that this process has had in memory."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        apps = [grow(Path(name, "large")), take_in_history(Path(name, "small"), *SMALL)]
        print(f"memory: {resident_mib():.0f} MiB", flush=True)
        large, small = phones = [Pulling(app) for app in apps]
        for phone in phones:
            phone.change()
        say("pull of 100 rows", *compare(large.pull, small.pull, PULLS), "10,000 entries")
        began = perf_counter()
        rows = large.first_load()
        print(f"first load of {rows:,} rows, none prepared: {perf_counter() - began:.1f} s")
        print(f"memory: {resident_mib():.0f} MiB after it", flush=True)
        for app in apps:
            with app.app_context():
                close_connections()


if __name__ == "__main__":
    main()
