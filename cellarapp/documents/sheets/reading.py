"""Reads a sheet against what is on record: what is new, what is not, and what is wrong where."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from cellarapp.documents.sheets.cells import CellNotReadable
from cellarapp.documents.sheets.kinds import Column, Draft, Known, Sheet, folded
from cellarapp.documents.sheets.table import Line, SheetNotReadable, Table, read_table


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong in one cell, in words. `row` is as the office program counts."""

    row: int
    column: str
    says: str


@dataclass
class Reading:
    """What a sheet says."""

    rows: int
    drafts: list[Draft] = field(default_factory=list)
    on_record: int = 0
    """Rows that say nothing new."""
    faults: list[Fault] = field(default_factory=list)
    not_used: list[str] = field(default_factory=list)
    """Headings of columns that mean nothing here."""


def read_sheet(sheet: Sheet, data: bytes, known: Known) -> Reading:
    """Read a file as one kind of sheet. Raises: SheetNotReadable."""
    table = read_table(data)
    places, not_used = _placed(sheet, table)
    reading = Reading(len(table.lines), not_used=not_used)
    seen: dict[str, int] = {}
    for line in table.lines:
        row, faults = _read(places, line)
        faults = faults or list(_repeated(sheet, row, line, seen))
        try:
            drafts = [] if faults else sheet.drafts(row, known)
        except CellNotReadable as fault:
            faults = [Fault(line.number, _heading(sheet, sheet.judged), str(fault))]
            drafts = []
        reading.faults += faults
        reading.drafts += drafts
        reading.on_record += not faults and not drafts
    return reading


def _placed(sheet: Sheet, table: Table) -> tuple[dict[int, Column], list[str]]:
    """Which column of the file is which of the sheet's, in whatever order they come."""
    by_heading = {_plain(name): one for one in sheet.columns for name in (one.heading, *one.also)}
    places: dict[int, Column] = {}
    not_used = []
    for at, heading in enumerate(table.headings):
        column = by_heading.get(_plain(heading))
        if column is not None and column not in places.values():
            places[at] = column
        elif heading:
            not_used.append(heading)
    missing = [c.heading for c in sheet.columns if c.required and c not in places.values()]
    if missing:
        raise SheetNotReadable(
            f"The first row must hold the headings; there is none called {' or '.join(missing)}. "
            f"It has: {', '.join(filter(None, table.headings))}."
        )
    return places, not_used


def _plain(heading: str) -> str:
    return re.sub(r"[^a-z]", "", heading.casefold())


def _read(places: dict[int, Column], line: Line) -> tuple[dict[str, Any], list[Fault]]:
    row, faults = {}, []
    for at, column in places.items():
        text = line.cells[at] if at < len(line.cells) else ""
        if not text:
            if column.required:
                faults.append(Fault(line.number, column.heading, "This is missing."))
            continue
        try:
            row[column.key] = column.read(text)
        except CellNotReadable as fault:
            faults.append(Fault(line.number, column.heading, str(fault)))
    return row, faults


def _repeated(
    sheet: Sheet, row: dict[str, Any], line: Line, seen: dict[str, int]
) -> Iterator[Fault]:
    name = folded(row[sheet.once])
    first = seen.setdefault(name, line.number)
    if first != line.number:
        heading = _heading(sheet, sheet.once)
        yield Fault(line.number, heading, f"{row[sheet.once]} stands in row {first} already.")


def _heading(sheet: Sheet, key: str) -> str:
    return next(column.heading for column in sheet.columns if column.key == key)
