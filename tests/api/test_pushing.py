"""POST /api/push over HTTP: verdicts, and bodies of every broken kind."""

import gzip
import json
from typing import Any

import pytest
from flask.testing import FlaskClient
from freezegun import freeze_time
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from werkzeug.test import TestResponse

from cellarapp.ledger.pulling import current_head

from ..making import Phone, push_body

JSON = "application/json"


@pytest.fixture
def database(either_database: str) -> str:
    """Phones notice no difference."""
    return either_database


def push(client: FlaskClient, *entries: object, **other: Any) -> TestResponse:
    return client.post("/api/push", json=push_body(entries, **other))


@freeze_time("2026-11-25T12:00:00Z")
def test_push_answers_with_a_verdict_for_each_entry(client: FlaskClient) -> None:
    """Accepted with a position; refused with a problem that points into the entry."""
    phone = Phone()
    good, bad = phone.filled("117"), phone.filled("118", volume_ml=-1)
    told = push(client, good, bad).json
    assert told is not None
    assert (told["head"], told["server_time"]) == (3, "2026-11-25T12:00:00.000Z")
    assert told["results"][0] == {"id": good["id"], "verdict": "accepted", "position": 1}
    assert told["results"][1] == {
        "id": bad["id"],
        "verdict": "refused",
        "problem": {
            "type": "/problems/malformed-entry",
            "title": "An entry cannot be read",
            "status": 422,
            "detail": "volume_ml must be between 1 and 1227445 mL.",
            "errors": [
                {
                    "pointer": "#/facts/volume_ml",
                    "detail": "volume_ml must be between 1 and 1227445 mL.",
                }
            ],
        },
    }


@freeze_time("2026-11-25T12:00:00Z")
def test_device_whose_clock_is_behind_is_corrected_by_what_it_is_behind(
    client: FlaskClient,
) -> None:
    """LIFE-23: it says when it sent."""
    entry = Phone().entry("tapped", "117", at="2026-11-24T09:00:00.000Z")
    push(client, entry, sent_at="2026-11-24T10:00:00.000Z")
    told = client.get("/api/containers/117").json
    assert told is not None
    noted = told["entries"][0]
    assert noted["effective_at"] == "2026-11-25T11:00:00.000Z"
    assert (noted["happened_at"], noted["clock"]) == ("2026-11-24T09:00:00.000Z", "corrected")


def test_phone_of_another_epoch_may_push_all_the_same(client: FlaskClient) -> None:
    """What it has to say happened, whichever ledger it knew."""
    told = push(client, Phone().filled("117"), epoch="an older one").json
    assert told is not None
    assert told["results"][0]["verdict"] == "accepted"
    assert told["epoch"] != "an older one"


def test_request_of_a_later_app_may_say_more(client: FlaskClient) -> None:
    """What is not known is passed over, so that an old server still takes entries."""
    assert push(client, Phone().filled("117"), battery=12).status_code == 200


def test_body_may_be_compressed(client: FlaskClient) -> None:
    """A phone on a weak signal sends a fifth of the bytes."""
    body = gzip.compress(json.dumps(push_body([Phone().filled("117")])).encode())
    answer = client.post(
        "/api/push", data=body, content_type=JSON, headers={"Content-Encoding": "gzip"}
    )
    assert answer.json is not None
    assert answer.json["results"][0]["verdict"] == "accepted"


WHOLE = json.dumps(push_body([])).encode()
PACKED = gzip.compress(WHOLE)
BOMB = gzip.compress(b" " * 200_000_000, compresslevel=1)


@pytest.mark.parametrize(
    ("body", "headers", "slug", "status"),
    [
        (b"", {}, "not-json", 400),
        (WHOLE[:-5], {}, "not-json", 400),
        (b"\xff\xfe", {}, "not-json", 400),
        (b'{"a": "\xff"}', {}, "not-json", 400),
        (b"[" * 100_000, {}, "not-json", 400),
        (b"9" * 5000, {}, "not-json", 400),
        (b"null", {}, "malformed-request", 422),
        (b"[]", {}, "malformed-request", 422),
        (b"7", {}, "malformed-request", 422),
        (b"NaN", {}, "malformed-request", 422),
        (b'"text"', {}, "malformed-request", 422),
        (b"{}", {}, "malformed-request", 422),
        (WHOLE, {"Content-Type": "text/plain"}, "unknown-encoding", 415),
        (WHOLE, {"Content-Type": "application/x-www-form-urlencoded"}, "unknown-encoding", 415),
        (WHOLE, {"Content-Encoding": "br"}, "unknown-encoding", 415),
        (WHOLE, {"Content-Encoding": "gzip"}, "not-json", 400),
        (PACKED[:-9], {"Content-Encoding": "gzip"}, "not-json", 400),
        (BOMB, {"Content-Encoding": "gzip"}, "too-large", 413),
        (b" " * 1_048_577, {}, "too-large", 413),
        (json.dumps(push_body([{}] * 501)).encode(), {}, "too-large", 413),
    ],
)
def test_body_that_cannot_be_used_is_a_problem_and_changes_nothing(
    client: FlaskClient, body: bytes, headers: dict[str, str], slug: str, status: int
) -> None:
    """Never a fault of the server, and always one of ours to read."""
    answer = client.post("/api/push", data=body, headers={"Content-Type": JSON} | headers)
    assert answer.status_code == status
    assert answer.content_type == "application/problem+json"
    assert answer.json is not None
    assert (answer.json["type"], answer.json["status"]) == (f"/problems/{slug}", status)
    assert current_head().position == 0


@pytest.mark.parametrize(
    ("change", "pointer", "words"),
    [
        ({"proto": 2}, "#/proto", "proto must be 1; this server speaks no other protocol."),
        ({"proto": True}, "#/proto", "proto must be 1; this server speaks no other protocol."),
        ({"app": None}, "#/app", "app must not be null; leave it out if there is nothing to say."),
        ({"sent_at": "noon"}, "#/sent_at",
         "sent_at must be a time with its zone, written as 2026-11-25T09:40:00.000Z."),
        ({"device": "mine"}, "#/device", "device must be a UUID in lower case."),
        ({"entries": {}}, "#/entries", "entries must be a list."),
        ({"entries": None}, "#/entries",
         "entries must not be null; leave it out if there is nothing to say."),
        ({"epoch": 5}, "#/epoch", "epoch must be text."),
    ],
)  # fmt: skip
def test_request_that_is_refused_whole_says_where(
    client: FlaskClient, change: dict[str, Any], pointer: str, words: str
) -> None:
    """Of its envelope; the entries are judged one by one."""
    answer = push(client, **change)
    assert answer.status_code == 422
    assert answer.json is not None
    assert answer.json["errors"] == [{"pointer": pointer, "detail": words}]


anything = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(),
    lambda below: st.lists(below, max_size=4) | st.dictionaries(st.text(), below, max_size=4),
    max_leaves=12,
)
wrong_values = st.dictionaries(st.sampled_from(sorted(Phone().filled("117"))), anything)


@settings(
    max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(elements=st.lists(anything | wrong_values.map(lambda w: Phone("x").filled("117") | w)))
def test_no_element_ever_costs_another_its_verdict(
    client: FlaskClient, elements: list[object]
) -> None:
    """Whatever stands beside it, a good entry goes in, and every element is answered."""
    answer = push(client, *elements, Phone("good").filled("117"))
    assert answer.status_code == 200
    assert answer.json is not None
    words = [result["verdict"] for result in answer.json["results"]]
    assert len(words) == len(elements) + 1
    assert words[-1] in ("accepted", "known")
