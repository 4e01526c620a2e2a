"""What a phone is told when the database cannot do its work: to keep its entries and try again."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from sqlalchemy import event

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.pulling import current_head
from cellarapp.storage.db import db
from cellarapp.storage.ready import Looking

from ..making import Phone, push_body
from ..signed_in import signed_in


def fills(count: int) -> list[dict[str, Any]]:
    phone = Phone()
    return [phone.filled(f"K{number}") for number in range(count)]


@contextmanager
def no_room() -> Iterator[None]:
    """The database may not have one page more than it has."""

    def on_connect(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute("PRAGMA max_page_count = 1")  # SQLite takes what it has instead

    db.engine.dispose()
    event.listen(db.engine, "connect", on_connect)
    yield
    event.remove(db.engine, "connect", on_connect)
    db.engine.dispose()


def told_to_try_again(client: FlaskClient, entries: list[dict[str, Any]], slug: str) -> None:
    answer = client.post("/api/push", json=push_body(entries))
    assert (answer.status_code, answer.content_type) == (503, "application/problem+json")
    assert int(answer.headers["Retry-After"]) > 0
    assert answer.json is not None
    assert answer.json["type"] == f"/problems/{slug}"


def accepted(client: FlaskClient, entries: list[dict[str, Any]]) -> None:
    answer = client.post("/api/push", json=push_body(entries))
    assert answer.json is not None
    assert {one["verdict"] for one in answer.json["results"]} == {"accepted"}


def is_ready(app: Flask, client: FlaskClient) -> bool:
    """Looked at anew, and not as it was found a second ago."""
    app.extensions["cellarapp-looking"] = Looking()
    return client.get("/api/ready").status_code == 200


def test_push_to_a_full_disk_leaves_nothing_behind_and_goes_well_later(
    app: Flask, client: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    """All of the batch or none of it; the log says why."""
    accepted(client, [Phone("early").filled("117")])
    before = current_head()
    with no_room():
        told_to_try_again(client, fills(300), "disk-full")
        assert current_head() == before
        ready = client.get("/api/ready")
    assert ready.status_code == 503
    assert "no room left" in ready.text
    assert "disk-full" in caplog.text
    assert check() == []
    accepted(client, fills(300))
    assert check() == []
    assert is_ready(app, client)


def test_push_to_a_locked_database_is_tried_later(
    config: Config, caplog: pytest.LogCaptureFixture
) -> None:
    """Another program that writes for too long is waited for, and not for ever."""
    with opened(replace(config, busy_ms=50)) as app:
        client = signed_in(app)
        assert config.database_file is not None
        with closing(sqlite3.connect(config.database_file, isolation_level=None)) as other:
            other.execute("BEGIN IMMEDIATE")
            told_to_try_again(client, fills(1), "busy")
            ready = client.get("/api/ready")
        assert ready.status_code == 503
        assert "another program has been writing" in ready.text
        assert "busy" in caplog.text
        accepted(client, fills(1))
        assert is_ready(app, client)


def damage(file: Path) -> None:
    """Overwrite everything but the first pages, as a failing disk might."""
    page = 4096
    with file.open("r+b") as opened_file:
        opened_file.seek(2 * page)
        opened_file.write(b"\xa5" * (file.stat().st_size - 2 * page))


def test_damaged_database_is_told_and_not_forgotten(
    app: Flask, client: FlaskClient, config: Config, caplog: pytest.LogCaptureFixture
) -> None:
    """Most of it may still be readable, and yet it is not to be relied upon."""
    accepted(client, fills(300))
    assert config.database_file is not None
    with db.engine.connect() as connection:
        connection.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)")
    db.engine.dispose()
    damage(config.database_file)
    told_to_try_again(client, [Phone("late").filled("K301")], "damaged")
    assert "damaged" in caplog.text
    ready = client.get("/api/ready")
    assert ready.status_code == 503
    assert "database: it is damaged" in ready.text
