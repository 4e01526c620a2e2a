"""GET /api/held and /api/containers/<number> over HTTP."""

import json

from flask.testing import FlaskClient

from ..making import Phone, made_id, push_body


def test_held_entry_can_be_looked_at_as_it_was_sent(client: FlaskClient) -> None:
    """With why it is held, who sent it and when."""
    unknown = Phone().entry("blessed", "117", by="a bishop")
    client.post("/api/push", json=push_body([unknown]))
    told = client.get("/api/held").json
    assert told is not None
    (one,) = told["held"]
    assert json.loads(one["raw"]) == unknown
    assert (one["id"], one["device"]) == (unknown["id"], made_id("device bench"))
    assert (one["type"], one["incident"]) == ("/problems/unknown-kind", None)


def test_history_is_found_by_any_way_of_writing_the_number(client: FlaskClient) -> None:
    """As it was typed."""
    client.post("/api/push", json=push_body([Phone().filled("F117")]))
    for written in ("F117", "f117", "f%20117", "F-117"):
        told = client.get(f"/api/containers/{written}").json
        assert told is not None
        assert told["row"]["doc"]["fills"] == 1
        assert [entry["kind"] for entry in told["entries"]] == ["filled"]
