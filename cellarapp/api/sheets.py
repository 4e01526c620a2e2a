"""A brewery's own lists, in and out.

POST /api/sheets/<kind> says what a list holds, before any of it is recorded; GET
/api/sheets/<kind>.csv gives it out as it stands now.
"""

from dataclasses import asdict
from datetime import UTC, datetime

from flask import Response, json, request
from marshmallow import Schema
from marshmallow.fields import Boolean, Dict, Integer, List, Nested, String

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.bodies import read_file
from cellarapp.api.problems import ProblemError
from cellarapp.documents.sheets import (
    SHEETS,
    TYPES,
    SheetNotReadable,
    known_from,
    read_sheet,
    write_sheet,
)
from cellarapp.domain.calendar import write_instant
from cellarapp.ledger.on_record import on_record

blueprint = Blueprint("sheets", __name__, description="Lists that a brewery brings along")


class ColumnShape(Schema):
    """A column, by its heading."""

    heading = String(required=True)
    required = Boolean(required=True)


class SheetShape(Schema):
    """A kind of sheet."""

    kind = String(required=True)
    title = String(required=True)
    columns = List(Nested(ColumnShape), required=True)


class SheetsAnswer(Schema):
    """The kinds of sheet that can be read."""

    sheets = List(Nested(SheetShape), required=True)


class DraftShape(Schema):
    """An entry as a device may record it. No subject: it is about a new thing."""

    kind = String(required=True)
    subject = String(required=True, allow_none=True)
    facts = Dict(required=True)
    happened_at = String()


class FaultShape(Schema):
    """What is wrong in one cell."""

    row = Integer(required=True)
    column = String(required=True)
    says = String(required=True)


class ReadingAnswer(Schema):
    """What a sheet says. Nothing of it is recorded yet."""

    rows = Integer(required=True)
    drafts = List(Nested(DraftShape), required=True)
    on_record = Integer(required=True)
    faults = List(Nested(FaultShape), required=True)
    not_used = List(String(), required=True)


@blueprint.at("GET", "/api/sheets")
@blueprint.answers(SheetsAnswer, 401, 503)
def get_sheets() -> Response:
    """The kinds of sheet, with the headings each goes by."""
    told = [
        {
            "kind": kind,
            "title": sheet.title,
            "columns": [{"heading": c.heading, "required": c.required} for c in sheet.columns],
        }
        for kind, sheet in SHEETS.items()
    ]
    return answer(json.dumps({"sheets": told}))


@blueprint.at("POST", "/api/sheets/<string:kind>")
@blueprint.reads_file("A CSV file or a workbook (.xlsx), its first row the headings.")
@blueprint.answers(ReadingAnswer, 401, 403, 404, 411, 413, 415, 422, 503)
def post_sheet(kind: str) -> Response:
    """Read a list. Nothing is recorded: the device records the drafts once a person has looked."""
    if kind not in SHEETS:
        raise ProblemError("not-found", f"There is no such list; there are {', '.join(SHEETS)}.")
    data = read_file(request)
    rows = on_record("container", "customer")
    known = known_from(write_instant(datetime.now(UTC)), rows["container"], rows["customer"])
    try:
        reading = read_sheet(SHEETS[kind], data, known)
    except SheetNotReadable as fault:
        raise ProblemError("sheet-not-readable", str(fault)) from fault
    return answer(json.dumps(asdict(reading)))


@blueprint.at("GET", "/api/sheets/<string:kind>.csv")
@blueprint.gives_file(
    "text/csv", "UTF-8 with a byte order mark, for office programs.", 401, 404, 503
)
def get_sheet(kind: str) -> Response:
    """A list as it stands now. Text that would be taken for a formula begins with an apostrophe."""
    if kind not in SHEETS:
        raise ProblemError("not-found", f"There is no such list; there are {', '.join(SHEETS)}.")
    text = write_sheet(kind, on_record(*TYPES))
    response = Response(text.encode("utf-8-sig"), content_type="text/csv; charset=utf-8")
    response.headers["Content-Disposition"] = f'attachment; filename="{kind}.csv"'
    return response
