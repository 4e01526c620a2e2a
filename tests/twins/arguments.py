"""What each rule is asked in the comparison: its whole range, and beyond it what people mistype."""

from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.calendar import write_instant
from cellarapp.domain.entries import KINDS
from cellarapp.domain.roles import ROLES

from ..domain.histories import (
    RECORD_FACTS,
    TIMES,
    arrivals,
    entry_sets,
    of_one,
    record_sets,
    uncorrected,
)
from . import cellar_trade_arguments, fleet_trade_arguments, trade_arguments
from .own_values import own_or_none

instants = st.datetimes(datetime(1990, 1, 1), datetime(2100, 1, 1), timezones=st.just(UTC)).map(  # noqa: DTZ001
    write_instant
)
near_clock_changes = st.builds(
    lambda year, day, minute: write_instant(
        datetime(year, *day, 0, 0, tzinfo=UTC).replace(hour=minute // 60, minute=minute % 60)
    ),
    st.integers(2000, 2037),
    st.sampled_from([(3, n) for n in range(24, 32)] + [(10, n) for n in range(24, 32)]),
    st.integers(0, 180),
)
some_instants = instants | near_clock_changes
days = st.dates(datetime(1990, 1, 1).date(), datetime(2100, 1, 1).date()).map(str)  # noqa: DTZ001
whole_days = st.integers(-4000, 4000)
numbers = st.from_regex(r"[A-Z]{0,2}[0-9]{1,5}", fullmatch=True)
typed = numbers | st.text(alphabet=" .-afkK0123456789ß²٣é", max_size=12) | st.text(max_size=10)
beers = st.none() | st.fixed_dictionaries(
    {
        "fields": st.fixed_dictionaries(
            {},
            optional={
                "conditioning_days": st.integers(0, 400),
                "best_before_days": st.integers(0, 1000),
                "on_sale_days": st.integers(0, 60),
                "abv_tenths": st.integers(0, 300),
            },
        ),
        "set_by": st.just({}),
    }
)
shapes = st.none() | st.sampled_from(["cask", "keg"])
own_days = st.none() | st.fixed_dictionaries(
    {},
    optional={
        "conditioning_days": st.integers(-1, 400),
        "conditioning_q10": st.just(1) | st.floats(1, 3),
        "best_before_days": st.integers(1, 1000),
        "on_sale_days": st.integers(1, 60),
        "keg_on_sale_days": st.integers(1, 60),
        "window_4_to_5_days": st.integers(1, 100),
        "keg_window_days": st.just("56") | st.floats(1, 100),
    },
)
customers = st.none() | st.fixed_dictionaries(
    {
        "fields": st.fixed_dictionaries({}, optional={"agreed_days": st.integers(0, 365)}),
        "set_by": st.just({}),
    }
)
trips = st.fixed_dictionaries({"since": some_instants, "due_on": st.none() | days})

ARGUMENTS: dict[str, st.SearchStrategy[tuple[Any, ...]]] = {
    "normal_number": st.tuples(typed),
    "bare_digits": st.tuples(numbers),
    "matches": st.tuples(typed, numbers),
    "run_of_numbers": st.tuples(numbers, numbers)
    | st.builds(
        lambda front, start, more: (f"{front}{start}", f"{front}{start + more}"),
        st.sampled_from(["", "K", "F"]),
        st.integers(0, 2000),
        st.integers(-2, 105),
    ),
    "take_apart": st.tuples(
        st.from_regex(
            r"(https://a\.example/(x/)?8003/|\(8003\)|8003|\]Q38003)?0[0-9]{13}[A-Z0-9/%2F]{0,17}[/?#]?",
            fullmatch=True,
        )
        | st.sampled_from([3, 4, 5, 6, 7]).map(lambda n: f"0061414112345{n}F117")
        | st.sampled_from("0123456789").map(lambda n: f"https://c.example/8003/0952114100002{n}K3")
        | typed
    ),
    "most_that_fits_ml": st.tuples(
        st.none() | st.integers(1, 300_000), own_or_none("fill_above_capacity_permille")
    ),
    "london_date": st.tuples(some_instants | st.text(max_size=24)),
    "add_days": st.tuples(days | st.text("0123456789-", max_size=10), whole_days),
    "days_between": st.tuples(days, days),
    "london_minute": st.tuples(some_instants | st.text(max_size=24)),
    "london_instant": st.tuples(days, st.integers(0, 1440)),
    "same_time_after": st.tuples(some_instants, whole_days),
    "best_before_on": st.tuples(some_instants, beers, shapes, own_days),
    "due_on": st.tuples(some_instants, customers, own_or_none("agreed_days")),
    "days_out": st.tuples(trips, some_instants),
    "days_overdue": st.tuples(trips, some_instants),
}

# The histories' beer is best before 9 May: that day's first and last moment, and the next one.
LAST_GOOD_DAY = [
    "2026-05-08T23:00:00.000Z",
    "2026-05-09T22:59:59.999Z",
    "2026-05-09T23:00:00.000Z",
]
histories_and_beers = st.tuples(
    uncorrected.map(of_one),
    beers,
    st.sampled_from(LAST_GOOD_DAY) | st.sampled_from(TIMES) | some_instants,
    own_days,
)


def record_of(**fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """A record that says some of it, or none at all."""
    said = st.fixed_dictionaries({}, optional=fields)
    return st.none() | st.fixed_dictionaries({"fields": said, "set_by": st.just({})})


tenths = st.integers(80, 160) | st.sampled_from([-300, -301, 1000, 400, 0])
read_at = (
    st.sampled_from(TIMES)
    .map(datetime.fromisoformat)
    .flatmap(
        lambda time: st.integers(-300, 300).map(
            lambda m: write_instant(time + timedelta(minutes=m))
        )
    )
)
readings = st.lists(st.tuples(read_at, tenths).map(list), max_size=8, unique_by=lambda r: r[0])
places = record_of(temp_decidegc=tenths).flatmap(
    lambda place: readings.map(
        lambda read: None if place is None else {**place, "temperatures": sorted(read)}
    )
)
around = st.fixed_dictionaries(
    {
        "beer": record_of(
            conditioning_days=st.integers(0, 40),
            on_sale_days=st.integers(1, 9),
            vegan=st.booleans(),
            isinglass_ml_per_hl=st.sampled_from([0, 700]),
        ),
        "gyle": record_of(fining_temp_decidegc=tenths),
        "place": places,
    }
)
records_of_a_kind = st.sampled_from(sorted(RECORD_FACTS)).flatmap(
    lambda kind: st.tuples(st.just(kind), record_sets(kind))
)
ARGUMENTS |= {
    "ledger": st.tuples(entry_sets.flatmap(arrivals)),
    "records": records_of_a_kind,
    "readiness": histories_and_beers,
    "cask_inputs": st.tuples(uncorrected.map(of_one), around),
    "may_record": st.tuples(st.sampled_from(ROLES), st.sampled_from(sorted(KINDS))),
    "may_put_right": st.tuples(
        st.sampled_from(ROLES), st.sampled_from(sorted(KINDS)), st.booleans()
    ),
}

ARGUMENTS |= {
    rule: st.tuples(trade_arguments.inputs(rule), trade_arguments.own_settings(rule))
    for rule in trade_arguments.RULES
}
ARGUMENTS |= {
    rule: st.tuples(trade.inputs(rule), trade.own_settings())
    for trade in (cellar_trade_arguments, fleet_trade_arguments)
    for rule in trade.RULES
}
