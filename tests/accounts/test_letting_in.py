"""Links, passphrases and PINs: who is let in, how often it may be tried, and what is kept of it."""

import logging
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from freezegun import freeze_time
from sqlalchemy import text
from werkzeug.test import TestResponse

from cellarapp.accounts.pairing import link_to_begin
from cellarapp.api.cookie import NAME
from cellarapp.storage.db import db

from ..making import made_id, push_body
from ..signed_in import OWNER, PASSPHRASE, client_of

NOW = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
DEVICE = {"device": made_id("device new"), "device_name": "New"}


def invite(client: FlaskClient, person: str = OWNER) -> str:
    answer = client.post("/api/invites", json={"person": person})
    assert answer.json is not None
    token: str = answer.json["token"]
    return token


def pair(client: FlaskClient, token: str, **other: Any) -> TestResponse:
    return client.post("/api/pair", json={"token": token} | DEVICE, **other)


def sign_in(client: FlaskClient, passphrase: str = PASSPHRASE, name: str = OWNER) -> TestResponse:
    return client.post("/api/sign-in", json={"name": name, "passphrase": passphrase} | DEVICE)


def slug(answer: TestResponse) -> str:
    assert answer.json is not None
    said: str = answer.json["type"]
    return said.removeprefix("/problems/")


def test_link_pairs_one_device_and_only_once(client: FlaskClient, stranger: FlaskClient) -> None:
    """Whoever comes second is told, and gets no cookie."""
    token = invite(client)
    assert pair(stranger, token).status_code == 200
    assert stranger.get("/api/me").status_code == 200
    again = pair(stranger.application.test_client(), token)
    assert (again.status_code, slug(again)) == (410, "link-spent")
    assert "Set-Cookie" not in again.headers


@pytest.mark.parametrize(("seconds", "status"), [(599, 200), (600, 410)])
def test_link_works_for_ten_minutes(app: Flask, seconds: int, status: int) -> None:
    """Not one second more."""
    with freeze_time(NOW):
        token = invite(client_of(app, "owner"))
    with freeze_time(NOW + timedelta(seconds=seconds)):
        assert pair(app.test_client(), token).status_code == status


def test_link_to_begin_is_no_link_to_pair_and_the_other_way_round(
    app: Flask, client: FlaskClient
) -> None:
    """And neither is spent by the attempt."""
    begin, paired = link_to_begin(datetime.now(UTC)).token, invite(client)
    assert slug(pair(app.test_client(), begin)) == "link-spent"
    body = {"token": paired, "name": "Eve", "passphrase": PASSPHRASE} | DEVICE
    assert slug(app.test_client().post("/api/begin", json=body)) == "link-spent"
    assert pair(app.test_client(), paired).status_code == 200
    assert app.test_client().post("/api/begin", json=body | {"token": begin}).status_code == 200


def test_owner_who_has_forgotten_the_passphrase_begins_again(app: Flask) -> None:
    """By the link of the command line, under the same name; the old passphrase works no more."""
    client_of(app, "owner")
    token = link_to_begin(datetime.now(UTC)).token
    body = {"token": token, "name": OWNER, "passphrase": "another one altogether"} | DEVICE
    assert app.test_client().post("/api/begin", json=body).status_code == 200
    assert slug(sign_in(app.test_client())) == "wrong-passphrase"
    assert sign_in(app.test_client(), "another one altogether").status_code == 200


def test_name_of_somebody_who_is_no_owner_makes_no_owner(app: Flask) -> None:
    """A link to begin gives nobody more rights than they have."""
    client_of(app, "driver")
    token = link_to_begin(datetime.now(UTC)).token
    body = {"token": token, "name": "DRIVER ash", "passphrase": PASSPHRASE} | DEVICE
    assert slug(app.test_client().post("/api/begin", json=body)) == "name-taken"


def test_cookie_is_out_of_reach_of_pages_and_of_other_sites(
    app: Flask, client: FlaskClient
) -> None:
    """RFC 6265bis: the prefix __Host- binds it to this host, over https, for every path."""
    given = pair(app.test_client(), invite(client)).headers["Set-Cookie"]
    name, *attributes = [part.strip() for part in given.split(";")]
    assert name.startswith("__Host-cellar=")
    assert {"Secure", "HttpOnly", "Path=/", "SameSite=Strict", "Max-Age=34560000"} <= {*attributes}
    assert not any(one.startswith("Domain") for one in attributes)


