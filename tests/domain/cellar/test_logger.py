"""A logger's file: what it holds, and which lines cannot be read and why."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.errors import NotAmong, OutOfRange

from .asking import ask, result, unhurried


def readings(text: str, **other: Any) -> list[tuple[str, float]]:
    found = result("read_log", text=text, **other)
    assert found["faults"] == []
    return [(each["at"], each["reading_temp_c"]) for each in found["readings"]]


AT_HALF_PAST_TWO = [("2026-03-05T14:30:00.000Z", 12.5)]


@pytest.mark.parametrize(
    "text",
    [
        "Time,Temp\n2026-03-05 14:30,12.5",
        "Time,Temp\r\n2026-03-05T14:30:00Z,12.5\r\n",
        "\ufeffTime;Temp\r05/03/2026 14:30;12,5\r\r",
        "Date,Time,Temp\n05/03/2026,14:30:00,12.5",
        'Plot Title: cellar\n"#","Date Time, GMT+01:00","Temp, °C"\n1,"5/3/26 03:30:00 pm",12.5',
        "#;when;°C;Humidity\n1;5 Mar 2026 14:30;12,5;81",
        "Timestamp (UTC)\tTemperature (°C)\n2026-03-05 14:30\t12.5",
        "Time,Temperature (°F)\n2026-03-05 14:30,54.5",
        "Time,Temp\n2026-03-05 14:30,54.5 F",
        "2026-03-05 14:30,12.5",
        "2026-03-05,14:30,12.5,81",
        "a title\n\n05.03.2026 14:30;12,5",
        "Time,Temp\n2026-03-05T15:30+01:00,12.50 °C",
    ],
)
def test_a_file_of_any_common_form_is_read(text: str) -> None:
    """LOG-3, LOG-4."""
    assert readings(text) == AT_HALF_PAST_TWO


def test_the_unit_is_given_where_the_file_does_not_say() -> None:
    """LOG-4: and a file that does say is believed."""
    assert readings("Time,Temp\n2026-03-05 14:30,54.5", unit="F") == AT_HALF_PAST_TWO
    assert readings("Time,°C\n2026-03-05 14:30,12.5", unit="F") == AT_HALF_PAST_TWO


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("2026-03-05 14:40", "too_few_cells"),
        ("2026-03-05 14:40,12,5", "too_many_cells"),
        ("31/02/2026 14:40,12.5", "no_time"),
        ("03/31/2026 14:40,12.5", "no_time"),
        ("yesterday,12.5", "no_time"),
        ("05/03/2026 24:40,12.5", "no_time"),
        ("05/03/2026 13:40 am,12.5", "no_time"),
        ("1999-12-31 14:40,12.5", "no_time"),
        ("2026-03-05 14:40,warm", "no_temperature"),
        ("2026-03-05 14:40,", "no_temperature"),
        ("2026-03-05 14:40,nan", "no_temperature"),
        ("2026-03-05 14:40,1e3", "no_temperature"),
        ("2026-03-05 14:40,60.5", "temperature_beyond"),
        ("2026-03-05 14:40,-300", "temperature_beyond"),
        ("2026-03-05 14:30,12.6", "time_twice"),
        ("2026-03-29 01:30,12.5", "time_never_was"),
    ],
)
def test_a_line_that_cannot_be_read_says_why_and_where(line: str, why: str) -> None:
    """LOG-4, LOG-5: the lines around it are taken in."""
    found = ask("read_log", text=f"Time,Temp\n2026-03-05 14:30,12.5\n{line}\n")
    assert [(each["line"], each["why"]) for each in found["result"]["faults"]] == [(3, why)]
    assert found["result"]["faults"][0]["says"].startswith("Line 3, ")
    assert len(found["result"]["readings"]) == 1
    assert "log_has_faults" in found["cautions"]


def test_a_decimal_comma_is_not_guessed_between_commas() -> None:
    """LOG-3: 12,5 might be twelve and a half, or twelve and something else."""
    with pytest.raises(NotAmong):
        ask("read_log", text="2026-03-05 14:30,12,5")


# The night of 25 October 2026: 01:10 and 01:50 happen twice.
NIGHT = ["00:50", "01:10", "01:50", "01:10", "01:50", "02:10"]
IN_UTC = ["23:50", "00:10", "00:50", "01:10", "01:50", "02:10"]


@pytest.mark.parametrize("backwards", [False, True])
def test_the_hour_that_happens_twice_is_read_in_order(backwards: bool) -> None:
    """LOG-2: in a file that runs backwards too."""
    lines = [f"2026-10-25 {clock},12" for clock in NIGHT]
    found = readings("\n".join(["Time,Temp", *(reversed(lines) if backwards else lines)]))
    assert [at[11:16] for at, _ in found] == IN_UTC


def test_a_file_with_its_zone_is_not_read_on_a_london_clock() -> None:
    """LOG-2."""
    lines = ["Time (UTC),Temp", *(f"2026-10-25 0{n}:30,12" for n in range(3))]
    assert [at[11:16] for at, _ in readings("\n".join(lines))] == ["00:30", "01:30", "02:30"]


@pytest.mark.parametrize("text", ["", None, 12, ["a"], True])
def test_what_is_no_text_is_refused(text: object) -> None:
    """LOG-6."""
    with pytest.raises(NotAmong) as refused:
        ask("read_log", text=text)
    assert refused.value.facts["field"] == "text"


@pytest.mark.parametrize("text", ["\n\n", "hello", "a,b\n1,2", "Time\n2026-03-05 14:30"])
def test_a_file_without_the_columns_is_refused(text: str) -> None:
    """LOG-3."""
    with pytest.raises(NotAmong) as refused:
        ask("read_log", text=text)
    assert refused.value.facts["choices"] == ["time", "temperature"]


def test_a_file_of_years_is_refused() -> None:
    """LOG-6."""
    with pytest.raises(OutOfRange) as refused:
        ask("read_log", text="\n" * 20_000)
    assert (refused.value.facts["given"], refused.value.facts["high"]) == (20_001, 20_000)


@given(
    st.lists(
        st.tuples(
            st.datetimes().filter(lambda at: 2000 < at.year < 2100),
            st.integers(-300, 600),
        ),
        min_size=1,
        max_size=20,
        unique_by=lambda each: f"{each[0]:%Y-%m-%d %H:%M:%S}",
    )
)
@unhurried
def test_what_is_written_is_read(rows: list[tuple[Any, int]]) -> None:
    """LOG-6: in the order of time."""
    lines = [f"{at:%Y-%m-%d %H:%M:%S}Z,{tenths / 10}" for at, tenths in rows]
    found = readings("\n".join(["Time,Temp", *lines]))
    wanted = [(f"{at:%Y-%m-%dT%H:%M:%S}.000Z", tenths / 10) for at, tenths in rows]
    assert found == sorted(wanted)


@given(st.text(alphabet='0123456789/:-, ;\t"\nTtempdaie°CF.', max_size=200))
@unhurried
def test_any_text_is_read_or_refused(text: str) -> None:
    """LOG-6: each line that holds something is a reading, a fault, or stands before the first."""
    try:
        found = result("read_log", text=f"Time,Temp\n{text}")
    except NotAmong:
        return
    lines = [line for line in text.split("\n") if line.strip(" \t\u00a0\ufeff")]
    assert len(found["readings"]) + len(found["faults"]) == len(lines)
