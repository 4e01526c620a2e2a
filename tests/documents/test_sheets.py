"""A brewery's own lists: read as they come out of office programs, wrong cells named."""

import io
from collections.abc import Iterable
from datetime import UTC, date, datetime
from typing import Any

import pytest
from openpyxl import Workbook  # type: ignore[import-untyped]

from cellarapp.documents.sheets import SHEETS, Known, SheetNotReadable, known_from, read_sheet
from cellarapp.domain.fold import fold

NOW = "2026-03-20T18:00:00.000Z"
NOTHING = known_from(NOW, {}, {})
MITRE = "0192f000-0000-7000-8000-000000000001"
CUSTOMERS = {MITRE: {"fields": {"name": "The Mitre", "agreed_days": 28}, "set_by": {}}}
WITH_MITRE = known_from(NOW, {}, CUSTOMERS)


def read(kind: str, text: str | bytes, known: Known = NOTHING) -> Any:
    data = text if isinstance(text, bytes) else text.encode()
    return read_sheet(SHEETS[kind], data, known)


def workbook(rows: Iterable[Iterable[object]]) -> bytes:
    book = Workbook()
    for row in rows:
        book.active.append(list(row))
    packed = io.BytesIO()
    book.save(packed)
    return packed.getvalue()


def subjects(reading: Any) -> list[str]:
    return [draft["subject"] for draft in reading.drafts]


CASKS = [["Number", "Kind", "Litres", "Empty weight kg", "Working pressure", "Owner"]]
CASKS += [["f 117", "Firkins", "", "10.5", "", ""]]
CASKS += [["K3", "keg 50 L", "50", "", "3.5 bar", "Hire yard"]]


@pytest.mark.parametrize(
    "data",
    [
        *("\n".join(mark.join(row) for row in CASKS).encode() for mark in ",;\t"),
        "\r\n".join(",".join(row) for row in CASKS).encode("utf-8-sig"),
        "\n".join("\t".join(row) for row in CASKS).encode("utf-16"),
        workbook(CASKS),
    ],
)
def test_containers_from_any_office_program(data: bytes) -> None:
    reading = read("containers", data)
    assert reading.faults == []
    assert reading.drafts == [
        {
            "kind": "registered",
            "subject": "F117",
            "facts": {"kind": "firkin", "capacity_ml": 40915, "tare_g": 10500},
        },
        {
            "kind": "registered",
            "subject": "K3",
            "facts": {
                "kind": "keg_50",
                "capacity_ml": 50000,
                "limit_millibar": 3500,
                "owner": "Hire yard",
            },
        },
    ]


def test_columns_in_any_order_and_strange_ones_named() -> None:
    """What is not understood is said, and stops nothing."""
    reading = read("containers", "Colour,TYPE,cask no.,Cask\nred,pin,,P1\n")
    assert subjects(reading) == ["P1"]
    assert reading.not_used == ["Colour", "cask no."]


def test_lines_in_two_encodings() -> None:
    """A list that was put together from two programs."""
    rows = [b"Name,Contact", "Café Noir,Zoë".encode(), "Auberge Doré,René".encode("cp1252")]
    reading = read("customers", b"\n".join(rows))
    assert [draft["facts"]["name"] for draft in reading.drafts] == ["Café Noir", "Auberge Doré"]
    assert reading.drafts[1]["facts"]["contact"] == "René"


