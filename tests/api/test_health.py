"""Whether the server is alive, and whether it can do its work."""

import json
import logging
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import pytest
from flask import Flask
from flask.testing import FlaskClient
from freezegun import freeze_time

from cellarapp import create_app
from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.domain import RULES_VERSION
from cellarapp.logs import FACTS, JsonLine
from cellarapp.storage.db import close_connections, db

from ..making import Phone, push_body
from ..signed_in import signed_in


def wrong(client: FlaskClient) -> dict[str, str]:
    """What is not well, by name, as the answer that the server is not ready says it."""
    answer = client.get("/api/ready")
    assert answer.status_code == 503
    assert answer.json is not None
    assert answer.json["type"] == "/problems/not-ready"
    found = {one["name"]: one["said"] for one in answer.json["checks"] if not one["ok"]}
    assert all(said in answer.json["detail"] for said in found.values())
    return found


@contextmanager
def served(config: Config) -> Iterator[FlaskClient]:
    with opened(config) as app:
        yield app.test_client()


def test_health_says_which_server_it_is(client: FlaskClient) -> None:
    """Its release and its rules, so that a person can compare them with the phone's."""
    told = client.get("/api/health").json
    assert told is not None
    assert told["status"] == "ok"
    assert told["version"].startswith("0.")
    assert told["rules"] == RULES_VERSION


def test_server_without_its_database_is_alive(app: Flask, client: FlaskClient) -> None:
    """To start it again would not help; so it must not look dead to whoever does that."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE head")
    assert client.get("/api/health").status_code == 200
    assert "database" in wrong(client)


def test_server_that_can_do_its_work_is_ready(client: FlaskClient) -> None:
    """Each thing that was looked at is named."""
    answer = client.get("/api/ready")
    assert answer.status_code == 200
    assert answer.json is not None
    assert [one["name"] for one in answer.json["checks"]] == ["database", "tables", "room"]


def test_looking_whether_it_is_ready_changes_nothing(app: Flask, client: FlaskClient) -> None:
    """It writes to see that it can, and what it writes was there before."""
    client.post("/api/push", json=push_body([Phone().filled("117")]))
    before = client.get("/api/snapshot").json
    client.get("/api/ready")
    assert client.get("/api/snapshot").json == before


def test_it_is_looked_at_every_few_seconds_however_often_it_is_asked(client: FlaskClient) -> None:
    """Anybody may ask, and looking writes to the database."""
    with freeze_time() as clock:
        assert client.get("/api/ready").status_code == 200
        with db.engine.begin() as connection:
            connection.exec_driver_sql("DROP TABLE head")
        clock.tick(4.9)
        assert client.get("/api/ready").status_code == 200
        clock.tick(0.2)
        assert client.get("/api/ready").status_code == 503


def test_tables_of_another_release_are_not_ready(app: Flask, client: FlaskClient) -> None:
    """As after an older copy was put in place while the server ran."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = '0000'")
    assert wrong(client).keys() == {"tables"}


def test_little_room_is_not_ready(config: Config) -> None:
    """Before the disk is full, while something can still be done about it."""
    with served(replace(config, least_free_mib=10**9)) as client:
        assert wrong(client).keys() == {"room"}


def test_line_of_the_log_tells_a_request_without_what_it_carried(
    config: Config, caplog: pytest.LogCaptureFixture
) -> None:
    """Neither the body nor what stands in the address is in it."""
    app = create_app(replace(config, log="json"))
    entry = Phone().filled("117", place="secret-place")
    with caplog.at_level(logging.INFO, "cellarapp"), app.app_context():
        client = signed_in(app)
        client.set_cookie("c", "secret-cookie")
        client.post("/api/push", json=push_body([entry]))
        client.get("/api/pull?epoch=secret-epoch")
        client.get("/secret-path")
        close_connections()
    lines = [JsonLine().format(one) for one in caplog.records if hasattr(one, FACTS)]
    told = [json.loads(line) for line in lines]
    assert [(one["method"], one["route"], one["status"]) for one in told] == [
        ("POST", "/api/push", 200),
        ("GET", "/api/pull", 409),
        ("GET", "/<client:name>", 404),
    ]
    assert all(one["ms"] >= 0 and one["time"].endswith("Z") for one in told)
    assert "secret" not in "".join(lines)


def test_plain_log_has_no_line_for_each_request(
    client: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    """A phone asks twice a minute; a person who reads the log looks for something else."""
    with caplog.at_level(logging.INFO):
        client.get("/api/pull")
    assert caplog.records == []


def test_traceback_is_one_line_of_the_json_log() -> None:
    """Or a collector would take it for thirty lines."""
    try:
        raise ValueError("of two\nlines")
    except ValueError as fault:
        told = (type(fault), fault, fault.__traceback__)
    record = logging.LogRecord("x", logging.ERROR, __file__, 1, "incident %s", ("7",), told)
    line = JsonLine().format(record)
    assert "\n" not in line
    assert json.loads(line)["message"] == "incident 7"
    assert "of two\nlines" in json.loads(line)["traceback"]
