"""What the cellar's rules are asked: each field over its whole range, and what people get wrong."""

import re
from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.calendar import write_instant
from cellarapp.domain.cellar import date_mark, lot
from cellarapp.domain.cellar.shelf_life import COUNTED_FROM
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.figures import FIGURES, figure

from .own_values import own_value
from .trade_arguments import WRONG, Fields, Strategy, choice, field, fields, flag

START = datetime(2026, 3, 6, 10, tzinfo=UTC)
CLOCK_CHANGES = [datetime(2026, 3, 29, tzinfo=UTC), datetime(2026, 10, 25, tzinfo=UTC)]


def around(moment: datetime, hours: int) -> Strategy:
    """Times about a moment: on the minute, as people note them, or to the millisecond."""
    minutes = st.integers(-60 * hours, 60 * hours)
    spare = st.sampled_from([0, 0, 0, 1, 30_500, 59_999])
    return st.builds(
        lambda m, ms: write_instant(moment + timedelta(minutes=m, milliseconds=ms)), minutes, spare
    )


ANY_TIMES = st.datetimes(
    datetime(2000, 1, 1),  # noqa: DTZ001
    datetime(2100, 12, 30),  # noqa: DTZ001
    timezones=st.just(UTC),
).map(write_instant)
times = (
    around(START, 24 * 40)
    | around(CLOCK_CHANGES[0], 3)
    | around(CLOCK_CHANGES[1], 3)
    | ANY_TIMES
    | st.sampled_from(["2026-03-06", "2026-03-06T10:00:00Z", "1999-12-31T23:59:59.999Z"])
)
days = (
    st.dates(START.date(), START.date() + timedelta(days=900)).map(str)
    | st.dates(datetime(2000, 1, 1).date(), datetime(2100, 12, 31).date()).map(str)  # noqa: DTZ001
    | st.sampled_from(
        [
            "2026-02-28",
            "2028-02-29",
            "2026-12-31",
            "2026-06-30",
            "2026-02-30",
            "6.3.26",
            "2101-01-01",
        ]
    )
)
marked_days = st.integers(-3, 900).map(lambda n: str(START.date() + timedelta(days=n)))
shapes = choice("cask", "keg")
temps = st.integers(8, 16) | st.floats(9, 15) | st.floats(-30, 60)


@st.composite
def histories(draw: st.DrawFn) -> dict[str, Any]:
    """Stays and readings, mostly in the order of time."""
    found: dict[str, Any] = {}
    moments = st.lists(around(START, 24 * 20), max_size=5)
    order = sorted if draw(st.integers(0, 9)) else list
    if draw(flag):
        found["stays"] = [
            {"since_at": at, "place_temp_c": draw(st.none() | temps)} for at in order(draw(moments))
        ]
    if draw(flag):
        found["readings"] = [
            {"at": at, "reading_temp_c": draw(temps), "of": draw(choice("air", "beer"))}
            for at in order(draw(moments))
        ]
    return found


@st.composite
def casks(draw: st.DrawFn) -> dict[str, Any]:
    """A full container somewhere on its way, as the ledger would tell of it."""
    found: dict[str, Any] = {"filled_at": draw(around(START, 48))} | draw(histories())
    later = around(START + timedelta(days=8), 24 * 7)
    steps = ["stillaged_at", "vented_at", "hard_spile_at", "tapped_at", "tasted_at"]
    gone = steps[: draw(st.integers(0, 8))] if draw(flag) else []
    found |= dict(zip(gone, sorted(draw(later) for _ in gone), strict=True))
    maybe = {
        "shape": shapes,
        "holds_ml": st.sampled_from([20457, 40915, 81830, 163659]) | field("holds_ml"),
        "conditioning_days": st.integers(0, 21) | field("conditioning_days"),
        "best_before_on": marked_days | days,
        "on_sale_days": st.integers(1, 7),
        "fined": flag,
        "fined_at": later,
        "moves": st.integers(0, 6),
        "last_moved_at": later,
        "first_drawn_at": later,
        "fill_temp_c": st.floats(5, 25) | field("fill_temp_c"),
    }
    return found | draw(st.fixed_dictionaries({}, optional=maybe))


nows = around(START + timedelta(days=10), 24 * 12) | times
sales = around(START + timedelta(days=13), 24 * 10) | times
numbers = st.sampled_from(["117", "K12", "9", "F3", "f3", "", "K"])
candidates = st.builds(lambda number, cask: {"number": number} | cask, numbers, casks())
picked = st.builds(lambda sale, cask: {"sale_at": sale} | cask, sales, candidates)

