"""The calendar: read by another library, from a ledger whose jobs are known by hand."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from freezegun import freeze_time
from icalendar import Calendar

from cellarapp.accounts.people import Given, change, everybody
from cellarapp.accounts.principal import find_principal
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.work import reading

from ..making import NOW, Phone, batch, made_id
from ..signed_in import client_of, owners_cookie

GYLE, BEER, LANTERN = made_id("gyle 1"), made_id("beer"), made_id("Lantern")
LONG_AGO = "2026-11-06T09:00:00.000Z"
TRICKY = "Łódź; Ember, “the\nlong one”" + " that goes on and on" * 4


@pytest.fixture
def noon() -> Iterator[None]:
    with freeze_time(NOW):
        yield


@pytest.fixture
def phone(app: Flask, noon: None) -> Phone:
    """101 and 102 condition, 103 is picked for Saturday, 104 and 105 are out and 105 is late."""
    phone = Phone()
    filled = {"best_before": "2026-12-24", "at": "2026-11-23T10:00:00.000Z"}
    due = {"104": "2026-12-04", "105": "2026-11-20"}
    take_in(
        batch(
            [
                phone.entry("brewery", "brewery", name="Sallowick Brewery"),
                phone.entry("beer", BEER, name="Ember", abv_tenths=38, conditioning_days=7),
                phone.entry("gyle", GYLE, number="0412", beer=BEER),
                phone.entry("customer", LANTERN, name="Lantern"),
                *(phone.filled(n, **filled) for n in ("101", "102")),
                phone.filled("103", at="2026-11-10T10:00:00.000Z"),
                phone.entry("planned", "103", sale_at="2026-11-28T13:00:00.000Z"),
                *(phone.filled(n, at="2026-10-01T10:00:00.000Z") for n in due),
                *(
                    phone.entry("sent", n, at=LONG_AGO, customer=LANTERN, due_on=day)
                    for n, day in due.items()
                ),
                phone.entry("chased", LANTERN, promised_on="2026-11-27"),
            ]
        )
    )  # fmt: skip
    return phone


def address(client: FlaskClient) -> str:
    made = client.post("/api/calendar", json={}).get_json()
    assert made["address"].startswith("http")
    path: str = made["address"].partition("/api/")[2]
    return f"/api/{path}"


def events(data: bytes) -> dict[str, Any]:
    """By their titles."""
    found = Calendar.from_ical(data).walk("VEVENT")
    assert len({str(one["uid"]) for one in found}) == len(found)
    return {str(one["summary"]): one for one in found}


def read(client: FlaskClient, path: str = "") -> bytes:
    answer = client.get(path or address(client))
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "text/calendar; charset=utf-8"
    return answer.data


def test_every_kind_of_job_is_there(client: FlaskClient, phone: Phone) -> None:
    """DUE-1 to DUE-6; seven days after the 23rd it is ready, by hand."""
    found = events(read(client))
    days = {title: one.decoded("dtstart") for title, one in found.items()}
    assert days["Ready: Ember, gyle 0412 (2 containers)"] == date(2026, 11, 30)
    assert days["Best before: Ember, gyle 0412 (2 containers)"] == date(2026, 12, 24)
    assert days["Collect at Lantern: 1 container"] in (date(2026, 12, 4), date(2026, 11, 20))
    assert days["Promised by Lantern"] == date(2026, 11, 27)
    vent = next(one for title, one in found.items() if title.startswith("Vent"))
    assert vent["summary"] == "Vent with a soft spile: 103, Ember, gyle 0412"
    assert NOW < vent.decoded("dtstart") < datetime(2026, 11, 28, 13, tzinfo=UTC)
    ready = found["Ready: Ember, gyle 0412 (2 containers)"]
    assert ready["description"] == "Mon 30 Nov: 101, 102."
    assert ready["transp"] == "TRANSPARENT"


def test_jobs_are_those_of_the_cellars_plan(client: FlaskClient, phone: Phone) -> None:
    """DUE-4: as the calculation says that the phone shows."""
    asked = {
        "now": "2026-11-25T12:00:00.000Z", "sale_at": "2026-11-28T13:00:00.000Z",
        "casks": [{"number": "103", "filled_at": "2026-11-10T10:00:00.000Z", "holds_ml": 40_000,
                   "conditioning_days": 7,
                   "stays": [{"since_at": "2026-11-10T10:00:00.000Z"}], "readings": []}],
    }  # fmt: skip
    answer = client.post("/api/calculations/plan_back", json={"inputs": asked}).get_json()
    jobs = answer["result"]["casks"][0]["jobs"]
    planned = {job["says"]: datetime.fromisoformat(job["do_at"]) for job in jobs}
    walked = Calendar.from_ical(read(client)).walk("VEVENT")
    timed = [one for one in walked if isinstance(one.decoded("dtstart"), datetime)]
    assert {str(one["description"]): one.decoded("dtstart") for one in timed} == planned
    assert len(planned) >= 4


def test_it_reads_as_the_standard_wants_it(client: FlaskClient, phone: Phone) -> None:
    """RFC 5545 3.1, 3.6.1: lines of 75 octets, CRLF, and UID and DTSTAMP in every event."""
    take_in(batch([phone.entry("beer", BEER, name=TRICKY[:60])]))
    data = read(client)
    lines = data.split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert b"\n" not in data.replace(b"\r\n", b"")
    calendar = Calendar.from_ical(data)
    assert calendar["version"] == "2.0"
    assert calendar["x-wr-calname"] == "Sallowick Brewery: jobs due"
    assert b"REFRESH-INTERVAL;VALUE=DURATION:PT4H" in data
    for event in calendar.walk("VEVENT"):
        assert event.decoded("dtstamp") == datetime(2026, 11, 25, 9, tzinfo=UTC)
    assert any(TRICKY[:60] in title for title in events(data))


def test_a_job_that_moves_keeps_its_name(client: FlaskClient, phone: Phone) -> None:
    """RFC 5545 3.8.4.7: else it would stand twice in whatever calendar reads it."""
    path = address(client)
    title = "Ready: Ember, gyle 0412 (2 containers)"
    before = events(read(client, path))
    again = read(client, path)
    assert again == read(client, path)
    take_in(batch([phone.entry("beer", BEER, conditioning_days=14)]))
    after = events(read(client, path))
    assert after[title]["uid"] == before[title]["uid"]
    assert after[title].decoded("dtstart") - before[title].decoded("dtstart") == timedelta(days=7)


def test_what_is_done_is_no_longer_due(client: FlaskClient, phone: Phone) -> None:
    """Back in the yard, a container is neither to be collected nor promised."""
    path = address(client)
    take_in(batch([phone.entry("returned", n) for n in ("104", "105")]))
    assert not [t for t in events(read(client, path)) if t.startswith(("Collect", "Promised"))]


def test_what_was_sent_after_a_promise_is_none_of_it(client: FlaskClient, phone: Phone) -> None:
    """DUE-6: and a promise of which nothing is left out is kept."""
    path = address(client)
    later = {"at": "2026-11-25T10:00:00.000Z", "customer": LANTERN, "due_on": None}
    take_in(batch([phone.entry("sent", "101", **later), phone.entry("returned", "104")]))
    promised = events(read(client, path))["Promised by Lantern"]
    assert promised["description"] == "Out there: 105."
    take_in(batch([phone.entry("returned", "105")]))
    assert "Promised by Lantern" not in events(read(client, path))


HIRED_ON = {"owner": "Wold Casks", "hire": {"pence_a_day": 15, "due_on": "2026-12-09"}}


def test_hired_ones_are_due_back_and_warned_of_before(client: FlaskClient, phone: Phone) -> None:
    """DUE-7: on the day, and as long before as Out warns: a fortnight, or what is set."""
    path = address(client)
    take_in(
        batch(
            [
                *(phone.registered(number, **HIRED_ON) for number in ("512", "98")),
                phone.entry("sent", "512", customer=LANTERN, due_on=None),
            ]
        )
    )
    found = events(read(client, path))
    due = found["Due back at Wold Casks: 2 hired containers"]
    warned = found["Due back at Wold Casks on Wed 9 Dec: 2 hired containers"]
    assert due.decoded("dtstart") == date(2026, 12, 9)
    assert warned.decoded("dtstart") == date(2026, 11, 25)
    assert due["description"] == warned["description"] == "98 at the brewery. 512 at Lantern."
    take_in(batch([phone.entry("setting", "hire_warn_days", value_millionths=3_000_000)]))
    title = str(warned["summary"])
    sooner = events(read(client, path))[title]
    assert (sooner["uid"], sooner.decoded("dtstart")) == (warned["uid"], date(2026, 12, 6))


def test_hired_ones_that_went_back_are_no_job(client: FlaskClient, phone: Phone) -> None:
    """DUE-7: with its owner, or scrapped, nobody brings it in."""
    path, owner = address(client), made_id("Wold Casks")
    take_in(batch([phone.registered(number, **HIRED_ON) for number in ("512", "K98", "99")]))
    gone = [
        phone.entry("customer", owner, name="wold casks "),
        phone.entry("sent", "512", customer=owner, due_on=None),
        phone.entry("scrapped", "99"),
    ]
    take_in(batch(gone))
    found = events(read(client, path))
    assert "Due back at Wold Casks on Wed 9 Dec: hired container K98" in found
    take_in(batch([phone.entry("sent", "K98", customer=owner, due_on=None)]))
    assert not [title for title in events(read(client, path)) if "Wold" in title]


@pytest.mark.parametrize(("days", "shown"), [(5, True), (30, True), (31, False)])
def test_what_is_long_late_is_left_out(
    client: FlaskClient, phone: Phone, days: int, shown: bool
) -> None:
    """DUE-1: 105 was due on 20 November; thirty days later nobody needs a calendar for it."""
    with freeze_time(datetime(2026, 11, 20, 12, tzinfo=UTC) + timedelta(days=days)):
        found = Calendar.from_ical(read(client)).walk("VEVENT")
    days_due = [one.decoded("dtstart") for one in found if "Collect" in str(one["summary"])]
    assert (date(2026, 11, 20) in days_due) is shown


def test_an_empty_brewery_has_an_empty_calendar(client: FlaskClient) -> None:
    assert Calendar.from_ical(read(client)).walk("VEVENT") == []


def test_nobody_needs_to_sign_in_and_nothing_else_is_opened(
    app: Flask, client: FlaskClient, phone: Phone
) -> None:
    """Calendar programs cannot; the address is long enough that nobody guesses it."""
    path, stranger = address(client), app.test_client()
    assert read(stranger, path) == read(client, path)
    assert len(path.removeprefix("/api/calendar/").removesuffix(".ics")) == 43
    assert stranger.get("/api/calendar").status_code == 401


def test_another_address_ends_the_one_before(client: FlaskClient, phone: Phone) -> None:
    first = address(client)
    second = address(client)
    assert client.get(first).status_code == 404
    assert client.get(second).status_code == 200
    assert client.get("/api/calendar").get_json() == {"made_at": "2026-11-25T12:00:00.000Z"}
    assert client.post("/api/calendar/end", json={}).status_code == 204
    assert client.get(second).status_code == 404
    assert client.get("/api/calendar").get_json() == {"made_at": None}


@pytest.mark.parametrize("forged", ["x", "A" * 43, "A" * 5000, "%00", "..%2f"])
def test_a_forged_address_is_none(client: FlaskClient, forged: str) -> None:
    address(client)
    answer = client.get(f"/api/calendar/{forged}.ics")
    assert (answer.status_code, answer.mimetype) == (404, "application/problem+json")


@pytest.mark.parametrize("given", [Given(retired=True), Given(role="driver")])
def test_an_address_ends_with_the_work_in_the_cellar(app: Flask, given: Given) -> None:
    """Whoever leaves, or drives from now on, reads no more of it."""
    path = address(client_of(app, "cellar"))
    stranger = app.test_client()
    assert stranger.get(path).status_code == 200
    owner = find_principal(owners_cookie())
    [person] = [one for one in everybody() if one.role == "cellar"]
    change(owner, person.id, given, datetime.now(UTC))
    assert stranger.get(path).status_code == 404


def test_reading_too_often_is_stopped(client: FlaskClient) -> None:
    """Twenty times in a minute from one address."""
    path = address(client)
    answers = [client.get(path) for _ in range(21)]
    assert [one.status_code for one in answers] == [200] * 20 + [429]
    assert int(answers[-1].headers["Retry-After"]) > 0


def test_of_the_address_only_a_hash_is_kept(client: FlaskClient) -> None:
    """Whoever reads the database or the record of who did what has no address by it."""
    secret = address(client).removeprefix("/api/calendar/").removesuffix(".ics")
    owner = find_principal(client.get_cookie("__Host-cellar").value)  # type: ignore[union-attr]
    with reading() as work:
        kept = work.calendars.of_person(owner.person.id)
        noted = [one.about for one in work.audit.before(None, 10)]
    assert kept is not None
    assert secret not in kept.secret
    assert secret not in "".join(noted)
