"""Push and first load through HTTP, against SQLite alone with the same bytes.

The floor inserts the same entries and writes the same rows in one transaction with the same
pragmas; it judges, folds and answers nothing.
"""

import gzip
import json
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from flask import Flask
from flask.testing import FlaskClient

from cellarapp import create_app
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import close_connections

from ..conftest import config_in
from ..making import Phone, push_body
from ..signed_in import signed_in
from .timing import compare, say
from .workload import batch, fills, history

RUNS = 9


@contextmanager
def brewery(folder: Path, entries: int) -> Iterator[Flask]:
    """A server with so much history behind it."""
    app = create_app(config_in(folder))
    with app.app_context():
        for some in history(entries):
            take_in(batch(some))
        yield app
        close_connections()


def floor_database(folder: Path) -> sqlite3.Connection:
    """The server's own database, copied and opened bare."""
    [file] = folder.glob("*.sqlite")
    bare = sqlite3.connect(file.with_suffix(".bare"), isolation_level=None)
    with sqlite3.connect(file) as kept:
        kept.backup(bare)
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON"):
        bare.execute(f"PRAGMA {pragma}")
    return bare


def push_bare(bare: sqlite3.Connection, position: int, entries: list[dict[str, Any]]) -> int:
    """Insert the entries and write as many rows, as the server does."""
    columns = [column[1] for column in bare.execute("PRAGMA table_info(entry)")]
    held = bare.execute("SELECT * FROM entry LIMIT 1").fetchone()
    place = {name: n for n, name in enumerate(columns)}
    rows = []
    for n, entry in enumerate(entries, start=1):
        row = list(held)
        row[place["id"]], row[place["position"]] = entry["id"], position + n
        row[place["seq"]], row[place["subject"]] = entry["seq"], entry["subject"]
        row[place["counts_for"]], row[place["facts"]] = entry["subject"], json.dumps(entry["facts"])
        rows.append(row)
    asked = "SELECT id, doc FROM row WHERE type = 'container' AND id BETWEEN ? AND ?"
    docs = dict(bare.execute(asked, (entries[0]["subject"], entries[-1]["subject"])))
    bare.execute("BEGIN IMMEDIATE")
    bare.executemany(f"INSERT INTO entry VALUES ({','.join('?' * len(columns))})", rows)
    bare.executemany(
        "UPDATE row SET position = ?, doc = ? WHERE type = 'container' AND id = ?",
        [
            (position + len(rows) + n, docs[entry["subject"]] + " ", entry["subject"])
            for n, entry in enumerate(entries, start=1)
        ],
    )
    bare.execute("COMMIT")
    return position + 2 * len(rows)


def pushing(client: FlaskClient, folder: Path, more: str) -> None:
    phone, bare = Phone("morning"), floor_database(folder)
    [[position]] = bare.execute("SELECT max(position) FROM row")
    at = {"position": position + 1_000_000, "first": 0}

    def ours() -> None:
        entries = fills(phone, 500, at["first"])
        body = json.dumps(push_body(entries))
        answer = client.post("/api/push", data=body, content_type="application/json")
        assert {r["verdict"] for r in answer.json["results"]} == {"accepted"}

    def floor() -> None:
        entries = fills(Phone(f"bare {at['first']}"), 500, at["first"])
        at["position"] = push_bare(bare, at["position"], entries)
        at["first"] += 500

    ours_ms, floor_ms = compare(ours, floor, RUNS)
    say(f"push of 500 fills, {more}", ours_ms, floor_ms, "batch insert and 500 rows, bare")
    bare.close()


def first_load(client: FlaskClient, folder: Path) -> None:
    def ours() -> None:
        after, got = "", 0
        while after is not None:
            answer = client.get(
                f"/api/snapshot/pages?after={after}", headers={"Accept-Encoding": "gzip"}
            )
            page = json.loads(gzip.decompress(answer.data))
            got, after = got + len(page["rows"]), page["next"]
        assert got >= 10_000

    [file] = folder.glob("*.sqlite")
    bare = sqlite3.connect(file)

    def floor() -> None:
        rows = bare.execute("SELECT type, id, position, doc FROM row ORDER BY type, id").fetchall()
        for start in range(0, len(rows), 1000):
            text = ",".join(
                f'{{"doc":{doc},"id":"{i}","position":{p},"type":"{t}"}}'
                for t, i, p, doc in rows[start : start + 1000]
            )
            json.loads(gzip.decompress(gzip.compress(f"[{text}]".encode(), 5)))

    ours_ms, floor_ms = compare(ours, floor, RUNS)
    say("first load of 10,000 rows, pages prepared", ours_ms, floor_ms, "read, gzip, unpack, bare")
    bare.close()


def main() -> None:
    print(f"{'':44} {'ours':>12} {'floor':>12}   ratio")
    for entries in (10_000, 200_000):
        with tempfile.TemporaryDirectory() as name, brewery(Path(name), entries) as app:
            client = signed_in(app)
            pushing(client, Path(name), f"{entries:,} entries of history")
            if entries > 10_000:
                first_load(client, Path(name))


if __name__ == "__main__":
    main()
