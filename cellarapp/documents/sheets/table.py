"""A file as a table of text: CSV in whatever form an office program writes it, or a workbook."""

import csv
import io
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from xml.etree.ElementTree import ParseError

from openpyxl import load_workbook  # type: ignore[import-untyped]
from openpyxl.utils.exceptions import InvalidFileException  # type: ignore[import-untyped]

MOST_ROWS = 5000
"""A phone records them in one go and then passes them on: 5,000 within seconds. Of 50,000 a fast
machine had passed on a quarter after two minutes."""
MOST_COLUMNS = 50
MOST_UNPACKED_BYTES = 50 * 1024 * 1024
"""A workbook is a packed file; one that unpacks to more than this is not a list of casks."""

WORKBOOK_BEGINS = b"PK\x03\x04"
OLD_WORKBOOK_BEGINS = b"\xd0\xcf\x11\xe0"
FORMULA_BEGINS = ("=", "+", "-", "@", "\t", "\r")
"""What an office program takes for a formula; we write an apostrophe before text like that."""
SEPARATORS = ",;\t"


class SheetNotReadable(Exception):
    """Nothing can be made of the file; the message says why and what to do."""


@dataclass(frozen=True, slots=True)
class Line:
    """One row with something in it. `number` is the one that the office program shows."""

    number: int
    cells: list[str]


@dataclass(frozen=True, slots=True)
class Table:
    """The headings, and the rows under them."""

    headings: list[str]
    lines: list[Line]


def read_table(data: bytes) -> Table:
    """Read a file. Raises: SheetNotReadable."""
    if not data.strip():
        raise SheetNotReadable("The file is empty.")
    if data.startswith(OLD_WORKBOOK_BEGINS):
        raise SheetNotReadable(
            "This is a workbook of the old kind (.xls). Save it as .xlsx or as CSV and try again."
        )
    rows = _workbook(data) if data.startswith(WORKBOOK_BEGINS) else _csv(data)
    lines = [Line(number, list(map(_as_meant, cells))) for number, cells in rows if any(cells)]
    if len(lines) < 2:
        raise SheetNotReadable(
            "The first row must hold the headings, and the rows under it one thing each; "
            "there is nothing under the headings."
        )
    return Table(lines[0].cells, lines[1:])


def _as_meant(cell: str) -> str:
    """Without the apostrophe of a list that we gave out."""
    return cell[1:] if cell[:1] == "'" and cell[1:].startswith(FORMULA_BEGINS) else cell


def _bounded(rows: Iterator[list[str]]) -> Iterator[tuple[int, list[str]]]:
    for number, cells in enumerate(rows, start=1):
        if number > MOST_ROWS + 1:
            raise SheetNotReadable(
                f"The file has more than {MOST_ROWS:,} rows. Split it into files of at most so "
                "many, each with the headings in its first row, and bring them in one by one."
            )
        if len(cells) > MOST_COLUMNS:
            raise SheetNotReadable(f"Row {number} has more than {MOST_COLUMNS} columns.")
        yield number, cells


def _csv(data: bytes) -> Iterator[tuple[int, list[str]]]:
    text = _decoded(data)
    first = text.split("\n", 1)[0]
    separator = max(SEPARATORS, key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    try:
        yield from _bounded([cell.strip() for cell in row] for row in reader)
    except csv.Error as fault:
        raise SheetNotReadable(
            f"Line {reader.line_num} cannot be read: {fault}. Look for a stray quotation mark."
        ) from fault


def _decoded(data: bytes) -> str:
    """The text, line by line: a file put together from two programs may be in two encodings."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return data.decode("utf-16")
        except UnicodeDecodeError as fault:
            raise SheetNotReadable("The file is cut off. Save it again and try anew.") from fault
    if b"\x00" in data:
        raise SheetNotReadable("This is not a list. Save it as CSV or as .xlsx and try again.")
    lines = data.removeprefix(b"\xef\xbb\xbf").split(b"\n")
    return "\n".join(_line_decoded(line) for line in lines)


def _line_decoded(line: bytes) -> str:
    try:
        return line.decode("utf-8")
    except UnicodeDecodeError:
        # What a British office program writes when it does not write UTF-8.
        return line.decode("cp1252", errors="replace")


def _workbook(data: bytes) -> Iterator[tuple[int, list[str]]]:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            if sum(part.file_size for part in packed.infolist()) > MOST_UNPACKED_BYTES:
                raise SheetNotReadable("The workbook is too large. Save the one list as CSV.")
        book = load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        rows = book.worksheets[0].iter_rows(values_only=True)
        yield from _bounded([_written(cell) for cell in row] for row in rows)
    except (zipfile.BadZipFile, InvalidFileException, KeyError, IndexError, ParseError) as fault:
        raise SheetNotReadable(
            "The workbook cannot be opened. Save it again as .xlsx, or as CSV, and try anew."
        ) from fault


def _written(cell: object) -> str:
    """A cell as a person would write it: 117 for 117.0, a date as 2026-11-25."""
    if cell is None:
        return ""
    if isinstance(cell, datetime):
        return cell.date().isoformat()
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()
