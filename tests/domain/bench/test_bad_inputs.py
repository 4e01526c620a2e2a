"""Whatever a rule cannot work with is refused, with the field, its range and the reason."""

from typing import Any

import pytest

from cellarapp.domain.bench.calculations import BENCH
from cellarapp.domain.calculations import calculate
from cellarapp.domain.errors import DomainError, NotAmong, OutOfRange
from cellarapp.domain.inputs import RANGES

from .asking import FIRKIN, ask

SHEET = {"strength_pct_w_w": 5, "density_g_per_ml": 1.1, "contact_min": 10, "rinse": True}
GOOD: dict[str, dict[str, Any]] = {
    "co2_in_beer": {"highest_temp_c": 18, "present_gravity": 1.011, "limit_gravity": 1.009},
    "primings": {
        "target_vol": 1.5, "yield": "full", "sugar": "glucose_syrup", "solids_pct": 80,
        "fermentable_pct": 90, "highest_temp_c": 18, "cellar_temp_c": 12, "containers": FIRKIN,
    },
    "sealed_pressure": {"total_vol": 1.5, "cellar_temp_c": 12},
    "keg_pressure": {"keg_temp_c": 10, "keg_vol": 2.4},
    "finings_dose": {
        "product": "isinglass", "rate": 142, "rate_unit": "ml_per_container", "per_ml": 40915,
        "containers": FIRKIN,
    },
    "cask_hops": {
        "rate": 10, "rate_unit": "g_per_container", "per_ml": 40915, "containers": FIRKIN,
    },
    "finings_order": {"product": "isinglass", "vegan": False, "earlier": []},
    "finings_conditions": {"yeast_million_per_ml": 1},
    "sulphite": {"additions": []},
    "finings_life": {
        "product": "isinglass", "received_on": "2026-11-01", "storage_temp_c": 8,
        "today": "2026-11-25",
    },
    "moves_after_fining": {"moves": 1},
    "vegan": {"recipe_vegan": True, "isinglass_used": False},
    "trial_ladder": {"sample_ml": 500},
    "trial_proposal": {"samples": []},
    "racking_plan": {"vessel_ml": 800_000, "loss_ml": 20_000, "sizes": []},
    "bench_sheet": {"containers": FIRKIN, "additions": []},
    "fill_by_weight": {
        "gross_g": 51_000, "tare_g": 9_600, "present_gravity": 1.01, "beer_temp_c": 12,
        "capacity_ml": 40915, "method": "weighed",
    },
    "strength": {"original_gravity": 1.04, "present_gravity": 1.009},
    "expected_strength": {
        "original_gravity": 1.04, "expected_gravity": 1.008, "sugar_g_per_l": 2,
        "additions_ml_per_l": 14, "sugar": "sucrose",
    },
    "peracetic_dilution": {
        "target_mg_per_l": 150, "solution_ml": 10_000, "solution_temp_c": 15, **SHEET,
    },
    "caustic_dilution": {
        "target_pct": 1, "of_what": "product_v_v", "solution_ml": 10_000, "metal": "stainless",
        **SHEET,
    },
    "titration": {
        "titrated": "peracetic", "titrant_ml": 5, "normality": 0.02, "titration_sample_ml": 20,
    },
    "solution_state": {
        "made_mg_per_l": 200, "least_mg_per_l": 120, "uses": 1, "hours_old": 2,
        "thrown_away": False,
    },
}  # fmt: skip
"""What each rule must be told, as far as it must; every field of it is spoilt in turn below."""

WRONG = [None, "", "1.010", float("nan"), float("inf"), float("-inf"), 1e15, -1e15, {"value": 1}]
FIELDS = [(rule, field) for rule, asked in GOOD.items() for field in asked]
OPTIONAL = [
    ("co2_in_beer", "measured_vol"),
    ("primings", "measured_vol"),
    ("primings", "present_gravity"),
    ("primings", "syrup_gravity"),
    ("primings", "syrup_g_per_l"),
    ("primings", "dray_temp_c"),
    ("primings", "limit_bar"),
    ("keg_pressure", "limit_bar"),
    ("finings_order", "mixed_with"),
    ("sulphite", "beer_so2_mg_per_l"),
    ("finings_conditions", "ph"),
    ("finings_conditions", "fining_temp_c"),
    ("moves_after_fining", "resettles_most"),
    ("trial_ladder", "isinglass_steps"),
    ("solution_state", "last_check_mg_per_l"),
    ("solution_state", "most_uses"),
    ("solution_state", "most_hours"),
]


def test_every_rule_is_spoilt() -> None:
    """And every one of them works before it is."""
    assert GOOD.keys() == BENCH.keys()
    for rule, asked in GOOD.items():
        assert calculate(rule, asked)["result"]


