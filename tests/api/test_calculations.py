"""Every calculation over HTTP: a good question, and a bad one told field by field."""

from typing import Any

import pytest
from flask.testing import FlaskClient
from freezegun import freeze_time

from cellarapp.domain.calculations import CALCULATIONS
from cellarapp.domain.figures import FIGURES

from ..making import Phone, push_body

FIRKIN = [{"volume_ml": 40915, "count": 12}]
SHEET = {"strength_pct_w_w": 5, "density_g_per_ml": 1.1, "contact_min": 10, "rinse": True}
CASK = {"filled_at": "2026-11-16T10:00:00.000Z"}
NOW = "2026-11-25T12:00:00.000Z"
Ask = dict[str, Any]

QUESTIONS: dict[str, tuple[Ask, Ask, str]] = {
    "co2_in_beer": ({"highest_temp_c": 18}, {"highest_temp_c": 31}, "highest_temp_c"),
    "primings": (
        {
            "target_vol": 1.5, "yield": "full", "sugar": "sucrose", "highest_temp_c": 18,
            "cellar_temp_c": 12, "containers": FIRKIN, "syrup_g_per_l": 800,
        },
        {"containers": [{"volume_ml": -1, "count": 1}]}, "containers/0/volume_ml",
    ),
    "sealed_pressure": (
        {"total_vol": 1.5, "cellar_temp_c": 12}, {"cellar_temp_c": "warm"}, "cellar_temp_c",
    ),
    "keg_pressure": ({"keg_temp_c": 10, "keg_vol": 2.4}, {"keg_vol": None}, "keg_vol"),
    "finings_dose": (
        {"product": "isinglass", "rate": 3, "rate_unit": "pints_per_barrel", "containers": FIRKIN},
        {"product": "gelatine"}, "product",
    ),
    "cask_hops": (
        {"rate": 1, "rate_unit": "oz_per_barrel", "containers": FIRKIN}, {"rate": -1}, "rate",
    ),
    "finings_order": (
        {"product": "isinglass", "vegan": False, "earlier": []}, {"vegan": "no"}, "vegan",
    ),
    "finings_conditions": ({"ph": 4.1}, {"ph": 19}, "ph"),
    "sulphite": (
        {"beer_so2_mg_per_l": 5, "additions": []}, {"beer_so2_mg_per_l": -5}, "beer_so2_mg_per_l",
    ),
    "finings_life": (
        {
            "product": "isinglass", "received_on": "2026-11-01", "storage_temp_c": 8,
            "today": "2026-11-25",
        },
        {"received_on": "1.11.26"}, "received_on",
    ),
    "moves_after_fining": ({"moves": 1}, {"moves": 1.5}, "moves"),
    "vegan": ({"recipe_vegan": True, "isinglass_used": False}, {"recipe_vegan": 1}, "recipe_vegan"),
    "trial_ladder": ({"sample_ml": 500}, {"sample_ml": 0}, "sample_ml"),
    "trial_proposal": (
        {
            "samples": [
                {
                    "isinglass_pt": 2, "auxiliary_pt": 0, "resettled": [5, 5],
                    "clarity": [{"after_h": 4, "score": 5}],
                }
            ]
        },
        {"samples": 3}, "samples",
    ),
    "racking_plan": (
        {
            "vessel_ml": 800_000, "loss_ml": 20_000,
            "sizes": [{"capacity_ml": 40915, "available": 20, "wished": 2}],
        },
        {"loss_ml": 900_000}, "loss_ml",
    ),
    "bench_sheet": (
        {"containers": FIRKIN, "additions": [{"per_l": 3, "unit": "mL"}]},
        {"additions": [{"per_l": 3, "unit": "pint"}]}, "additions/0/unit",
    ),
    "fill_by_weight": (
        {
            "gross_g": 51_000, "tare_g": 9_600, "present_gravity": 1.01, "beer_temp_c": 12,
            "capacity_ml": 40915, "method": "weighed",
        },
        {"tare_g": 52_000}, "tare_g",
    ),
    "strength": (
        {"original_gravity": 1.04, "present_gravity": 1.009}, {"original_gravity": 4},
        "original_gravity",
    ),
    "expected_strength": (
        {
            "original_gravity": 1.04, "expected_gravity": 1.008, "sugar_g_per_l": 2,
            "additions_ml_per_l": 14, "sugar": "sucrose",
        },
        {"sugar": "honey"}, "sugar",
    ),
    "peracetic_dilution": (
        {"target_mg_per_l": 150, "solution_ml": 10_000, "solution_temp_c": 15, **SHEET},
        {"rinse": None}, "rinse",
    ),
    "caustic_dilution": (
        {
            "target_pct": 2, "of_what": "product_v_v", "solution_ml": 10_000, "metal": "stainless",
            **SHEET,
        },
        {"of_what": "of it"}, "of_what",
    ),
    "titration": (
        {
            "titrated": "peracetic", "titrant_ml": 5, "normality": 0.02, "titration_sample_ml": 20,
        },
        {"titration_sample_ml": 0}, "titration_sample_ml",
    ),
    "solution_state": (
        {
            "made_mg_per_l": 200, "least_mg_per_l": 120, "uses": 1, "hours_old": 2,
            "thrown_away": False,
        },
        {"hours_old": -1}, "hours_old",
    ),
    "best_before": (
        {"from_on": "2026-11-25", "abv_tenths": 42}, {"from_on": "2026-02-30"}, "from_on",
    ),
    "life_left": (
        {"best_before_on": "2027-01-06", "delivered_on": "2026-11-25", "shape": "cask"},
        {"shape": "jug"}, "shape",
    ),
    "date_mark": (
        {"packed_on": "2026-11-25", "best_before_on": "2027-01-06", "abv_tenths": 42},
        {"abv_tenths": None}, "abv_tenths",
    ),
    "lot_mark": (
        {"gyle_number": "318", "racked_on": "2026-11-25"}, {"gyle_number": ""}, "gyle_number",
    ),
    "label": (
        {"abv_tenths": 42, "milk": False, "cereals": ["barley"], "isinglass": True},
        {"cereals": ["rice"]}, "cereals/0",
    ),
    "label_strength": (
        {"label_abv_tenths": 42, "measured_abv": 4.31}, {"measured_abv": -4}, "measured_abv",
    ),
    "off_by": ({"tapped_at": NOW, "shape": "cask"}, {"tapped_at": "now"}, "tapped_at"),
    "ageing": (
        {
            "from_at": "2026-11-16T10:00:00.000Z", "until_at": NOW, "readings": [],
            "stays": [{"since_at": "2026-11-16T10:00:00.000Z", "place_temp_c": 12}],
        },
        {"until_at": None}, "until_at",
    ),
    "q10_between": (
        {"first_days": 60, "first_temp_c": 10, "second_days": 20, "second_temp_c": 20},
        {"second_days": 0}, "second_days",
    ),
    "cooling": (
        {"from_temp_c": 20, "air_temp_c": 11, "to_temp_c": 13, "holds_ml": 40915},
        {"air_temp_c": 700}, "air_temp_c",
    ),
    "cooled": (
        {"from_temp_c": 20, "air_temp_c": 11, "after_hours": 10, "holds_ml": 40915},
        {"after_hours": -1}, "after_hours",
    ),
    "read_log": (
        {"text": "Time,Temp\n2026-11-25 10:00,12.5\n", "unit": "C"}, {"unit": "K"}, "unit",
    ),
    "ready": ({"now": NOW, **CASK}, {"now": "soon"}, "now"),
    "plan_back": (
        {"now": NOW, "sale_at": "2026-11-28T13:00:00.000Z", "casks": [{"number": "117", **CASK}]},
        {"casks": [{"number": "117", "filled_at": 9}]}, "casks/0/filled_at",
    ),
    "todays_jobs": ({"now": NOW, "casks": []}, {"casks": None}, "casks"),
    "left_by_dip": (
        {
            "wet_mm": 200, "tilted": False, "laid": "lying", "holds_ml": 40915,
        },
        {"tilted": True}, "tilted",
    ),
    "left_by_weight": (
        {"gross_g": 30_000, "tare_g": 9_600, "present_gravity": 1.01, "beer_temp_c": 12},
        {"beer_temp_c": 99}, "beer_temp_c",
    ),
    "sediment": ({"kind": "firkin"}, {"kind": "bucket"}, "kind"),
    "return_chance": (
        {"trips": [{"entered_day": 0, "days": 30, "returned": 4, "open": 1}], "days_out": 12},
        {"trips": [{"entered_day": 0, "days": 30, "returned": -4, "open": 1}]}, "trips/0/returned",
    ),
    "fleet_needed": (
        {
            "trips": [{"entered_day": 0, "days": 30, "returned": 4, "open": 1}], "out": [],
            "at_home": 40, "fills_a_week": 8, "home_days": 20, "lost_a_year": 2,
            "value_pounds": 75,
        },
        {"at_home": 1.5}, "at_home",
    ),
    "call_worth": (
        {
            "own": [], "all": [{"entered_day": 0, "days": 30, "returned": 4, "open": 1}],
            "out": [{"kind": "firkin", "days_out": 50, "agreed_days": 42}],
        },
        {"out": [{"kind": "bucket", "days_out": 50}]}, "out/0/kind",
    ),
    "round_order": (
        {
            "stops": [
                {"latitude_e6": 54_200_000, "longitude_e6": -2_500_000},
                {"latitude_e6": 54_100_000, "longitude_e6": -2_400_000},
            ],
            "start": {"latitude_e6": 54_000_000, "longitude_e6": -2_300_000},
        },
        {"stops": [{"latitude_e6": 95_000_000, "longitude_e6": 0}]}, "stops/0/latitude_e6",
    ),
    "run_out": (
        {
            "now": NOW,
            "dips": [
                {"at": "2026-11-24T12:00:00.000Z", "left_ml": 30_000},
                {"at": NOW, "left_ml": 20_000},
            ],
        },
        {"dips": [{"at": "noon", "left_ml": 1}]}, "dips/0/at",
    ),
}  # fmt: skip
"""For each calculation what it can answer, what spoils that, and which field is then named."""