@pytest.mark.parametrize(
    ("kind", "text", "column", "part"),
    [
        (
            "containers",
            "Number,Kind\nseven,firkin",
            "Number",
            "“seven” is not a container's number",
        ),
        ("containers", "Number,Kind\n7,bucket", "Kind", "Write one of: Pin"),
        ("containers", "Number,Kind\n7,", "Kind", "missing"),
        ("containers", "Number,Kind\n7,other cask", "Number", "How many litres"),
        ("containers", "Number,Kind,Litres\n7,pin,0", "Litres", "from 0.001"),
        ("containers", "Number,Kind,Litres\n7,pin,lots", "Litres", "not a figure"),
        ("containers", "Number,Kind,Litres\n7,pin,NaN", "Litres", "not a figure"),
        (
            "containers",
            "Number,Kind,Litres,Limit\n7,keg 30,30,11",
            "Pressure limit bar",
            "from 0.1 to 10",
        ),
        (
            "containers",
            "Number,Kind,Litres,Limit\n7,keg 30,30,0",
            "Pressure limit bar",
            "from 0.1 to 10",
        ),
        ("containers", "Number;Kind;Litres\n7;pin;1,000", "Litres", "in two ways"),
        ("customers", "Name,Delivery day\nThe Bell,T", "Delivery day", "not a day of the week"),
        ("customers", "Name,Days to return\nThe Bell,2.5", "Days to return", "whole number"),
        ("customers", f"Name\n{'x' * 61}", "Name", "longer than 60"),
        ("out", "Number,Customer,Sent on\n7,The Bell,1/2/2026", "Number", "no customer “The Bell”"),
        ("out", "Number,Customer,Sent on\n7,The Mitre,2/13/2026", "Sent on", "day, month and year"),
        ("out", "Number,Customer,Sent on\n7,The Mitre,46000", "Sent on", "day, month and year"),
        ("out", "Number,Customer,Sent on\n7,The Mitre,1/1/1999", "Sent on", "from 2000 on"),
        ("out", "Number,Customer,Sent on\n7,The Mitre,21/3/2026", "Number", "after today"),
    ],
)
def test_wrong_cell_is_named_by_row_and_column(
    kind: str, text: str, column: str, part: str
) -> None:
    """And the rows beside it are read."""
    good = {"containers": "8,firkin,40", "customers": "The Bull", "out": "8,The Mitre,1/2/2026"}
    mark = ";" if ";" in text else ","
    reading = read(kind, f"{text}\n\n{good[kind].replace(',', mark)}\n", WITH_MITRE)
    [fault] = reading.faults
    assert (fault.row, fault.column) == (2, column)
    assert part in fault.says
    assert len(reading.drafts) == 1


@pytest.mark.parametrize(
    ("data", "part"),
    [
        (b"", "empty"),
        (b"  \n\n", "empty"),
        (b"Number,Kind\n", "nothing under the headings"),
        (b"No.,Volume\n7,8\n", "none called Kind"),
        (b"\xd0\xcf\x11\xe0old", "old kind"),
        (b"PK\x03\x04cut", "cannot be opened"),
        (b"\x89PNG\r\n\x1a\n\x00", "not a list"),
        (b'Number,Kind\n7,"pin\n', "stray quotation mark"),
        (b"\xff\xfeN", "cut off"),
        (b"Number,Kind\n" + b"7,pin\n" * 5001, "more than 5,000 rows"),
        (b"Number,Kind\n" + b"7,pin\n" * 50_000, "Split it into files of at most so many"),
        (workbook([["Number", "Kind"], *([7, "pin"] for _ in range(5001))]), "more than 5,000"),
        (b"Number,Kind\n" + b"7" + b",pin" * 60, "more than 50 columns"),
    ],
)
def test_file_that_is_no_such_list(data: bytes, part: str) -> None:
    with pytest.raises(SheetNotReadable, match=part):
        read("containers", data)


def test_number_twice_in_a_list() -> None:
    reading = read("containers", "Number,Kind\nf7,pin\nF-7,firkin\n")
    assert subjects(reading) == ["F7"]
    assert [(f.row, f.says) for f in reading.faults] == [(3, "F7 stands in row 2 already.")]


def test_what_is_on_record_is_not_entered_again() -> None:
    """The same file once more has nothing new to say; a contradiction is named."""
    entries = [
        entry(one, n) for n, one in enumerate(read("containers", "Number,Kind\n7,pin").drafts)
    ]
    known = known_from(NOW, {"7": fold("7", entries)}, CUSTOMERS)
    again = read("containers", "Number,Kind\n7,pin\n", known)
    assert (again.drafts, again.faults, again.on_record) == ([], [], 1)
    other = read("containers", "Number,Kind\n7,firkin\n", known)
    assert "on record as a pin already" in other.faults[0].says
    keg = entry(read("containers", "Number,Kind\nK8,50 L keg").drafts[0], 9)
    kegs = known_from(NOW, {"K8": fold("K8", [keg])}, CUSTOMERS)
    [fault] = read("containers", "Number,Kind\nK8,pin\n", kegs).faults
    assert "on record as a 50 L keg already" in fault.says
    same = read("customers", "Name,Days to return\nthe  mitre,28\n", known)
    assert (same.drafts, same.on_record) == ([], 1)
    more = read("customers", "Name,Delivery day\nThe Mitre,thu\n", known)
    assert more.drafts == [{"kind": "customer", "subject": MITRE, "facts": {"delivery_day": 3}}]


def entry(draft: Any, seq: int) -> Any:
    at = draft.get("happened_at", NOW)
    return {
        **draft, "id": f"e{seq}", "device": "d", "seq": seq, "person": "Ash", "rules": 2,
        "happened_at": at, "effective_at": at, "received_at": NOW, "clock": "ok", "position": seq,
    }  # fmt: skip


