"""Whoever finds a container learns whose it is, can say where it is, and learns nothing else."""

import re
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cellarapp.domain.asset_number import asset_number
from cellarapp.domain.queries import open_queries
from cellarapp.ledger.take_in import take_in

from ..making import Phone, batch, made_id
from .looking import OURS, read, words_of

LANTERN = made_id("Lantern")
SAID = {"where": "Mill Lane, behind the chapel", "words": "on its side", "name": "", "phone": ""}


@pytest.fixture
def phone(app: Flask) -> Phone:
    """A brewery whose 117, full of Oystercatcher, is with a customer."""
    phone, beer = Phone(), made_id("beer")
    take_in(
        batch(
            [
                phone.entry(
                    "brewery", "brewery", name="Sallowick & Sons", address="2 Ropewalk",
                    phone="0100 (555) 0117", email="casks@sallowick.example",
                ),
                phone.entry("beer", beer, name="Oystercatcher"),
                phone.entry("gyle", made_id("gyle 1"), number="318", beer=beer),
                phone.entry("customer", LANTERN, name="Lantern"),
                phone.registered("117"),
                phone.filled("117"),
                phone.entry("sent", "117", customer=LANTERN, due_on=None),
            ]
        )
    )  # fmt: skip
    return phone


def report(stranger: FlaskClient, number: str = "117", **said: str) -> Any:
    return stranger.post(f"/f/{number}", data=SAID | said, headers=OURS)


def standing(client: FlaskClient, number: str) -> Any:
    answer: Any = client.get(f"/api/containers/{number}")
    return answer.json["row"]["doc"]


def test_finder_learns_whose_it_is_and_how_to_reach_them(
    stranger: FlaskClient, phone: Phone
) -> None:
    page = stranger.get("/f/117")
    assert page.status_code == 200
    for part in ("117 belongs to Sallowick & Sons", "2 Ropewalk", "0100 (555) 0117", "Leave it"):
        assert part in words_of(page)
    assert 'href="tel:01005550117"' in page.text
    assert 'href="mailto:casks@sallowick.example"' in page.text


def test_page_gives_away_nothing_of_the_container(stranger: FlaskClient, phone: Phone) -> None:
    """A number that nobody knows has the same page, byte for byte, but for the number."""
    known, unknown = stranger.get("/f/117"), stranger.get("/f/999")
    assert known.text.replace("117", "") == unknown.text.replace("999", "").replace("117", "")
    assert [*known.headers.keys()] == [*unknown.headers.keys()]
    for secret in ("Oystercatcher", "Lantern", "318", "irkin"):
        assert secret not in known.text
    assert report(stranger).headers["Location"] == "/f/117/thanks"
    assert report(stranger, "999").headers["Location"] == "/f/999/thanks"
    after = [stranger.get(f"/f/{number}/thanks").text for number in ("117", "999")]
    assert after[0].replace("117", "") == after[1].replace("999", "").replace("117", "")


def test_number_is_read_as_a_person_writes_it(stranger: FlaskClient) -> None:
    for typed in ("F117", "f%20117", "F-117"):
        assert "<h1>F117 belongs to a brewery</h1>" in stranger.get(f"/f/{typed}").text


def test_plate_with_a_gs1_link_leads_to_the_same_page(stranger: FlaskClient, phone: Phone) -> None:
    """9521141 is the demonstration prefix of GS1."""
    asset = asset_number("9521141", "firkin", "117")
    assert stranger.get(f"/8003/{asset}").text == stranger.get("/f/117").text
    wrong = asset[:13] + str((int(asset[13]) + 1) % 10) + asset[14:]
    assert stranger.get(f"/8003/{wrong}").status_code == 404


def test_who_has_read_the_address_only_is_asked_for_the_number(
    stranger: FlaskClient, phone: Phone
) -> None:
    assert "The number on it" in words_of(stranger.get("/f"))
    assert stranger.get("/f?number=117").text == stranger.get("/f/117").text
    page = stranger.get("/f/barrel")
    assert page.status_code == 404
    assert "“barrel” is not a number" in words_of(page)


