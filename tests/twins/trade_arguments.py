"""What the bench's rules are asked: each field over its whole range, and what people get wrong."""

from datetime import date
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.bench.finings_order import PRODUCTS
from cellarapp.domain.bench.rates import FININGS_UNITS, HOPS_UNITS
from cellarapp.domain.bench.washing import METALS, OF_WHAT
from cellarapp.domain.figures import FIGURES, figure
from cellarapp.domain.inputs import RANGES

from .own_values import own_value

Strategy = st.SearchStrategy[Any]
Fields = dict[str, Strategy]

WRONG = st.sampled_from(
    [None, "", "1.010", True, float("nan"), float("inf"), float("-inf"), -1e9, 1e9, [], {}]
)


def field(name: str) -> Strategy:
    """A field's whole range with its ends, as typed (few digits) or as reckoned (many)."""
    known = RANGES[name]
    low, high = known["low"], known["high"]
    if known.get("whole"):
        small = st.integers(int(low), min(int(high), int(low) + 20))
        return st.sampled_from([low, high]) | small | st.integers(int(low), int(high))
    reckoned = st.floats(low, high, allow_nan=False)
    typed = reckoned.map(lambda value: min(high, max(low, round(value, 3))))
    return st.sampled_from([low, high]) | typed | reckoned


def fields(*names: str) -> Fields:
    return {name: field(name) for name in names}


def rows(of: Fields, most: int = 5, maybe: Fields | None = None) -> Strategy:
    return st.lists(st.fixed_dictionaries(of, optional=maybe or {}), max_size=most)


def choice(*choices: str) -> Strategy:
    return st.sampled_from(choices)


def at_ends(name: str) -> Strategy:
    """Either end of a window for fining."""
    return st.sampled_from(sorted(figure("fining_windows")[name].values()))


flag = st.booleans()
volumes_ml = st.sampled_from([20457, 40915, 81830, 30000]) | field("volume_ml")
containers = rows({"volume_ml": volumes_ml, "count": st.integers(1, 200)})
lot_days = st.dates(date(2024, 1, 1), date(2028, 12, 31)).map(str) | st.sampled_from(
    ["2026-11-25", "2024-02-29", "25.11.2026"]
)
pints = st.sampled_from([0, 1, 2, 2.5, 3, 4, 5])
scores = st.sampled_from([1, 3, 4, 4, 5, 5, 5])
readings = rows({"after_h": st.sampled_from([1, 4, 4.5, 5, 24]), "score": scores})
gravity_pairs = fields("present_gravity", "limit_gravity")
residual = fields("highest_temp_c", "measured_vol")
sheet = fields("strength_pct_w_w", "density_g_per_ml", "contact_min") | {"rinse": flag}
sugar = {"sugar": choice(*figure("priming_sugars"))} | fields("solids_pct", "fermentable_pct")
steps = st.lists(pints, min_size=1, max_size=4)
sizes_ml = st.sampled_from([20457, 40915, 50007, 81830, 30000]) | st.integers(1, 300_000)
sizes = rows({"capacity_ml": sizes_ml, "available": st.integers(0, 40), "wished": field("count")})
some_sizes = sizes | rows(
    {"capacity_ml": st.integers(1, 60), "available": st.integers(0, 9), "wished": st.just(0)}
)

