"""A fault planted in a copy of the phone's rules is found: the comparison can fail."""

from pathlib import Path

import pytest
from hypothesis import strategies as st

from ..domain.histories import canonical
from . import reference
from .arguments import ARGUMENTS
from .planting import assert_found
from .twin import Twin

PLANTED = [
    ("ledger", "fold.ts", "a.key < b.key", "a.key > b.key"),
    ("ledger", "steps/bench.ts", "standing.fills += 1", "standing.fills += 2"),
    ("ledger", "checks.ts", "volumeMl <= capacityMl", "volumeMl < capacityMl"),
    ("ledger", "inference.ts", "endOfBeer(standing, entry, true)", "0"),
    ("ledger", "steps/trips.ts", 'says === "here" ?', "says ?"),
    ("ledger", "corrections.ts", 'act === "void" &&', 'act === "no" &&'),
    ("ledger", "queries.ts", "ways.size === 1 &&", "ways.size >= 1 &&"),
    ("records", "records.ts", "key <= (record", "key >= (record"),
    ("records", "records.ts", "value === null", "value === 0"),
    ("records", "records.ts", "key > stopped", "true"),
    ("readiness", "readiness.ts", "londonDate(now) > bestBefore", "now > bestBefore"),
    ("best_before_on", "cellar/days.ts", "abvTenths <= row", "abvTenths > row"),
    ("days_overdue", "trips.ts", "Math.max(0,", "Math.max(1,"),
    ("london_date", "calendar.ts", "ms + londonOffsetMs(ms))", "ms)"),
    ("london_minute", "calendar.ts", "+ 1440) % 1440", "+ 1439) % 1440"),
    ("london_instant", "calendar.ts", "minute * 60_000", "minute * 6_000"),
    ("same_time_after", "calendar.ts", "=== HOUR_MS ? inSummer", "=== 0 ? inSummer"),
    ("run_of_numbers", "numbers.ts", "count <= most", "count < most"),
    ("take_apart", "asset-number.ts", "n % 2 === 0 ? 3 : 1", "n % 2 === 0 ? 1 : 3"),
    ("normal_number", "numbers.ts", "{1,8}", "{1,9}"),
    ("may_record", "roles.ts", '"missing",', ""),
]


@pytest.mark.parametrize(("rule", "file", "right", "wrong"), PLANTED)
def test_a_planted_fault_is_found(
    tmp_path: Path, rule: str, file: str, right: str, wrong: str
) -> None:
    """Every subject of the rules has a fault that the comparison must find."""

    def compare(twin: Twin, data: st.DataObject) -> None:
        args = data.draw(ARGUMENTS[rule])
        assert canonical(twin.ask(rule, *args)) == canonical(reference.answer(rule, *args))

    assert_found(tmp_path, file, right, wrong, compare)