stamps = st.sampled_from(
    [
        "2026-03-05 14:30", "2026-03-05T14:40:00Z", "05/03/2026 14:50:30", "5/3/26 2:10 pm",
        "5 Mar 2026 15:00", "05.03.2026 15:10", "2026-03-05 15:20:00.250+01:00", "31/02/2026 10:00",
        "12/31/2026 10:00", "2026-03-29 01:30", "2026-10-25 00:50", "2026-10-25 01:10",
        "2026-10-25 01:50", "2026-10-25 02:10", "yesterday", "", "2026-03-05", "05/03/2026 25:00",
        "5 Foo 2026 10:00", "2026-03-05 00:00 AM", "1999-12-31 10:00", "5-3-2026 9:05",
    ]
)  # fmt: skip
shown_temps = st.sampled_from(
    [
        "12",
        "12.5",
        "12,5",
        "-1",
        "+3.25",
        "53.6 F",
        "11.9 °C",
        "99",
        "NaN",
        "",
        "12.5.1",
        "1e1",
        "°C",
    ]
)
heads = st.sampled_from(
    [
        ["Time", "Temp"], ["Date/Time", "Temperature (°C)"], ["#", "Date Time, GMT+01:00", "T, °F"],
        ["Date", "Time", "Celsius", "Humidity"], ["Timestamp (UTC)", "Fahrenheit"], ["when", "C"],
        ["DATETIME", "x", "temp"], ["Serial", "T"], [],
    ]
)  # fmt: skip
spare_cells = st.sampled_from(["", "1", "55", "ok", "x"])


@st.composite
def logs(draw: st.DrawFn) -> str:
    """A logger's file: heads or none, any way of writing, lines that are wrong."""
    between = draw(st.sampled_from([",", ",", ";", "\t"]))
    ends = draw(st.sampled_from(["\n", "\r\n", "\r"]))
    head = draw(heads)

    def cell(text: str) -> str:
        return f'"{text}"' if between in text or draw(st.integers(0, 9)) == 0 else text

    lines = draw(st.lists(st.sampled_from(["Plot: cellar", "", "\ufeff serial 7"]), max_size=1))
    if head:
        lines.append(between.join(cell(name) for name in head))
    where = [name.lower()[:4] for name in head] or ["time", "temp"]
    for _ in range(draw(st.integers(0, 8))):
        stamp = draw(stamps)
        cells = []
        for name in where:
            if name == "date" and "time" in where:
                cells.append(stamp.split(" ")[0])
            elif name in ("time", "date", "when"):
                cells.append(
                    stamp.split(" ", 1)[-1] if "date" in where and name == "time" else stamp
                )
            elif name in ("temp", "cels", "fahr", "c", "t", "t, °"):
                cells.append(draw(shown_temps))
            else:
                cells.append(draw(spare_cells))
        cells += draw(st.sampled_from([[], [], [], ["5"], ["ok", "ok"]]))
        lines.append(between.join(cell(text) for text in cells[: draw(st.integers(1, 9))]))
    return ends.join(lines)


texts = logs() | st.text(alphabet='0123456789/:-, ;\t"\nTtempdaie°CF.', max_size=80)
dips = st.lists(
    st.tuples(around(START, 72), st.integers(0, 41_000)), max_size=5
).map(
    lambda found: [
        {"at": at, "left_ml": left}
        for at, left in zip(
            sorted(at for at, _ in found), sorted((left for _, left in found), reverse=True),
            strict=True,
        )
    ]
)  # fmt: skip
measures = {
    "bung_diameter_mm": st.just(392) | st.floats(300, 500) | field("bung_diameter_mm"),
    "head_diameter_mm": st.just(314) | st.floats(200, 400) | field("head_diameter_mm"),
    "length_mm": st.just(385) | st.floats(300, 600) | field("length_mm"),
}
mostly_level = st.integers(0, 9).map(lambda n: n == 9)
history_fields = {"stays": st.just([]), "readings": st.just([])}