JUDGED = {"finings_order", "finings_conditions", "vegan", "solution_state"}
"""Held against limits, with nothing to reckon."""
WITHOUT_FIGURES = {
    *("finings_order", "vegan", "solution_state"),
    *("bench_sheet", "q10_between", "read_log"),
}
"""Resting on nothing but what was asked, as these are asked above."""


def test_every_calculation_is_offered_and_asked_below(client: FlaskClient) -> None:
    """With its title."""
    told = client.get("/api/calculations").json
    assert told is not None
    offered = {one["name"]: one["title"] for one in told["calculations"]}
    assert offered == {name: one.title for name, one in CALCULATIONS.items()}
    assert set(QUESTIONS) >= set(offered)


@pytest.mark.parametrize("name", CALCULATIONS)
def test_answer_carries_steps_cautions_and_sources(client: FlaskClient, name: str) -> None:
    """Each figure used with where it comes from, each caution in words."""
    response = client.post(f"/api/calculations/{name}", json={"inputs": QUESTIONS[name][0]})
    assert response.status_code == 200, response.json
    told = response.json
    assert told is not None
    assert told["result"]
    assert bool(told["steps"]) is (name not in JUDGED)
    assert all(step["says"] for step in told["steps"])
    assert all(caution["words"] for caution in told["cautions"])
    assert bool(told["sources"]) is (name not in WITHOUT_FIGURES)
    for source in told["sources"]:
        assert source["source"] or source["kind"] != "published"
        assert source["own"] is False


