"""LOG: the cells of a logger's lines, and which of them hold the time and the temperature."""

import re
from typing import NamedTuple

from cellarapp.domain.cellar.log_times import offset_of, written_time

MOST_HEAD_LINES = 30
AROUND = re.compile("^[ \\t\u00a0\ufeff]+|[ \\t\u00a0\ufeff]+$")
NUMBER = re.compile("([+-]?[0-9]{1,6}(?:[.,][0-9]{1,9})?)[ ]*(?:\u00b0?[ ]*([CcFf]))?")
FEW_DIGITS = re.compile("[0-9]{1,2}")
TIME_HEAD = re.compile(
    "(date|time|timestamp|date[ /_-]?time|when)([^a-z]|$)", re.IGNORECASE | re.ASCII
)
DATE_HEAD = re.compile("date(?![ /_-]?time)", re.IGNORECASE | re.ASCII)
CLOCK_HEAD = re.compile("time([^a-z]|$)", re.IGNORECASE | re.ASCII)
ZONE_HEAD = re.compile("(?:UTC|GMT)[ ]*([+-][0-9]{2}:?[0-9]{2})?", re.IGNORECASE | re.ASCII)
TEMP_HEAD = re.compile("temp|celsius|fahrenheit|\u00b0[ ]*[CF]|^[CF]$", re.IGNORECASE | re.ASCII)
IN_F = re.compile("fahrenheit|\u00b0[ ]*F|[(][ ]*F[ ]*[)]|^F$", re.IGNORECASE | re.ASCII)
IN_C = re.compile("celsius|\u00b0[ ]*C|[(][ ]*C[ ]*[)]|^C$", re.IGNORECASE | re.ASCII)


class Columns(NamedTuple):
    """Where the cells of a line stand, and what the head says of them.

    `clock` is apart from `time` where the date has its own column; `most` is how many cells a line
    may have where a comma parts them and may also stand in a number.
    """

    time: int
    clock: int | None
    temp: int
    unit: str | None
    offset_ms: int | None
    most: int | None


def cells_of(line: str, between: str) -> list[str]:
    """The cells of a line, without the blanks and quotes around them."""
    found: list[str] = []
    cell, quoted = "", False
    for sign in line:
        if sign == '"':
            quoted = not quoted
        elif sign == between and not quoted:
            found.append(AROUND.sub("", cell))
            cell = ""
        else:
            cell += sign
    return [*found, AROUND.sub("", cell)]


def parted_by(lines: list[str]) -> str:
    """What stands between the cells: the first of these that any of the first lines has."""
    head = lines[:MOST_HEAD_LINES]
    return next((sign for sign in ";\t" if any(sign in line for line in head)), ",")


def headed(cells: list[str], between: str) -> Columns | None:
    """The columns by their heads; None where the line is no head."""
    times = [n for n, cell in enumerate(cells) if TIME_HEAD.match(cell)]
    temps = [n for n, cell in enumerate(cells) if TEMP_HEAD.search(cell) and n not in times]
    if not times or not temps:
        return None
    dates = [n for n in times if DATE_HEAD.match(cells[n])]
    clocks = [n for n in times if CLOCK_HEAD.match(cells[n])]
    apart = bool(dates and clocks)
    time, head = dates[0] if apart else times[0], cells[temps[0]]
    zone = ZONE_HEAD.search(cells[clocks[0] if apart else time])
    return Columns(
        time=time,
        clock=clocks[0] if apart else None,
        temp=temps[0],
        unit="F" if IN_F.search(head) else "C" if IN_C.search(head) else None,
        offset_ms=offset_of(zone[1] or "Z") if zone else None,
        most=len(cells) if between == "," else None,
    )


def guessed(cells: list[str], between: str) -> Columns | None:
    """The columns by what stands in them: a time, and the next number after it.

    A whole number with one or two digits behind a comma may be one number or two: not guessed.
    """
    for n, cell in enumerate(cells):
        apart = n + 1 < len(cells) and written_time(f"{cell} {cells[n + 1]}") is not None
        if not apart and written_time(cell) is None:
            continue
        for temp in range(n + 2 if apart else n + 1, len(cells)):
            if NUMBER.fullmatch(cells[temp]):
                follows = cells[temp + 1] if temp + 1 < len(cells) else ""
                if between == "," and "." not in cells[temp] and FEW_DIGITS.fullmatch(follows):
                    return None
                clock = n + 1 if apart else None
                return Columns(n, clock, temp, None, None, len(cells) if between == "," else None)
    return None


def columns_of(lines: list[str], between: str) -> tuple[Columns, int] | None:
    """LOG-3: the columns, and the number of lines before the first that holds a reading."""
    head = [cells_of(line, between) for line in lines[:MOST_HEAD_LINES]]
    for n, cells in enumerate(head):
        found = headed(cells, between)
        if found:
            return found, n + 1
    for n, cells in enumerate(head):
        found = guessed(cells, between)
        if found:
            return found, n
    return None