RULES: dict[str, tuple[Fields, Fields]] = {
    "best_before": (
        {"from_on": days},
        {"counted_from": choice(*COUNTED_FROM), "shape": shapes}
        | {"abv_tenths": st.sampled_from([39, 40, 50, 51, 70, 71]) | field("abv_tenths")}
        | fields("window_days"),
    ),
    "life_left": (
        {"best_before_on": marked_days | days, "delivered_on": marked_days | days}
        | {"shape": shapes},
        fields("expected_days"),
    ),
    "date_mark": (
        {"packed_on": marked_days | days, "best_before_on": marked_days | days}
        | {"abv_tenths": st.sampled_from([99, 100, 101]) | field("abv_tenths")},
        {"form": choice(*date_mark.FORMS)},
    ),
    "lot_mark": (
        {"gyle_number": st.sampled_from(["128", "g 12/3", "A-1", "ä1", ""]) | st.text(max_size=22)}
        | {"racked_on": marked_days | days},
        {"dated": choice(*lot.DATED)},
    ),
    "label": (
        {"abv_tenths": st.sampled_from([11, 12, 13]) | field("abv_tenths"), "milk": flag}
        | {"cereals": st.lists(st.sampled_from([*figure("label_cereals"), "rice"]), max_size=6)}
        | {"isinglass": flag},
        {"sulphites_mg_per_l": st.sampled_from([9.9, 10, 10.1]) | field("sulphites_mg_per_l")},
    ),
    "label_strength": (
        {"label_abv_tenths": st.sampled_from([40, 55, 56, 60]) | field("label_abv_tenths")}
        | {"measured_abv": st.floats(3, 7).map(lambda v: round(v, 2)) | field("measured_abv")},
        {},
    ),
    "off_by": (
        {"tapped_at": times, "shape": shapes},
        {"first_drawn_at": times} | fields("on_sale_days"),
    ),
    "ageing": ({"from_at": around(START, 48), "until_at": nows}, history_fields),
    "q10_between": (fields("first_days", "first_temp_c", "second_days", "second_temp_c"), {}),
    "cooling": (
        {"from_temp_c": temps, "air_temp_c": temps, "to_temp_c": temps},
        fields("holds_ml"),
    ),
    "cooled": (fields("from_temp_c", "air_temp_c", "after_hours"), fields("holds_ml")),
    "read_log": ({"text": texts}, {"unit": choice("C", "F")}),
    "ready": ({"now": nows}, {}),
    "plan_back": (
        {"now": nows, "sale_at": sales, "casks": st.lists(candidates, max_size=4)},
        {},
    ),
    "todays_jobs": ({"now": nows, "casks": st.lists(picked, max_size=4)}, {}),
    "left_by_dip": (
        {
            "wet_mm": st.floats(0, 450) | field("wet_mm"),
            "tilted": mostly_level,
        },
        measures
        | {"laid": choice("lying", "standing"), "holds_ml": st.just(40915) | field("holds_ml")}
        | {"sediment_ml": st.just(1700) | field("sediment_ml")},
    ),
    "left_by_weight": (
        {"gross_g": st.floats(9_000, 60_000), "tare_g": st.floats(0, 12_000)}
        | fields("present_gravity", "beer_temp_c"),
        fields("sediment_ml"),
    ),
    "sediment": ({"kind": choice(*CONTAINER_KINDS)}, fields("holds_ml", "sediment_ml")),
    "run_out": (
        {"now": around(START, 96), "dips": dips},
        {"sediment_ml": st.just(1700) | field("sediment_ml"), "next_fined": flag}
        | {"off_by_at": around(START, 96)},
    ),
}
"""For each rule the fields that it must be told and those that it may be told."""


CELLAR_SETTINGS = sorted(
    name
    for name, known in FIGURES.items()
    if "low" in known and re.search(
        r"^(window|keg|life|date|ageing|conditioning|cellar|cooling|finings_ruined|reading|settle"
        r"|unfined|vent|soft|sale|taste|working|measures|run_out|resettles)_|^strength_classes$|^bar_hours$",
        name,
    )
)  # fmt: skip


@st.composite
def own_settings(draw: st.DrawFn) -> Any:
    """A brewery's own values: often none, else in their range, and now and then out of it."""
    if draw(flag):
        return None
    chosen = sorted(draw(st.sets(st.sampled_from(CELLAR_SETTINGS), min_size=1, max_size=6)))
    own = {name: draw(own_value(name)) for name in chosen}
    if draw(st.integers(0, 9)) == 9:
        own[draw(st.sampled_from(CELLAR_SETTINGS))] = draw(WRONG)
    return own


@st.composite
def inputs(draw: st.DrawFn, name: str) -> Any:
    """Mostly what the rule can answer; else one field wrong, missing, or of an unknown name."""
    must, may = RULES[name]
    asked: dict[str, Any] = draw(st.fixed_dictionaries(must, optional=may))
    if name == "ready":
        asked |= draw(casks())
    if name == "ageing":
        asked |= draw(histories())
    slip = draw(st.integers(0, 19))
    if slip == 19 and asked:
        asked[draw(st.sampled_from(sorted(asked)))] = draw(WRONG)
    elif slip == 18 and asked:
        del asked[draw(st.sampled_from(sorted(asked)))]
    elif slip == 17:
        asked["volume_pints"] = 72
    return asked
