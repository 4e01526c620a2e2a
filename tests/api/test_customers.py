"""Everything that is kept about a customer, for whoever asks."""

from flask.testing import FlaskClient

from ..making import Phone, made_id, push_body

LANTERN = made_id("Lantern")


def test_all_that_was_ever_said_is_handed_out(client: FlaskClient) -> None:
    """What stands, what stood before, and the words of calls; nothing of other customers."""
    office = Phone("office")
    entries = [
        office.entry("customer", LANTERN, name="Lantern", contact="Gam"),
        office.entry("customer", LANTERN, contact="Ottoline"),
        office.entry("chased", LANTERN, words="says Friday"),
        office.entry("customer", made_id("Ferry House"), name="Ferry House", contact="Hux"),
    ]
    client.post("/api/push", json=push_body(entries))
    found = client.get(f"/api/customers/{LANTERN}").get_json()
    assert found["row"]["doc"]["fields"] == {"name": "Lantern", "contact": "Ottoline"}
    facts = [entry["facts"] for entry in found["entries"]]
    assert facts == [entry["facts"] for entry in entries[:3]]


def test_what_was_erased_is_not_handed_out(client: FlaskClient) -> None:
    office = Phone("office")
    entries = [
        office.entry("customer", LANTERN, name="Lantern", contact="Gam"),
        office.entry("erased", LANTERN),
    ]
    client.post("/api/push", json=push_body(entries))
    assert "Gam" not in client.get(f"/api/customers/{LANTERN}").get_data(as_text=True)


def test_nobody_knows_another_customer(client: FlaskClient) -> None:
    answer = client.get(f"/api/customers/{LANTERN}")
    assert answer.status_code == 404
    assert answer.mimetype == "application/problem+json"