def test_signing_in_works_months_later(app: Flask) -> None:
    """With nothing but name and passphrase, in whatever case the name is typed."""
    with freeze_time(NOW):
        client_of(app, "owner")
    with freeze_time(NOW + timedelta(days=300)):
        fresh = app.test_client()
        assert sign_in(fresh, name=OWNER.upper()).status_code == 200
        assert fresh.get("/api/me").status_code == 200


def test_signing_out_ends_it_on_both_sides(client: FlaskClient) -> None:
    """Also for whoever has copied the cookie."""
    cookie = client.get_cookie(NAME)
    assert cookie is not None
    assert client.post("/api/sign-out", json={}).status_code == 204
    assert client.get_cookie(NAME) is None
    client.set_cookie(NAME, cookie.value)
    assert slug(client.get("/api/me")) == "not-paired"


@pytest.mark.parametrize("name", [OWNER, "Nobody"])
def test_passphrase_is_tried_only_so_often(app: Flask, name: str) -> None:
    """The same answers for somebody who is not there; then not even the right one is looked at."""
    client_of(app, "owner")
    # Not in the past: the thread that forgets old tries goes by the real clock.
    with freeze_time(datetime.now(UTC)) as clock:
        said = [slug(sign_in(app.test_client(), f"wrong {n}", name)) for n in range(6)]
        assert said == ["wrong-passphrase"] * 5 + ["too-many-tries"]
        held_up = sign_in(app.test_client(), PASSPHRASE, OWNER)
        assert held_up.status_code == (429 if name == OWNER else 200)
        if name == OWNER:
            assert 0 < int(held_up.headers["Retry-After"]) <= 60
            clock.tick(61)
            assert sign_in(app.test_client()).status_code == 200


def test_links_are_tried_only_so_often_from_one_address(app: Flask) -> None:
    """Ten in a minute."""
    client_of(app, "owner")
    said = [slug(pair(app.test_client(), f"guess {n}")) for n in range(11)]
    assert said == ["link-spent"] * 10 + ["too-many-tries"]


def test_pin_takes_a_shared_device_in_hand_and_is_tried_only_so_often(
    app: Flask, client: FlaskClient
) -> None:
    """Whoever has come is one of its people then, and can be known again with no network."""
    added = client.post("/api/people", json={"name": "Bea", "role": "cellar", "pin": "4711"})
    assert added.status_code == 200
    me = client.post("/api/here", json={"name": "Bea", "pin": "4711"}).json
    assert me is not None
    assert me["person"] == {"name": "Bea", "role": "cellar"}
    checks = {one["name"]: one["pin_check"] for one in me["people"]}
    assert checks[OWNER] is None
    assert checks["Bea"]["iterations"] >= 600_000
    assert slug(client.get("/api/people")) == "role"
    wrong = [slug(client.post("/api/here", json={"name": OWNER, "pin": "0000"})) for _ in range(5)]
    assert wrong == ["wrong-pin"] * 4 + ["too-many-tries"]


def test_owner_handing_the_device_over_and_back_gives_the_passphrase_again(
    app: Flask, client: FlaskClient
) -> None:
    """What was open to the owner is not left open."""
    for name, pin in [("Bea", "4711"), ("Cy", "1234")]:
        client.post("/api/people", json={"name": name, "role": "owner", "pin": pin,
                                         "passphrase": "long enough for it"})  # fmt: skip
    client.post("/api/here", json={"name": "Bea", "pin": "4711"})
    assert slug(client.post("/api/invites", json={"person": OWNER})) == "step-up-needed"
    wrong = client.post("/api/passphrase-check", json={"passphrase": PASSPHRASE})
    assert slug(wrong) == "wrong-passphrase"
    right = client.post("/api/passphrase-check", json={"passphrase": "long enough for it"})
    assert right.status_code == 200
    assert client.post("/api/invites", json={"person": OWNER}).status_code == 200


def test_id_of_a_device_is_no_secret_and_opens_nothing(app: Flask) -> None:
    """Who signs in under another device's id gets none of the people who use that one."""
    client_of(app, "driver")
    owner = client_of(app, "owner")
    me = owner.get("/api/me").json
    assert me is not None
    taken = {"token": invite(owner, "driver Ash"), "device": me["device"]["id"]}
    told = app.test_client().post("/api/pair", json=taken | {"device_name": "x"}).json
    assert told is not None
    assert [one["name"] for one in told["people"]] == ["driver Ash"]


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Sec-Fetch-Site": "same-origin"}, 200),
        ({"Sec-Fetch-Site": "same-site"}, 403),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "none"}, 403),
        ({"Sec-Fetch-Site": "same-origin", "Origin": "http://localhost"}, 200),
        ({"Origin": "http://localhost"}, 200),
        ({"Origin": "http://localhost:81"}, 403),
        ({"Origin": "https://elsewhere.example"}, 403),
        ({"Origin": "null"}, 403),
        ({}, 200),
    ],
)
def test_pages_of_other_sites_change_nothing(
    client: FlaskClient, headers: dict[str, str], status: int
) -> None:
    """W3C Fetch Metadata, and RFC 6454 for browsers that lack it."""
    assert client.post("/api/push", json=push_body([]), headers=headers).status_code == status