@pytest.mark.parametrize("name", CALCULATIONS)
def test_bad_question_names_its_field_in_words(client: FlaskClient, name: str) -> None:
    """By a pointer within the request."""
    good, spoilt, field = QUESTIONS[name]
    response = client.post(f"/api/calculations/{name}", json={"inputs": good | spoilt})
    assert response.status_code == 422
    told = response.json
    assert told is not None
    (error,) = told["errors"]
    assert error["pointer"] == f"#/inputs/{field}"
    assert "must be" in error["detail"]
    assert told["detail"] == error["detail"]


def test_unknown_field_is_not_passed_over(client: FlaskClient) -> None:
    """A volume in pints must not count as none."""
    asked = {"inputs": {"highest_temp_c": 18, "volume_pints": 72}}
    told = client.post("/api/calculations/co2_in_beer", json=asked).json
    assert told is not None
    assert told["errors"][0]["pointer"] == "#/inputs/volume_pints"
    assert "The rule knows no such field." in told["detail"]


def test_unknown_calculation_is_not_found(client: FlaskClient) -> None:
    """As any address that is not there."""
    assert client.post("/api/calculations/luck", json={"inputs": {}}).status_code == 404


def test_question_without_inputs_is_told_so(client: FlaskClient) -> None:
    """And with inputs that are no object."""
    for body in ({}, {"inputs": [1]}):
        told = client.post("/api/calculations/vegan", json=body).json
        assert told is not None
        assert told["errors"][0]["pointer"] == "#/inputs"


