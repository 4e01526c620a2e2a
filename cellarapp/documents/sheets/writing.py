"""Writes a sheet as CSV, as it can be brought in again; what is known besides stands after it."""

import csv
import io
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from cellarapp.documents.sheets.cells import DAYS
from cellarapp.documents.sheets.table import FORMULA_BEGINS
from cellarapp.domain.calendar import london_date
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.standing import Standing

Rows = Mapping[str, Mapping[str, Any]]
"""Everything on record: by type of row, then by id."""

AT_THE_BREWERY = "brewery"


def write_sheet(kind: str, rows: Rows) -> str:
    """The sheet of a kind, a key of SHEETS. Text never begins as an office program's formula."""
    written = io.StringIO(newline="")
    heading, lines = WRITERS[kind]
    writer = csv.writer(written)
    writer.writerow(heading)
    writer.writerows([_harmless(cell) for cell in line] for line in lines(rows))
    return written.getvalue()


def _harmless(cell: object) -> str:
    """A cell as text; a name such as "=1+1" stays a name when the file is opened."""
    text = "" if cell is None else str(cell)
    return f"'{text}" if isinstance(cell, str) and text.startswith(FORMULA_BEGINS) else text


def _plain(number: int | None, per: int) -> float | int | None:
    if number is None:
        return None
    return number // per if number % per == 0 else number / per


def _containers(rows: Rows) -> Iterator[list[object]]:
    for number, standing in rows["container"].items():
        kind = standing["kind"]
        yield [
            number,
            None if kind is None else CONTAINER_KINDS[kind]["name"],
            _plain(standing["capacity_ml"], 1000),
            _plain(standing["tare_g"], 1000),
            _plain(standing["limit_millibar"], 1000),
            standing["owner"],
            _where(standing, rows),
            _since(standing["trip"]),
            *_inside(standing, rows),
            None if standing["held"] is None else standing["held"]["state"].replace("_", " "),
        ]


def _where(standing: Standing, rows: Rows) -> str | None:
    place = standing["place"]
    if place is None or place["at"] == AT_THE_BREWERY:
        return None if place is None else "In the brewery"
    return _name(rows["customer" if place["with_customer"] else "place"], place["at"])


def _inside(standing: Standing, rows: Rows) -> list[object]:
    contents = standing["contents"]
    if contents is None:
        return [None] * 5
    gyle = rows["gyle"].get(contents["gyle"], {"fields": {}})["fields"]
    return [
        _name(rows["beer"], gyle.get("beer", "")),
        gyle.get("number"),
        _since(contents),
        contents["best_before"],
        _plain(contents["left_ml"], 1000),
    ]


def _customers(rows: Rows) -> Iterator[list[object]]:
    for record in rows["customer"].values():
        fields = record["fields"]
        if fields.get("retired"):
            continue
        day = fields.get("delivery_day")
        yield [
            fields.get("name"),
            fields.get("contact"),
            fields.get("phone"),
            None if day is None else DAYS[day].capitalize(),
            fields.get("agreed_days"),
        ]


def _out(rows: Rows) -> Iterator[list[object]]:
    for number, standing in rows["container"].items():
        trip = standing["trip"]
        if trip is not None:
            customer = _name(rows["customer"], trip["customer"])
            yield [number, customer, _since(trip), trip["due_on"]]


def _since(mark: Any) -> str | None:
    return None if mark is None else london_date(mark["since"])


def _name(records: Mapping[str, Any], key: str) -> str | None:
    record = records.get(key)
    return None if record is None else record["fields"].get("name")


WRITERS: dict[str, tuple[list[str], Callable[[Rows], Iterator[list[object]]]]] = {
    "containers": (
        [
            *("Number", "Kind", "Litres", "Empty weight kg", "Pressure limit bar", "Owner"),
            *("Where", "Out since", "Holds beer", "Gyle", "Racked", "Best before", "Left litres"),
            "Kept out of use",
        ],
        _containers,
    ),
    "customers": (["Name", "Contact", "Phone", "Delivery day", "Days to return"], _customers),
    "out": (["Number", "Customer", "Sent on", "Due back"], _out),
}
TYPES = ("container", "customer", "beer", "gyle", "place")
"""The types of rows that the sheets are written from."""