@pytest.mark.parametrize("kind", ["text/plain", "application/x-www-form-urlencoded"])
def test_form_of_another_site_is_not_read(client: FlaskClient, kind: str) -> None:
    """A form cannot send JSON as JSON."""
    answer = client.post("/api/sign-out", data="{}", content_type=kind)
    assert (answer.status_code, slug(answer)) == (415, "unknown-encoding")


def test_pairing_over_plain_http_is_refused_with_the_reason(
    app: Flask, client: FlaskClient
) -> None:
    """The browser would keep no cookie, and somebody on the network could."""
    far = pair(app.test_client(), invite(client), base_url="http://brewery.example")
    assert (far.status_code, slug(far)) == (403, "not-secure")
    assert far.json is not None
    assert "serve --lan" in far.json["detail"]
    near = pair(app.test_client(), invite(client), base_url="https://brewery.example")
    assert near.status_code == 200


@pytest.mark.parametrize(
    "passphrase", ["short", "aaaaaaaaaaaaaaaa", "x" * 201, "ababababababab", "bell\x07bell-bell-"]
)
def test_passphrase_that_would_be_guessed_is_not_taken(
    client: FlaskClient, passphrase: str
) -> None:
    """The answer names the field and does not repeat it."""
    body = {"name": "Bea", "role": "owner", "passphrase": passphrase}
    answer = client.post("/api/people", json=body)
    assert answer.status_code == 422
    assert answer.json is not None
    assert [one["pointer"] for one in answer.json["errors"]] == ["#/passphrase"]
    assert passphrase not in answer.text


def test_last_owner_stays(client: FlaskClient) -> None:
    """A brewery without an owner could be run by nobody."""
    told = client.get("/api/people").json
    assert told is not None
    [ash] = told["people"]
    for change in ({"role": "cellar"}, {"retired": True}):
        assert slug(client.post(f"/api/people/{ash['id']}", json=change)) == "last-owner"
    assert client.get("/api/me").status_code == 200


def test_who_retires_is_signed_out(app: Flask, client: FlaskClient) -> None:
    """On every device that they have in hand; their name is never given again."""
    driver = client_of(app, "driver")
    client = client_of(app, "owner")
    told = client.get("/api/people").json
    assert told is not None
    [who] = [one for one in told["people"] if one["role"] == "driver"]
    assert client.post(f"/api/people/{who['id']}", json={"retired": True}).status_code == 200
    assert slug(driver.get("/api/me")) == "not-paired"
    again = client.post("/api/people", json={"name": who["name"], "role": "driver"})
    assert slug(again) == "name-taken"


def test_no_secret_is_in_the_log_or_in_the_database(
    app: Flask, caplog: pytest.LogCaptureFixture
) -> None:
    """Over a whole journey, with faults on the way."""
    caplog.set_level(logging.DEBUG)
    owner = client_of(app, "owner")
    token = invite(owner)
    paired = app.test_client()
    pair(paired, token)
    sign_in(app.test_client(), "a wrong passphrase")
    sign_in(paired)
    owner.post("/api/people", json={"name": "Bea", "role": "cellar", "pin": "48151623"})
    owner.post("/api/here", json={"name": "Bea", "pin": "48151623"})
    owner.post("/api/here", json={"name": "Bea", "pin": "99887766"})
    cookies = [one.get_cookie(NAME) for one in (owner, paired)]
    secrets = [PASSPHRASE, "a wrong passphrase", token, "48151623", "99887766"]
    secrets += [one.value for one in cookies if one is not None]
    with db.engine.connect() as connection:
        rows = [
            str(row)
            for table in db.metadata.sorted_tables
            for row in connection.execute(text(f'SELECT * FROM "{table.name}"'))
        ]
    kept = "\n".join(rows)
    assert "Bea" in kept
    assert len(secrets) == 7
    assert [one for one in secrets if one in caplog.text or one in kept] == []