def test_setting_that_cannot_be_is_named_and_nothing_in_the_request(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A release that narrows a range finds values from before, for the brewery to put right."""
    own = Phone().entry("setting", "resettles_most", value_millionths=5_000_000)
    client.post("/api/push", json=push_body([own]))
    monkeypatch.setitem(FIGURES, "resettles_most", {**FIGURES["resettles_most"], "high": 4})
    response = client.post("/api/calculations/moves_after_fining", json={"inputs": {"moves": 1}})
    assert response.status_code == 422
    told = response.json
    assert told is not None
    assert told["errors"][0]["pointer"] == "#"
    assert told["detail"].startswith("resettles_most must be from ")


def test_brewerys_own_list_counts_as_it_was_set(client: FlaskClient) -> None:
    """And stands among the sources as the brewery's own."""
    own = Phone().entry("setting", "trial_isinglass_pt", values_millionths=[1_000_000, 2_500_000])
    client.post("/api/push", json=push_body([own]))
    told = client.post("/api/calculations/trial_ladder", json={"inputs": {"sample_ml": 500}}).json
    assert told is not None
    assert {one["isinglass_pt"] for one in told["result"]["samples"]} == {1, 2.5}
    [source] = [one for one in told["sources"] if one["id"] == "trial_isinglass_pt"]
    assert (source["value"], source["own"]) == ([1, 2.5], True)


@freeze_time("2026-10-24T20:00:00Z")
def test_a_cask_runs_out_by_the_bars_hours_over_the_night_the_clocks_change(
    client: FlaskClient,
) -> None:
    """OUT-4: Saturday 18:00 to 02:00 is nine hours then, and it opens a week later."""
    hours = [8280 * 10**6, 8760 * 10**6]
    at = "2026-10-24T16:00:00.000Z"
    own = Phone().entry("setting", "bar_hours", at=at, values_millionths=hours)
    client.post("/api/push", json=push_body([own]))
    dips = [
        {"at": "2026-10-24T17:00:00.000Z", "left_ml": 9000},
        {"at": "2026-10-24T20:00:00.000Z", "left_ml": 6000},
    ]
    asked = {"inputs": {"now": "2026-10-24T20:00:00.000Z", "dips": dips}}
    told = client.post("/api/calculations/run_out", json=asked).json
    assert told is not None
    assert told["result"]["soonest_at"] == "2026-10-25T02:00:00.000Z"
    assert told["result"]["next_wanted_at"] == "2026-10-31T18:00:00.000Z"


def test_brewerys_own_setting_counts_until_it_is_retired(client: FlaskClient) -> None:
    """Then the default stands again."""
    phone = Phone()
    asked = {"inputs": {"moves": 1}}

    def most() -> tuple[int, float, bool]:
        told = client.post("/api/calculations/moves_after_fining", json=asked).json
        assert told is not None
        (source,) = told["sources"]
        return told["result"]["moves_left"], source["value"], source["own"]

    default = most()
    assert default[2] is False
    own = phone.entry("setting", "resettles_most", value_millionths=5_000_000)
    client.post("/api/push", json=push_body([own]))
    assert most() == (4, 5, True)
    back = phone.entry("setting", "resettles_most", retired=True)
    client.post("/api/push", json=push_body([back]))
    assert most() == default
