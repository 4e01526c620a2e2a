"""What the fleet's rules are asked: few days, many of them equal, and what people get wrong."""

from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.containers import CONTAINER_KINDS

from .own_values import own_value
from .trade_arguments import WRONG, Fields, choice, field, fields, flag, rows

days = st.integers(0, 60) | field("days")
trips = rows(
    {
        "entered_day": st.sampled_from([0, 0, 0, 7, 30]) | field("entered_day"),
        "days": days,
        "returned": st.integers(0, 12) | field("returned"),
        "open": st.integers(0, 3),
    },
    most=12,
)
out = rows(
    {"days_out": days},
    most=4,
    maybe={
        "kind": choice(*CONTAINER_KINDS),
        "agreed_days": st.integers(0, 30) | field("agreed_days"),
        "value_pounds": st.integers(1, 200) | field("value_pounds"),
        "deposit_pounds": st.integers(0, 100) | field("deposit_pounds"),
        "hire_pounds_a_day": st.floats(0, 2) | field("hire_pounds_a_day"),
    },
)
place = {
    "latitude_e6": st.integers(54_000_000, 54_400_000) | field("latitude_e6"),
    "longitude_e6": st.integers(-2_900_000, -2_100_000) | field("longitude_e6"),
}
stops = st.lists(
    st.fixed_dictionaries(place) | st.fixed_dictionaries(place) | st.just({}), max_size=9
) | rows({}, most=3, maybe=place)
end = st.none() | st.fixed_dictionaries(place) | st.fixed_dictionaries({}, optional=place)

RULES: dict[str, tuple[Fields, Fields]] = {
    "return_chance": ({"trips": trips, "days_out": days}, {}),
    "call_worth": ({"own": trips, "all": trips, "out": out}, {}),
    "fleet_needed": (
        {"trips": trips, "out": rows({"days_out": days}, most=6), "at_home": st.integers(0, 200)}
        | {"fills_a_week": st.floats(0, 60) | field("fills_a_week")}
        | {"home_days": st.integers(0, 40) | field("home_days")}
        | fields("lost_a_year", "value_pounds"),
        {},
    ),
    "round_order": (
        {"stops": stops},
        {"start": end, "van": end},
    ),
}
"""For each rule the fields that it must be told and those that it may be told."""

FLEET_SETTINGS = [
    "agreed_days",
    "call_worth_least_pounds",
    "chance_within_days",
    "fleet_certainty_pct",
    "fleet_weeks_ahead",
    "interval_errors",
    "firkin_value_pounds",
    "lost_after_days",
    "missing_proposed_pct",
    "other_cask_value_pounds",
    "own_trips_enough",
]


@st.composite
def own_settings(draw: st.DrawFn) -> Any:
    """A brewery's own values: often none, else in their range, and now and then out of it."""
    if draw(flag):
        return None
    chosen = sorted(draw(st.sets(st.sampled_from(FLEET_SETTINGS), min_size=1, max_size=4)))
    own: dict[str, Any] = {name: draw(own_value(name)) for name in chosen}
    if draw(st.integers(0, 9)) == 9:
        own[draw(st.sampled_from(FLEET_SETTINGS))] = draw(WRONG)
    return own


@st.composite
def inputs(draw: st.DrawFn, name: str) -> Any:
    """Mostly what the rule can answer; else one field wrong, missing, or of an unknown name."""
    must, may = RULES[name]
    asked: dict[str, Any] = draw(st.fixed_dictionaries(must, optional=may))
    slip = draw(st.integers(0, 19))
    if slip == 19:
        asked[draw(st.sampled_from(sorted(asked)))] = draw(WRONG)
    elif slip == 18:
        del asked[draw(st.sampled_from(sorted(asked)))]
    elif slip == 17:
        asked["pints"] = 72
    return asked
