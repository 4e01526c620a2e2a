"""Whatever a rule cannot work with is refused, with the field, its range and the reason."""

from typing import Any

import pytest

from cellarapp.domain.calculations import calculate
from cellarapp.domain.cellar.calculations import CELLAR
from cellarapp.domain.errors import DomainError, NotADate, NotAmong, NotATime, OutOfRange
from cellarapp.domain.inputs import RANGES

FILLED, NOW = "2026-03-06T10:00:00.000Z", "2026-03-18T09:00:00.000Z"
SATURDAY = "2026-03-21T13:00:00.000Z"
CASK = {"number": "117", "filled_at": FILLED}
STAYS = [{"since_at": FILLED, "place_temp_c": 12}]
READINGS = [{"at": FILLED, "reading_temp_c": 12, "of": "beer"}]
DIPS = [{"at": FILLED, "left_ml": 40_000}, {"at": NOW, "left_ml": 20_000}]
MEASURES = {"bung_diameter_mm": 392, "head_diameter_mm": 314, "length_mm": 385}

GOOD: dict[str, dict[str, Any]] = {
    "best_before": {"from_on": "2026-03-06"},
    "life_left": {
        "best_before_on": "2026-04-17", "delivered_on": "2026-03-20", "shape": "cask",
    },
    "date_mark": {"packed_on": "2026-03-06", "best_before_on": "2026-04-17", "abv_tenths": 42},
    "lot_mark": {"gyle_number": "128", "racked_on": "2026-03-06"},
    "label": {"abv_tenths": 42, "cereals": ["barley"], "milk": False, "isinglass": True},
    "label_strength": {"label_abv_tenths": 42, "measured_abv": 4.31},
    "off_by": {"tapped_at": NOW, "shape": "cask"},
    "ageing": {"from_at": FILLED, "until_at": NOW},
    "q10_between": {"first_days": 30, "first_temp_c": 12, "second_days": 15, "second_temp_c": 22},
    "cooling": {"from_temp_c": 18, "air_temp_c": 12, "to_temp_c": 13},
    "cooled": {"from_temp_c": 18, "air_temp_c": 12, "after_hours": 24},
    "read_log": {"text": "Time,Temp\n2026-03-05 14:30,12.5"},
    "ready": {"now": NOW, "filled_at": FILLED},
    "plan_back": {"now": NOW, "sale_at": SATURDAY, "casks": [CASK]},
    "todays_jobs": {"now": NOW, "casks": [{**CASK, "sale_at": SATURDAY}]},
    "left_by_dip": {"wet_mm": 100, "tilted": False, **MEASURES},
    "left_by_weight": {
        "gross_g": 51_000, "tare_g": 9_600, "present_gravity": 1.01, "beer_temp_c": 12,
    },
    "sediment": {"kind": "firkin"},
    "run_out": {"now": NOW, "dips": DIPS},
}  # fmt: skip
"""What each rule must be told, as far as it must; every field of it is spoilt in turn below."""

MAY: dict[str, dict[str, Any]] = {
    "best_before": {"counted_from": "racking", "shape": "keg", "abv_tenths": 42, "window_days": 9},
    "life_left": {"expected_days": 14},
    "date_mark": {"form": "day_month"},
    "lot_mark": {"dated": "none"},
    "label": {"sulphites_mg_per_l": 8},
    "off_by": {"first_drawn_at": NOW, "on_sale_days": 3},
    "ageing": {"stays": STAYS, "readings": READINGS},
    "cooling": {"holds_ml": 81_830},
    "cooled": {"holds_ml": 81_830},
    "read_log": {"unit": "F"},
    "ready": {
        "shape": "cask", "holds_ml": 40_915, "conditioning_days": 7, "best_before_on": "2026-04-17",
        "on_sale_days": 3, "fined": True, "fined_at": NOW, "moves": 2, "last_moved_at": NOW,
        "stillaged_at": NOW, "vented_at": NOW, "hard_spile_at": NOW, "tapped_at": NOW,
        "first_drawn_at": NOW, "tasted_at": NOW, "fill_temp_c": 12, "stays": STAYS,
        "readings": READINGS,
    },
    "left_by_dip": {"laid": "lying", "holds_ml": 40_915, "sediment_ml": 1_700},
    "left_by_weight": {"sediment_ml": 1_700},
    "sediment": {"holds_ml": 40_915, "sediment_ml": 1_700},
    "run_out": {"sediment_ml": 1_700, "off_by_at": SATURDAY, "next_fined": False},
}  # fmt: skip

WRONG = [None, "", "1.010", float("nan"), float("inf"), float("-inf"), 1e15, -1e15, {"value": 1}]
FIELDS = [(rule, field) for rule, asked in GOOD.items() for field in asked]
OPTIONAL = [(rule, field) for rule, asked in MAY.items() for field in asked]


def refusal(rule: str, asked: dict[str, Any]) -> DomainError:
    with pytest.raises((OutOfRange, NotAmong, NotADate, NotATime)) as refused:
        calculate(rule, asked)
    return refused.value


