"""Every error is a problem that says what to do."""

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cellarapp.api.problem_table import TABLE
from cellarapp.domain.errors import DomainError
from cellarapp.storage.db import db


def all_below(kind: type[DomainError]) -> list[type[DomainError]]:
    return [kind, *[one for below in kind.__subclasses__() for one in all_below(below)]]


@pytest.mark.parametrize("kind", all_below(DomainError))
def test_error_of_the_rules_has_its_place_in_the_table(kind: type[DomainError]) -> None:
    """A rule that refuses something new cannot do so in silence."""
    assert kind.slug in TABLE


@pytest.mark.parametrize("slug", sorted(TABLE))
def test_kind_of_problem_has_a_page(client: FlaskClient, slug: str) -> None:
    """For whoever follows the type of a problem."""
    page = client.get(f"/problems/{slug}")
    assert page.status_code == 200
    assert page.content_type == "text/html; charset=utf-8"
    assert "<style" not in page.text
    assert "<script" not in page.text


def test_page_of_no_problem_is_not_found(client: FlaskClient) -> None:
    """As a problem."""
    answer = client.get("/problems/nonsense")
    assert (answer.status_code, answer.content_type) == (404, "application/problem+json")


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/api/nonsense", 404),
        ("GET", "/api", 404),
        ("GET", "/api/containers/", 404),
        ("GET", "/api/containers/117", 404),
        ("GET", "/nonsense.js", 404),
        ("GET", "/api/containers/ABC", 422),
        ("GET", "/api/containers/%00", 422),
        ("GET", "/api/push", 405),
        ("POST", "/api/pull", 405),
        ("DELETE", "/api/containers/117", 405),
        ("PUT", "/", 405),
    ],
)
def test_address_or_method_that_is_wrong(
    client: FlaskClient, method: str, path: str, status: int
) -> None:
    """A problem with the status of its answer."""
    answer = client.open(path, method=method)
    assert answer.status_code == status
    assert answer.content_type == "application/problem+json"
    assert answer.json is not None
    assert answer.json["status"] == status
    assert answer.json["type"].startswith("/problems/")


def test_wrong_method_is_told_the_right_one(client: FlaskClient) -> None:
    """RFC 9110 asks for Allow."""
    allowed = client.put("/api/pull").headers["Allow"]
    assert {method.strip() for method in allowed.split(",")} == {"GET", "HEAD", "OPTIONS"}


def test_fault_of_the_server_is_told_without_its_inside(
    app: Flask, client: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    """Only the incident's name, under which the log has the rest."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DELETE FROM head")
    answer = client.get("/api/snapshot")
    assert answer.status_code == 500
    assert answer.json is not None
    assert answer.json["type"] == "/problems/own-fault"
    assert "Traceback" not in answer.text
    assert answer.json["incident"] in caplog.text


def test_database_that_cannot_be_reached_is_a_reason_to_try_later(
    app: Flask, client: FlaskClient
) -> None:
    """With the time after which it is worth trying."""
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE head")
    answer = client.get("/api/pull")
    assert (answer.status_code, answer.headers["Retry-After"]) == (503, "30")
    assert answer.json is not None
    assert answer.json["type"] == "/problems/storage-trouble"


@pytest.mark.parametrize("path", ["/api/health", "/api/nonsense", "/problems/busy", "/"])
def test_answers_carry_the_headers_that_keep_the_browser_strict(
    client: FlaskClient, path: str
) -> None:
    """Whatever the answer."""
    headers = client.get(path, headers={"Accept": "text/html"}).headers
    policy = headers["Content-Security-Policy"]
    assert policy.startswith("default-src 'none'; script-src 'self' 'wasm-unsafe-eval';")
    assert "'unsafe-inline'" not in policy
    assert "'unsafe-eval'" not in policy
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"


@pytest.mark.parametrize("path", ["/api/health", "/api/pull", "/api/snapshot/pages", "/api/none"])
def test_nothing_of_the_ledger_is_kept_on_the_way(client: FlaskClient, path: str) -> None:
    """A proxy that replays an old answer keeps phones in a circle."""
    assert client.get(path).headers["Cache-Control"] == "no-store"