RULES: dict[str, tuple[Fields, Fields]] = {
    "co2_in_beer": ({}, residual | gravity_pairs),
    "primings": (
        fields("target_vol", "cellar_temp_c", "highest_temp_c")
        | {"yield": choice("full", "balling"), "containers": containers}
        | sugar,
        fields("measured_vol", "syrup_gravity", "syrup_g_per_l")
        | {"batch_ml": st.integers(1, 20_000)}
        | gravity_pairs
        | fields("dray_temp_c", "limit_bar"),
    ),
    "sealed_pressure": (fields("total_vol", "cellar_temp_c"), fields("dray_temp_c", "limit_bar")),
    "keg_pressure": (fields("keg_temp_c", "keg_vol"), fields("limit_bar")),
    "finings_dose": (
        {"product": choice("isinglass", "auxiliary"), "rate_unit": choice(*FININGS_UNITS)}
        | {"rate": st.floats(0, 6) | st.floats(0, 50) | field("rate"), "containers": containers},
        fields("per_ml"),
    ),
    "cask_hops": (
        {"rate_unit": choice(*HOPS_UNITS), "rate": st.floats(0, 10) | field("rate")}
        | {"containers": containers},
        fields("per_ml"),
    ),
    "finings_order": (
        {"product": choice(*PRODUCTS), "vegan": flag}
        | {"earlier": rows({"product": choice(*PRODUCTS), "minutes_ago": st.floats(0, 600)})},
        {"mixed_with": choice(*PRODUCTS)},
    ),
    "finings_conditions": (
        {},
        {
            "yeast_million_per_ml": at_ends("yeast_million_per_ml") | field("yeast_million_per_ml"),
            "ph": at_ends("ph") | field("ph"),
            "fining_temp_c": at_ends("temp_c") | field("fining_temp_c"),
            "brand_ph": field("brand_ph"),
        },
    ),
    "sulphite": (
        {
            "additions": rows(
                {"product": choice("isinglass", "auxiliary"), "ml_per_l": field("ml_per_l")},
                maybe=fields("so2_mg_per_l"),
            )
        },
        {"beer_so2_mg_per_l": st.sampled_from([2, 8, 10]) | field("beer_so2_mg_per_l")},
    ),
    "finings_life": (
        {"product": choice("isinglass", "auxiliary"), "received_on": lot_days, "today": lot_days}
        | fields("storage_temp_c"),
        {},
    ),
    "moves_after_fining": ({"moves": st.integers(0, 5)}, {"resettles_most": st.integers(0, 5)}),
    "vegan": ({"recipe_vegan": flag, "isinglass_used": flag}, {}),
    "trial_ladder": (fields("sample_ml"), {"isinglass_steps": steps, "auxiliary_steps": steps}),
    "trial_proposal": (
        {
            "samples": rows(
                {"isinglass_pt": pints, "auxiliary_pt": st.sampled_from([0, 0.5])}
                | {"clarity": readings, "resettled": st.lists(scores, max_size=3)},
                most=8,
                maybe=fields("settled_ml"),
            )
        },
        {},
    ),
    "racking_plan": (
        {"vessel_ml": st.integers(1, 3000) | st.integers(1, 2_000_000) | field("vessel_ml")}
        | {"loss_ml": st.just(0) | st.integers(0, 30_000), "sizes": some_sizes},
        {},
    ),
    "bench_sheet": (
        {"containers": containers}
        | {"additions": rows({"per_l": field("per_l"), "unit": choice("mL", "g")})},
        {},
    ),
    "fill_by_weight": (
        {"gross_g": st.floats(15_000, 60_000) | field("gross_g")}
        | {"tare_g": st.floats(0, 12_000) | field("tare_g"), "capacity_ml": volumes_ml}
        | {"method": choice("weighed", "metered", "by_eye")}
        | fields("present_gravity", "beer_temp_c"),
        {},
    ),
    "strength": (
        {"original_gravity": st.floats(1.03, 1.11).map(lambda sg: round(sg, 4))}
        | {"present_gravity": st.floats(1, 1.02).map(lambda sg: round(sg, 5))},
        {},
    ),
    "expected_strength": (
        {"original_gravity": st.floats(1.03, 1.09), "expected_gravity": st.floats(1, 1.02)}
        | fields("sugar_g_per_l", "additions_ml_per_l"),
        sugar,
    ),
    "peracetic_dilution": (fields("target_mg_per_l", "solution_ml", "solution_temp_c") | sheet, {}),
    "caustic_dilution": (
        {"of_what": choice(*OF_WHAT), "metal": choice(*METALS)}
        | fields("target_pct", "solution_ml")
        | sheet,
        {},
    ),
    "titration": (
        {"titrated": choice("peracetic", "caustic")}
        | fields("titrant_ml", "normality", "titration_sample_ml"),
        {},
    ),
    "solution_state": (
        fields("made_mg_per_l", "least_mg_per_l")
        | {"uses": st.integers(0, 9), "hours_old": st.floats(0, 100), "thrown_away": flag},
        {"last_check_mg_per_l": field("last_check_mg_per_l"), "most_uses": st.integers(1, 9)}
        | {"most_hours": st.floats(1, 100)},
    ),
}
"""For each rule the fields that it must be told and those that it may be told."""


SETTINGS: dict[str, tuple[str, ...]] = {
    "primings": (
        "ethanol_g_per_ml",
        "malt_extract_fermentable_pct",
        "malt_extract_moisture_pct",
        "priming_batch_step_ml",
        "warm_dray_temp_c",
        "pressure_warn_bar",
        "pressure_warn_pct_of_limit",
    ),
    "sealed_pressure": ("warm_dray_temp_c", "pressure_warn_bar", "pressure_warn_pct_of_limit"),
    "keg_pressure": ("pressure_warn_bar", "pressure_warn_pct_of_limit"),
    "cask_hops": ("cask_hops_clog_g_per_hl",),
    "finings_life": ("auxiliary_life_days",),
    "moves_after_fining": ("resettles_most",),
    "trial_ladder": ("trial_smallest_ml", "trial_isinglass_pt", "trial_auxiliary_pt"),
    "trial_proposal": ("trial_bright_score",),
    "racking_plan": ("short_fill_worth_pct",),
    "expected_strength": ("ethanol_g_per_ml",),
}
"""What a brewery may set of each rule's figures."""


@st.composite
def own_settings(draw: st.DrawFn, rule: str | None = None) -> Any:
    """A brewery's own values: mostly none, else in their range, and now and then out of it.

    Those that one of the bench's rules looks at, or any that there are.
    """
    every = tuple(sorted(name for name, one in FIGURES.items() if "low" in one))
    names = every if rule is None else SETTINGS.get(rule, ())
    if not names or draw(st.booleans()):
        return None
    chosen = sorted(draw(st.sets(st.sampled_from(names), min_size=1)))
    own = {name: draw(own_value(name)) for name in chosen}
    if draw(st.integers(0, 9)) == 9:
        own[draw(st.sampled_from(names))] = draw(WRONG)
    return own


@st.composite
def inputs(draw: st.DrawFn, name: str) -> Any:
    """Mostly what the rule can answer; else one field wrong, missing, or of an unknown name."""
    must, may = RULES[name]
    asked: dict[str, Any] = draw(st.fixed_dictionaries(must, optional=may))
    slip = draw(st.integers(0, 19))
    if slip == 19:
        asked[draw(st.sampled_from(sorted(must | may)))] = draw(WRONG)
    elif slip == 18 and asked:
        del asked[draw(st.sampled_from(sorted(asked)))]
    elif slip == 17:
        asked["volume_pints"] = 72
    return asked