def test_every_rule_is_spoilt() -> None:
    """And every one of them works before it is, told little or much."""
    assert GOOD.keys() == CELLAR.keys()
    for rule, asked in GOOD.items():
        assert calculate(rule, asked)["result"]
        assert calculate(rule, asked | MAY.get(rule, {}))["result"]


@pytest.mark.parametrize("wrong", WRONG)
@pytest.mark.parametrize(("rule", "field"), FIELDS)
def test_a_spoilt_field_is_refused_by_name(rule: str, field: str, wrong: object) -> None:
    """Missing, text, not a number, infinite, or beyond its range."""
    if (rule, field, wrong) == ("lot_mark", "gyle_number", "1.010"):
        assert calculate(rule, {**GOOD[rule], field: wrong})["result"]["mark"] == "L1.010-060326"
        return
    facts = refusal(rule, {**GOOD[rule], field: wrong}).facts
    assert facts["field"] == field
    assert facts["why"]
    assert "choices" in facts or {"low", "high"} <= facts.keys()


@pytest.mark.parametrize("wrong", WRONG[1:])
@pytest.mark.parametrize(("rule", "field"), OPTIONAL)
def test_what_need_not_be_told_is_refused_when_spoilt(rule: str, field: str, wrong: object) -> None:
    assert refusal(rule, {**GOOD[rule], field: wrong}).facts["field"] == field


@pytest.mark.parametrize(("rule", "field"), FIELDS)
def test_a_missing_field_is_refused_by_name(rule: str, field: str) -> None:
    asked = {name: value for name, value in GOOD[rule].items() if name != field}
    facts = refusal(rule, asked).facts
    assert (facts["field"], facts["given"]) == (field, None)


@pytest.mark.parametrize(("rule", "field"), OPTIONAL)
def test_nothing_said_is_the_same_as_nothing_asked(rule: str, field: str) -> None:
    assert calculate(rule, {**GOOD[rule], field: None}) == calculate(rule, GOOD[rule])


@pytest.mark.parametrize(
    ("rule", "field", "value"),
    [(rule, field, RANGES[field][end] + by)  # type: ignore[literal-required]
     for rule, field in [*FIELDS, *OPTIONAL]
     if field in RANGES
     for end, by in (("low", -1e-6), ("high", 1e-6))],
)  # fmt: skip
def test_just_beyond_either_end_is_refused(rule: str, field: str, value: float) -> None:
    """With the range that it should have been in."""
    facts = refusal(rule, {**GOOD[rule], field: value}).facts
    assert (facts["field"], facts["given"]) == (field, value)


@pytest.mark.parametrize(
    ("rule", "unknown"),
    [("cooling", "from_temp_f"), ("left_by_dip", "wet_in"), ("left_by_weight", "gross_kg"),
     ("ready", "place_temp_c"), ("best_before", "window_weeks"), ("label", "abv")],
)  # fmt: skip
def test_other_units_are_not_taken_in_silence(rule: str, unknown: str) -> None:
    """The names that the rule knows are listed."""
    facts = refusal(rule, {**GOOD[rule], unknown: 1}).facts
    assert facts["field"] == unknown
    assert set(GOOD[rule]) <= set(facts["choices"])  # type: ignore[call-overload]


@pytest.mark.parametrize(
    ("rule", "asked", "field"),
    [
        ("ready", {"stays": [{"place_temp_c": 12}]}, "stays[0].since_at"),
        ("ready", {"stays": [{**STAYS[0], "place_temp_c": 61}]}, "stays[0].place_temp_c"),
        ("ready", {"readings": [*READINGS, {"at": NOW}]}, "readings[1].reading_temp_c"),
        ("ready", {"readings": [{**READINGS[0], "of": "cask"}]}, "readings[0].of"),
        ("ready", {"readings": ["12"]}, "readings[0].inputs"),
        ("plan_back", {"casks": [CASK, {"number": "9"}]}, "casks[1].filled_at"),
        ("plan_back", {"casks": [{**CASK, "stays": [{}]}]}, "casks[0].stays[0].since_at"),
        ("todays_jobs", {"casks": [CASK]}, "casks[0].sale_at"),
        ("run_out", {"dips": [*DIPS, {"at": SATURDAY, "left_ml": 1.5}]}, "dips[2].left_ml"),
        ("label", {"cereals": ["barley", "rice"]}, "cereals[1]"),
    ],
)
def test_a_part_of_a_list_is_refused_by_its_place(
    rule: str, asked: dict[str, Any], field: str
) -> None:
    assert refusal(rule, {**GOOD[rule], **asked}).facts["field"] == field


@pytest.mark.parametrize("rule", GOOD)
@pytest.mark.parametrize("asked", [None, [], "now", 12])
def test_what_is_no_set_of_fields_is_refused(rule: str, asked: Any) -> None:
    assert refusal(rule, asked).facts["field"] == "inputs"
