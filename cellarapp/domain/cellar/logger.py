"""LOG: a temperature logger's file, read line by line; what cannot be read says why and where.

Comma, semicolon or tab between the cells; a decimal comma where the comma does not part cells.
The columns are found by their heads, or else by what stands in them. Times without a zone are read
on a London clock.
"""

from typing import Any, NamedTuple

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.log_columns import (
    AROUND,
    NUMBER,
    Columns,
    cells_of,
    columns_of,
    parted_by,
)
from cellarapp.domain.cellar.log_times import Written, instant_of, written_time
from cellarapp.domain.cellar.times import at_ms
from cellarapp.domain.cellar.units import celsius
from cellarapp.domain.errors import NotAmong, OutOfRange
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import RANGES, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

MOST_LINES = 20_000
MOST_SHOWN = 60
UNITS = ("C", "F")
UNIT_WHY = "The unit of the file, where its head does not say."
FAULTS = {
    "too_few_cells": "it has no cell for the time or the temperature",
    "too_many_cells": "it has more cells than the head; a decimal comma needs other signs between",
    "no_time": "no time can be read in it; the day comes before the month, or the year first",
    "time_never_was": "the clocks leapt over that time in London",
    "no_temperature": "no temperature can be read in it",
    "temperature_beyond": "no thermometer in a brewery shows that temperature",
    "time_twice": "another line has the same time",
}


class Row(NamedTuple):
    """A line that could be read so far."""

    line: int
    text: str
    written: Written
    temp_c: float


def temp_of(cell: str, unit: str) -> float | None:
    """The temperature in a cell, °C to hundredths; a unit beside the number comes first."""
    found = NUMBER.fullmatch(cell)
    if found is None:
        return None
    shown = float(found[1].replace(",", "."))
    return half_up(celsius(shown) if (found[2] or unit).upper() == "F" else shown, 2)


def read_line(line: str, cells: list[str], where: Columns, unit: str, number: int) -> Row | str:
    """LOG-4: a line's reading, or what is wrong with it."""
    if len(cells) <= max(where.time, where.clock or 0, where.temp):
        return "too_few_cells"
    if where.most is not None and len(cells) > where.most:
        return "too_many_cells"
    text = cells[where.time]
    written = written_time(text if where.clock is None else f"{text} {cells[where.clock]}")
    if written is None:
        return "no_time"
    if written.offset_ms is None:
        written = written._replace(offset_ms=where.offset_ms)
    temp_c = temp_of(cells[where.temp], where.unit or unit)
    if temp_c is None:
        return "no_temperature"
    known = RANGES["reading_temp_c"]
    if not known["low"] <= temp_c <= known["high"]:
        return "temperature_beyond"
    return Row(number, line, written, temp_c)


def fault(why: str, line: int, text: str) -> dict[str, Any]:
    """A line that could not be read."""
    shown = text[:MOST_SHOWN]
    says = f'Line {line}, "{shown}": {FAULTS[why]}.'
    return {"line": line, "why": why, "text": shown, "says": says}


def placed(rows: list[Row]) -> tuple[dict[int, float], list[dict[str, Any]]]:
    """LOG-5: rows on the calendar; a file that runs backwards is read from its end."""
    backwards = len(rows) > 1 and rows[0].written.clock_ms > rows[-1].written.clock_ms
    readings: dict[int, float] = {}
    faults: list[dict[str, Any]] = []
    before: int | None = None
    for row in reversed(rows) if backwards else rows:
        time = instant_of(row.written, before)
        if time is None or time in readings:
            why = "time_never_was" if time is None else "time_twice"
            faults.append(fault(why, row.line, row.text))
            continue
        readings[time] = row.temp_c
        before = time
    return readings, faults


def asked_lines(asked: CellarAsked) -> list[str]:
    """The lines of the file, however they end. Raises: NotAmong, OutOfRange."""
    text = asked.given.get("text")
    if not isinstance(text, str) or not text:
        raise NotAmong(
            field="text", given=None if text is None else "not text", choices=["text of a file"],
            why="What the logger wrote.",
        )  # fmt: skip
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if len(lines) > MOST_LINES:
        raise OutOfRange(
            field="text", given=len(lines), low=1, high=MOST_LINES, unit="whole lines",
            why="A file of some months; cut it.",
        )  # fmt: skip
    return [AROUND.sub("", line) for line in lines]


def read_log(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LOG-6: the readings of a logger's file in the order of time, and the lines at fault.

    Asked: text; unit C or F where the file does not say. Twin: static/src/domain/cellar/logger.ts.
    """
    asked, work = CellarAsked(inputs, "text", "unit"), Working(settings)
    lines = asked_lines(asked)
    unit = asked.choice("unit", UNITS, UNIT_WHY) if asked.has("unit") else "C"
    between = parted_by(lines)
    found = columns_of(lines, between)
    if found is None:
        raise NotAmong(
            field="text", given=lines[0][:MOST_SHOWN], choices=["time", "temperature"],
            why="None of the first lines has a column of times and one of temperatures.",
        )  # fmt: skip
    where, first = found
    rows: list[Row] = []
    faults: list[dict[str, Any]] = []
    for number, line in enumerate(lines[first:], first + 1):
        if not line:
            continue
        row = read_line(line, cells_of(line, between), where, unit, number)
        if isinstance(row, Row):
            rows.append(row)
        else:
            faults.append(fault(row, number, line))
    readings, misplaced = placed(rows)
    faults = sorted([*faults, *misplaced], key=lambda each: each["line"])
    work.step("Readings taken in", len(readings), "readings", 0)
    work.step("Lines that could not be read", len(faults), "lines", 0)
    if faults:
        work.caution("log_has_faults")
    return work.done(
        {
            "readings": [
                {"at": at_ms(time), "reading_temp_c": readings[time]} for time in sorted(readings)
            ],
            "faults": faults,
        }
    )