def test_what_was_out_already_begins_its_trip_in_the_past() -> None:
    """Due by the customer's agreed days; no question why it was sent empty."""
    sheet = workbook([["Number", "Pub", "Sent"], [7, "the mitre", datetime(2026, 1, 31)]])  # noqa: DTZ001
    [draft] = read("out", sheet, WITH_MITRE).drafts
    standing = fold("7", [entry(draft, 1)])
    assert standing["trip"] is not None
    assert standing["trip"]["since"] == "2026-01-31T09:00:00.000Z"
    assert standing["trip"]["due_on"] == "2026-02-28"
    assert standing["trip"]["on_record_since"] == "2026-03-20"
    assert standing["queries"] == []
    known = known_from(NOW, {"7": standing}, CUSTOMERS)
    assert read("out", sheet, known).on_record == 1


def test_what_came_back_since_is_not_sent_out_again() -> None:
    """An old list must not undo what happened."""
    draft = {
        "kind": "washed",
        "subject": "7",
        "facts": {},
        "happened_at": "2026-02-10T09:00:00.000Z",
    }
    known = known_from(NOW, {"7": fold("7", [entry(draft, 1)])}, CUSTOMERS)
    reading = read("out", "Number,Customer,Sent on\n7,The Mitre,31/1/2026\n", known)
    assert reading.drafts == []
    assert "somewhere else since" in reading.faults[0].says


@pytest.mark.parametrize(
    "written",
    [
        "2026-01-31",
        "31/01/2026",
        "31.1.2026",
        "31-1-2026",
        "31/1/26",
        "31 January 2026",
        "31 Jan 2026",
    ],
)
def test_dates_as_people_write_them(written: str) -> None:
    [draft] = read("out", f"Number,Customer,Sent on\n7,The Mitre,{written}", WITH_MITRE).drafts
    assert draft["happened_at"] == "2026-01-31T09:00:00.000Z"


def test_sent_today_is_not_in_the_future() -> None:
    """Before nine in the morning it went out at the latest by now."""
    known = known_from("2026-03-20T07:00:00.000Z", {}, CUSTOMERS)
    text = f"Number,Customer,Sent on\n7,The Mitre,{date(2026, 3, 20):%d/%m/%Y}"
    assert read("out", text, known).drafts[0]["happened_at"] == "2026-03-20T07:00:00.000Z"


def test_drafts_are_what_the_ledger_takes_in(client: Any) -> None:
    """Read over HTTP, pushed as a phone does, and nothing is new afterwards."""
    now = datetime.now(UTC).isoformat()
    for kind, text in [
        ("containers", "Number,Kind\n7,pin\n8,firkin"),
        ("customers", "Name,Phone,Delivery day,Days to return\nThe Mitre,01632 960000,Tue,28"),
        ("out", "Number,Customer,Sent on\n7,The Mitre,31/1/2026"),
    ]:
        reading = client.post(
            f"/api/sheets/{kind}", data=text, content_type="application/octet-stream"
        ).json
        assert reading["faults"] == []
        entries = [pushed(draft, kind, seq) for seq, draft in enumerate(reading["drafts"], 1)]
        asked = {"proto": 1, "app": "t", "sent_at": now, "device": MITRE, "entries": entries}
        results = client.post("/api/push", json=asked).json["results"]
        assert {one["verdict"] for one in results} == {"accepted"}
        again = client.post(
            f"/api/sheets/{kind}", data=text, content_type="application/octet-stream"
        ).json
        assert (again["drafts"], again["on_record"]) == ([], len(entries))


def pushed(draft: Any, kind: str, seq: int) -> Any:
    n = list(SHEETS).index(kind) * 100 + seq
    at = datetime.now(UTC).isoformat()
    return {
        "happened_at": at, **draft, "subject": draft["subject"] or MITRE, "device": MITRE,
        "id": f"0192f000-0000-7000-8000-{n:012d}", "seq": n, "person": "Ash", "rules": 2,
    }  # fmt: skip


@pytest.mark.parametrize(
    ("path", "data", "content_type", "status", "part"),
    [
        ("/api/sheets/casks", b"x", "application/octet-stream", 404, "containers"),
        ("/api/sheets/containers", b"x", "text/csv", 415, "application/octet-stream"),
        ("/api/sheets/containers", b"x", "application/octet-stream", 422, "first row"),
        ("/api/sheets/containers", b"x" * 1048577, "application/octet-stream", 413, "1 MiB"),
    ],
)
def test_what_cannot_be_read_is_a_problem(
    client: Any, path: str, data: bytes, content_type: str, status: int, part: str
) -> None:
    answer = client.post(path, data=data, content_type=content_type)
    assert (answer.status_code, answer.content_type) == (status, "application/problem+json")
    assert part in answer.json["detail"]