def test_report_comes_in_as_a_question_and_changes_nothing_else(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """Until a person has looked at it the container stands as it stood."""
    before = standing(client, "117")
    assert report(stranger, phone="0100 555").status_code == 303
    after = standing(client, "117")
    [query] = open_queries(after)
    assert query["facts"] == SAID | {"phone": "0100 555"}
    changed = {name for name in before if before[name] != after[name]}
    assert changed == {"queries", "last"}
    take_in(batch([phone.entry("settled", "117", query=query["id"], way="right")]))
    assert open_queries(standing(client, "117")) == []


def test_report_sent_twice_is_one_question(
    client: FlaskClient, stranger: FlaskClient, phone: Phone
) -> None:
    """Tapped twice, or loaded again; the finder is thanked each time, and other words are more."""
    again = [report(stranger, where=f"{SAID['where']}  "), report(stranger)]
    assert [sent.headers["Location"] for sent in again] == ["/f/117/thanks"] * 2
    [query] = open_queries(standing(client, "117"))
    report(stranger, words="it is gone from there")
    assert len(open_queries(standing(client, "117"))) == 2
    entries: Any = client.get("/api/containers/117").json
    assert [entry["kind"] for entry in entries["entries"]].count("reported") == 2
    take_in(batch([phone.entry("settled", "117", query=query["id"], way="right")]))
    report(stranger)
    assert len(open_queries(standing(client, "117"))) == 2


def test_reports_sent_at_one_moment_are_one_question(
    app: Flask, client: FlaskClient, phone: Phone
) -> None:
    """Two taps reach the brewery side by side: whichever is second finds the first."""

    def tap(_: int) -> int:
        code: int = report(app.test_client()).status_code
        return code

    with ThreadPoolExecutor(4) as taps:
        assert list(taps.map(tap, range(4))) == [303] * 4
    assert len(open_queries(standing(client, "117"))) == 1


def test_report_about_a_number_that_nobody_knows_is_kept(
    client: FlaskClient, stranger: FlaskClient
) -> None:
    """Perhaps a figure was misread: a person can give it to the right one."""
    report(stranger, "999")
    assert [query["rule"] for query in open_queries(standing(client, "999"))] == ["reported"]


def test_hostile_words_stay_words(client: FlaskClient, stranger: FlaskClient, phone: Phone) -> None:
    """On the page that gives them back, and in the ledger as they were written."""
    hostile = '"><script>alert(1)</script></textarea>{{7*7}}\0‮'
    page = report(stranger, where=hostile, name="x" * 61)
    assert page.status_code == 422
    assert "script" not in read(page).elements
    assert "{{7*7}}" in words_of(page)
    report(stranger, where=hostile)
    [query] = open_queries(standing(client, "117"))
    assert query["facts"]["where"] == hostile.replace("\0", "")
    assert "script" not in read(stranger.get("/f/%3Cscript%3E1")).elements


def test_what_does_not_fit_is_said_beside_its_field_and_nothing_is_lost(
    stranger: FlaskClient, phone: Phone
) -> None:
    for said, fault in (
        ({"where": ""}, "Say where it is, in at most 200 letters."),
        ({"where": "x" * 201}, "Say where it is, in at most 200 letters."),
        ({"words": "x" * 1001}, "At most 1000 letters fit here."),
        ({"phone": "1" * 41}, "At most 40 letters fit here."),
    ):
        page = report(stranger, **said)
        assert page.status_code == 422
        assert fault in words_of(page)
        assert all(one in page.text for one in (SAID | said).values())


def test_a_megabyte_of_text_is_refused_kindly(client: FlaskClient, stranger: FlaskClient) -> None:
    """And nothing of it is kept."""
    page = report(stranger, words="x" * 1024 * 1024)
    assert page.status_code == 413
    assert "say it in fewer words" in words_of(page)
    assert client.get("/api/containers/117").status_code == 404


def test_form_of_another_site_is_not_taken(client: FlaskClient, stranger: FlaskClient) -> None:
    for headers in (
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "none"},
        {"Origin": "https://elsewhere.example"},
        {"Origin": "null"},
    ):
        page = stranger.post("/f/117", data=SAID, headers=headers)
        assert page.status_code == 403
        assert "another site" in words_of(page)
    assert client.get("/api/containers/117").status_code == 404


def test_old_browser_says_where_a_form_comes_from(stranger: FlaskClient) -> None:
    """One without Sec-Fetch-Site: with no-referrer it would send "null" as its Origin."""
    assert stranger.get("/f/117").headers["Referrer-Policy"] == "same-origin"
    sent = stranger.post("/f/117", data=SAID, headers={"Origin": "http://localhost"})
    assert sent.status_code == 303


def test_reports_from_one_address_are_counted(stranger: FlaskClient) -> None:
    """Those of others are taken all the while; the page says to wait."""
    assert [report(stranger).status_code for _ in range(6)] == [303] * 5 + [429]
    page = report(stranger)
    assert int(page.headers["Retry-After"]) > 0
    assert "Wait a minute" in words_of(page)
    elsewhere = {"REMOTE_ADDR": "203.0.113.7"}
    other = stranger.post("/f/117", data=SAID, headers=OURS, environ_overrides=elsewhere)
    assert other.status_code == 303


def test_pages_asked_for_from_one_address_are_counted(stranger: FlaskClient) -> None:
    found = [stranger.get("/f/117").status_code for _ in range(61)]
    assert found == [200] * 60 + [429]


def test_page_runs_nothing_and_is_kept_nowhere(stranger: FlaskClient) -> None:
    page = stranger.get("/f/117")
    policy = page.headers["Content-Security-Policy"]
    assert policy.startswith("default-src 'none'; style-src 'self'; ")
    assert "script-src" not in policy
    assert page.headers["Cache-Control"] == "no-store"
    assert page.headers["X-Robots-Tag"] == "noindex"
    assert not read(page).elements & {"script", "style", "img"}
    [address] = re.findall('rel="stylesheet" href="([^"]+)"', page.text)
    style = stranger.get(address)
    assert style.mimetype == "text/css"
    assert "immutable" in style.headers["Cache-Control"]


def test_what_a_finder_leaves_is_told_to_whoever_asks_for_the_history(
    client: FlaskClient, stranger: FlaskClient
) -> None:
    """With who said so, and when."""
    report(stranger)
    answer: Any = client.get("/api/containers/117")
    [entry] = answer.json["entries"]
    assert (entry["kind"], entry["person"]) == ("reported", "a finder")
    assert entry["facts"] == SAID
