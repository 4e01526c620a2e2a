"""A customer sees what it holds by a link alone, and says which are empty or not there."""

import hashlib
from base64 import urlsafe_b64encode
from typing import Any
from uuid import UUID

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cellarapp.domain.queries import open_queries
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import db

from ..making import Phone, batch, made_id
from .looking import OURS, read, words_of

LANTERN, FERRY = made_id("Lantern"), made_id("Ferry House")


def token_of(customer: str, secret: bytes = b"s" * 20) -> str:
    """A link's, as a phone makes it."""
    return urlsafe_b64encode(UUID(customer).bytes + secret).decode()


def hash_of(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()


LINK = token_of(LANTERN)


@pytest.fixture
def phone(app: Flask) -> Phone:
    """Two customers; Lantern holds 117 and K3, has a link, and has its own cask 9 back home."""
    phone = Phone()
    out = {"due_on": None, "on_record_since": "2026-11-25"}
    take_in(
        batch(
            [
                phone.entry("brewery", "brewery", name="Sallowick Brewery", phone="0100 117"),
                phone.entry("customer", LANTERN, name="Lantern", contact="Gam"),
                phone.entry("customer", FERRY, name="Ferry House"),
                phone.registered("117"),
                phone.registered("K3", "keg_50", capacity_ml=50_000),
                phone.registered("118"),
                phone.registered("9", owner="lantern "),
                phone.entry("sent", "117", customer=LANTERN, **out),
                phone.entry("sent", "K3", customer=LANTERN, **out),
                phone.entry("sent", "9", customer=LANTERN, **out),
                phone.entry("sent", "118", customer=FERRY, **out),
                phone.entry("linked", LANTERN, hash=hash_of(LINK)),
            ]
        )
    )
    return phone


def say(stranger: FlaskClient, says: str, number: str = "117", link: str = LINK) -> Any:
    return stranger.post(f"/yours/{link}", data={"number": number, "says": says}, headers=OURS)


def standing(client: FlaskClient, number: str) -> Any:
    answer: Any = client.get(f"/api/containers/{number}")
    return answer.json["row"]["doc"]


def test_customer_sees_number_size_and_since_when(stranger: FlaskClient, phone: Phone) -> None:
    """And nothing else: not its own name, nor what others have."""
    page = stranger.get(f"/yours/{LINK}")
    assert page.status_code == 200
    words = words_of(page)
    for part in ("117 Firkin, 40.9 L", "K3 50 L keg", "with you since 25 November 2026"):
        assert part in words
    for secret in ("Lantern", "Gam", "118", "Ferry", LANTERN):
        assert secret not in page.text
    assert page.text.count("<li ") == 2


def test_customer_says_that_one_is_empty_and_takes_it_back(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """What they say goes with the trip, and the page says that the brewery knows."""
    sent = say(stranger, "empty")
    assert (sent.status_code, sent.headers["Location"]) == (303, f"/yours/{LINK}#n117")
    assert standing(client, "117")["trip"]["told"]["says"] == "empty"
    assert "Empty, ready to collect. The brewery knows." in words_of(stranger.get(f"/yours/{LINK}"))
    say(stranger, "here")
    assert "told" not in standing(client, "117")["trip"]
    entries: Any = client.get("/api/containers/117").json
    assert [e["person"] for e in entries["entries"] if e["kind"] == "told"] == ["the customer"] * 2


def test_one_that_is_not_there_is_a_question(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    say(stranger, "not_here")
    assert [query["rule"] for query in open_queries(standing(client, "117"))] == ["told_not_here"]


def test_what_was_said_already_is_not_said_again(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """Nor is anything said by a word that no button says."""
    for says in ("here", "empty", "empty", "scrapped", ""):
        assert say(stranger, says).status_code == 303
    entries: Any = client.get("/api/containers/117").json
    assert [entry["kind"] for entry in entries["entries"]].count("told") == 1


def test_nothing_is_said_of_what_they_do_not_hold(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """And the answer is alike, whether there is such a container or not."""
    before = client.get("/api/pull?since=0").json
    for number in ("118", "9", "999", "", "<b>1</b>", "1\r\nSet-Cookie: a=b"):
        sent = say(stranger, "not_here", number)
        assert sent.status_code == 303
        assert sent.headers["Location"].startswith(f"/yours/{LINK}#n")
        assert "Set-Cookie" not in sent.headers
    assert client.get("/api/pull?since=0").json == before


FORGED = [
    token_of(LANTERN, b"t" * 20),
    token_of(FERRY),
    token_of(made_id("nobody")),
    LINK[:-1],
    LINK + "A",
    "x",
    "é" * 48,
]


def test_forged_link_opens_nothing(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """All forged ones have the same page, of a customer that there is or is not."""
    page = stranger.get("/yours/nonsense")
    assert "This link does not work" in words_of(page)
    assert "0100 117" in words_of(page)
    for link in FORGED:
        forged = stranger.get(f"/yours/{link}")
        assert (forged.status_code, forged.text) == (404, page.text)
        assert say(stranger, "empty", link=link).status_code == 404
    assert "told" not in standing(client, "117")["trip"]


def test_links_that_are_stopped_open_nothing_and_a_new_one_does(
    stranger: FlaskClient, phone: Phone
) -> None:
    """As do those that were made before and come on record later."""
    late = phone.entry("linked", LANTERN, hash=hash_of(token_of(LANTERN, b"l" * 20)))
    take_in(batch([phone.entry("unlinked", LANTERN), late]))
    old = stranger.get(f"/yours/{LINK}")
    assert old.status_code == 404
    assert old.text == stranger.get("/yours/nonsense").text
    new = token_of(LANTERN, b"n" * 20)
    after = {"at": "2026-11-25T09:00:01.000Z"}
    take_in(batch([phone.entry("linked", LANTERN, hash=hash_of(new), **after)]))
    assert stranger.get(f"/yours/{new}").status_code == 200
    assert stranger.get(f"/yours/{LINK}").status_code == 404


def test_the_ledger_holds_no_secret_of_a_link(client: FlaskClient, phone: Phone) -> None:
    """What phones pull and what an owner takes along would open no page."""
    for path in ("/api/pull?since=0", "/api/ledger.json", f"/api/customers/{LANTERN}"):
        text = client.get(path).text
        assert hash_of(LINK) in text
        assert LINK not in text


def test_form_of_another_site_is_not_taken(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    said = {"number": "117", "says": "empty"}
    headers = {"Sec-Fetch-Site": "cross-site"}
    assert stranger.post(f"/yours/{LINK}", data=said, headers=headers).status_code == 403
    assert "told" not in standing(client, "117")["trip"]


def test_tries_to_guess_a_link_are_counted(stranger: FlaskClient, phone: Phone) -> None:
    """The right one opens nothing either, once there were too many from there."""
    found = [stranger.get(f"/yours/{n:048d}").status_code for n in range(60)]
    assert found == [404] * 60
    assert stranger.get(f"/yours/{LINK}").status_code == 429


def test_page_of_a_customer_that_holds_nothing(stranger: FlaskClient, phone: Phone) -> None:
    back = [phone.entry("returned", number) for number in ("117", "K3")]
    take_in(batch(back))
    page = stranger.get(f"/yours/{LINK}")
    assert "None is down as being with you." in words_of(page)
    assert "form" not in read(page).elements


def test_storage_that_fails_is_said_plainly(app: Flask, stranger: FlaskClient) -> None:
    with db.engine.begin() as connection:
        connection.exec_driver_sql("DROP TABLE row")
    page = stranger.get(f"/yours/{LINK}")
    assert page.status_code == 503
    assert "nothing of it was kept" in words_of(page)
