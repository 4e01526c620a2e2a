"""GET /api/pull and /api/snapshot over HTTP."""

import gzip
import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from cellarapp.ledger.pulling import current_head

from ..making import Phone, made_id, push_body


@pytest.fixture
def database(either_database: str) -> str:
    """Phones notice no difference."""
    return either_database


def get(client: FlaskClient, path: str, **query: Any) -> dict[str, Any]:
    answer = client.get(path, query_string=query)
    assert answer.status_code == 200
    assert answer.json is not None
    told: dict[str, Any] = answer.json
    return told


@pytest.fixture
def containers(client: FlaskClient) -> int:
    """Thirty containers and one gyle."""
    phone = Phone()
    client.post("/api/push", json=push_body([phone.filled(f"F{n}") for n in range(30)]))
    return 30


@pytest.mark.usefixtures("containers")
def test_pull_goes_on_where_the_last_page_ended(client: FlaskClient) -> None:
    """Until there is no more; only then there is a checksum."""
    since, rows, pages = 0, [], 0
    while True:
        told = get(client, "/api/pull", since=since, limit=7)
        rows += told["rows"]
        since, pages = told["next"], pages + 1
        assert ("checksum" in told) is not told["more"]
        if not told["more"]:
            break
    assert (len(rows), pages) == (31, 5)
    assert since == told["head"]
    assert get(client, "/api/pull", since=since)["rows"] == []


@pytest.mark.usefixtures("containers")
def test_row_carries_its_key_its_position_and_its_document(client: FlaskClient) -> None:
    """As the phone keeps it."""
    rows = get(client, "/api/pull")["rows"]
    gyle = next(row for row in rows if row["type"] == "gyle")
    assert gyle == {
        "type": "gyle",
        "id": made_id("gyle 1"),
        "position": 61,
        "doc": {"fields": {}, "set_by": {}, "drawn_ml": 1_200_000},
    }


@pytest.mark.parametrize("query", ["epoch=another", "since=1", "epoch=another&since=0"])
def test_pull_from_another_ledger_is_a_conflict(client: FlaskClient, query: str) -> None:
    """With the epoch and the head of this one, so that the phone can begin again."""
    answer = client.get(f"/api/pull?{query}")
    assert answer.status_code == 409
    assert answer.json is not None
    assert answer.json["type"] == "/problems/another-ledger"
    assert (answer.json["epoch"], answer.json["head"]) == (current_head().epoch, 0)


@pytest.mark.parametrize(
    "query",
    ["since=-1", "since=x", "since=1.5", "since=", "since=9007199254740992", "limit=0",
     "limit=5001", "limit=\u0661", "since=" + "9" * 5000],
)  # fmt: skip
def test_pull_with_a_wrong_number_is_told_so(client: FlaskClient, query: str) -> None:
    """Named, and with its limits."""
    answer = client.get(f"/api/pull?{query}")
    assert answer.status_code == 422
    assert answer.json is not None
    name = query.partition("=")[0]
    assert [error["pointer"] for error in answer.json["errors"]] == [f"#/{name}"]
    assert answer.json["detail"].startswith(f"{name} must be a whole number from ")


@pytest.mark.usefixtures("containers")
@pytest.mark.parametrize("path", ["/api/pull", "/api/snapshot/pages"])
def test_answer_is_compressed_for_those_who_accept_it(client: FlaskClient, path: str) -> None:
    """And says the same to those who do not."""
    plain = client.get(path)
    packed = client.get(path, headers={"Accept-Encoding": "gzip"})
    assert "Content-Encoding" not in plain.headers
    assert packed.headers["Content-Encoding"] == "gzip"
    assert plain.headers["Vary"] == packed.headers["Vary"] == "Accept-Encoding"
    assert gzip.decompress(packed.data) == plain.data
    assert len(packed.data) * 4 < len(plain.data)


def all_pages(client: FlaskClient, limit: int) -> list[dict[str, Any]]:
    rows, after = [], ""
    while after is not None:
        told = get(client, "/api/snapshot/pages", after=after, limit=limit)
        rows += told["rows"]
        after = told["next"]
    return rows


@pytest.mark.usefixtures("containers")
@pytest.mark.parametrize("limit", [1, 7, 31, 1000])
def test_snapshot_holds_every_row_once_in_the_order_of_keys(
    client: FlaskClient, limit: int
) -> None:
    """The same rows that a pull from the beginning gives."""
    rows = all_pages(client, limit)
    assert [(r["type"], r["id"]) for r in rows] == sorted((r["type"], r["id"]) for r in rows)
    pulled = get(client, "/api/pull")["rows"]
    assert sorted(map(json.dumps, rows)) == sorted(map(json.dumps, pulled))


@pytest.mark.usefixtures("containers")
def test_snapshot_then_pull_since_its_position_gives_the_rows_of_now(client: FlaskClient) -> None:
    """Also where something changed between two pages; the checksum proves it."""
    began = get(client, "/api/snapshot")
    first = get(client, "/api/snapshot/pages", limit=10)
    client.post("/api/push", json=push_body([Phone("other").entry("tapped", "F3")]))
    client.post("/api/push", json=push_body([Phone("other").filled("A1")]))
    rest = all_pages_after(client, first["next"])
    held = {(r["type"], r["id"]): r for r in [*first["rows"], *rest]}
    pulled = get(client, "/api/pull", epoch=began["epoch"], since=began["position"])
    for row in pulled["rows"]:
        held[row["type"], row["id"]] = row
    assert sorted(map(json.dumps, held.values())) == sorted(
        map(json.dumps, get(client, "/api/pull")["rows"])
    )


def all_pages_after(client: FlaskClient, after: str | None) -> list[dict[str, Any]]:
    rows = []
    while after is not None:
        told = get(client, "/api/snapshot/pages", after=after, limit=10)
        rows += told["rows"]
        after = told["next"]
    return rows


def test_prepared_pages_are_never_older_than_the_ledger(client: FlaskClient) -> None:
    """A page that was made before a push is not given out after it."""
    assert get(client, "/api/snapshot/pages")["rows"] == []
    client.post("/api/push", json=push_body([Phone().filled("117")]))
    assert len(get(client, "/api/snapshot/pages")["rows"]) == 2


def test_snapshot_says_how_many_pages_there_are(client: FlaskClient) -> None:
    """Of a thousand rows each, for a bar that shows how far the first load is."""
    assert get(client, "/api/snapshot")["pages"] == 0
    entries = [Phone(str(n)).entry("tapped", f"F{n}") for n in range(1001)]
    for start in range(0, 1001, 500):
        client.post("/api/push", json=push_body(entries[start : start + 500]))
    assert get(client, "/api/snapshot")["pages"] == 2


@pytest.mark.parametrize("after", ["117", "container", ":", "container:x y", "a:b:c"])
def test_page_after_something_that_is_no_key_is_told_so(client: FlaskClient, after: str) -> None:
    """Rather than beginning again in silence."""
    assert client.get("/api/snapshot/pages", query_string={"after": after}).status_code == 422