def refusal(rule: str, asked: dict[str, Any]) -> DomainError:
    with pytest.raises((OutOfRange, NotAmong)) as refused:
        calculate(rule, asked)
    return refused.value


@pytest.mark.parametrize("wrong", WRONG)
@pytest.mark.parametrize(("rule", "field"), FIELDS)
def test_a_spoilt_field_is_refused_by_name(rule: str, field: str, wrong: object) -> None:
    """Missing, text, not a number, infinite, or beyond its range."""
    facts = refusal(rule, {**GOOD[rule], field: wrong}).facts
    assert facts["field"] == field
    assert facts["why"]
    assert "choices" in facts or {"low", "high", "unit"} <= facts.keys()


@pytest.mark.parametrize("wrong", WRONG[1:])
@pytest.mark.parametrize(("rule", "field"), OPTIONAL)
def test_what_need_not_be_told_is_refused_when_spoilt(rule: str, field: str, wrong: object) -> None:
    assert refusal(rule, {**GOOD[rule], field: wrong}).facts["field"] == field


@pytest.mark.parametrize(("rule", "field"), FIELDS)
def test_a_missing_field_is_refused_by_name(rule: str, field: str) -> None:
    asked = {name: value for name, value in GOOD[rule].items() if name != field}
    facts = refusal(rule, asked).facts
    assert (facts["field"], facts["given"]) == (field, None)


@pytest.mark.parametrize(
    ("rule", "field", "value"),
    [(rule, field, RANGES[field][end] + by)  # type: ignore[literal-required]
     for rule, field in FIELDS
     if field in RANGES
     for end, by in (("low", -1e-6), ("high", 1e-6))],
)  # fmt: skip
def test_just_beyond_either_end_is_refused(rule: str, field: str, value: float) -> None:
    """With the range that it should have been in."""
    facts = refusal(rule, {**GOOD[rule], field: value}).facts
    assert (facts["field"], facts["given"]) == (field, value)


@pytest.mark.parametrize(
    ("rule", "unknown"),
    [("primings", "target_g_per_l"), ("finings_dose", "pints"), ("fill_by_weight", "gross_kg"),
     ("co2_in_beer", "highest_temp_f"), ("strength", "original_plato")],
)  # fmt: skip
def test_other_units_are_not_taken_in_silence(rule: str, unknown: str) -> None:
    """The names that the rule knows are listed."""
    facts = refusal(rule, {**GOOD[rule], unknown: 1}).facts
    assert facts["field"] == unknown
    assert set(GOOD[rule]) <= set(facts["choices"])  # type: ignore[call-overload]


@pytest.mark.parametrize("temp_c", [-0.1, 30.1, 68])
def test_residual_is_refused_outside_0_to_30_degrees(temp_c: float) -> None:
    """CO2-1: the curve turns upward at 34.6 °C; 68 is what °F would look like."""
    facts = refusal("co2_in_beer", {"highest_temp_c": temp_c}).facts
    assert (facts["low"], facts["high"], facts["unit"]) == (0, 30, "°C")


@pytest.mark.parametrize(
    ("rule", "asked", "field"),
    [
        ("bench_sheet", {"containers": [{"volume_ml": 0.5, "count": 1}], "additions": []},
         "containers[0].volume_ml"),
        ("bench_sheet", {"containers": FIRKIN, "additions": [{"per_l": 1, "unit": "pt"}]},
         "additions[0].unit"),
        ("racking_plan", {"vessel_ml": 1, "loss_ml": 0, "sizes": [{"capacity_ml": 9}]},
         "sizes[0].available"),
        ("finings_order", {"product": "isinglass", "vegan": False, "earlier": [{}]},
         "earlier[0].product"),
        ("trial_proposal", {"samples": [{"clarity": [{"after_h": 4, "score": 6}]}]},
         "samples[0].clarity[0].score"),
        ("trial_ladder", {"sample_ml": 500, "isinglass_steps": [1, 11], "auxiliary_steps": [0]},
         "isinglass_steps[1].isinglass_pt"),
    ],
)  # fmt: skip
def test_a_part_of_a_list_is_named_by_its_place(
    rule: str, asked: dict[str, Any], field: str
) -> None:
    assert refusal(rule, asked).facts["field"] == field


def test_what_is_right_shows_its_working() -> None:
    """Every rule but plain yes and no has steps; none uses a figure unseen."""
    for rule in GOOD.keys() - {"vegan", "finings_order", "finings_conditions"}:
        assert ask(rule, **GOOD[rule])["steps"] or rule == "solution_state", rule
