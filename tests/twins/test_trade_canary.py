"""A fault planted in a copy of any of the bench's rules on the phone is found."""

from pathlib import Path

import pytest
from hypothesis import strategies as st

from cellarapp.domain.bench.calculations import BENCH

from .planting import assert_found
from .trade_answers import for_the_wire, worked
from .trade_arguments import inputs, own_settings
from .twin import Twin

PLANTED = [
    ("co2_in_beer", "co2", "curve.c * tempF ** 2", "curve.c * tempF"),
    ("co2_in_beer", "gravity", "second + gravity", "second - gravity"),
    ("primings", "primings", "targetVol - sources.residualVol", "targetVol"),
    ("primings", "syrup", "Math.ceil(halfUp(neededMl / stepMl, 6))", "1"),
    ("primings", "sugars", 'name === "invert_syrup" || ', ""),
    ("sealed_pressure", "pressure", "Math.max(cellar, dray)", "cellar"),
    ("keg_pressure", "pressure", "halfUp(bar, 2) <= stop", "true"),
    ("finings_dose", "rates", 'unit === "ml_per_hl" || ', ""),
    ("cask_hops", "rates", "ounces > usual.high", "ounces > usual.usual_high"),
    ("finings_order", "finings-order", "Math.min(...since)", "Math.max(...since)"),
    ("finings_conditions", "finings-conditions", "value > window.high", "value >= window.high"),
    ("sulphite", "finings-conditions", "halfUp(total, 6) > work", "halfUp(total, 6) >= work"),
    ("finings_life", "finings-lots", "daysBetween(today, useBy)", "daysBetween(received, useBy)"),
    ("moves_after_fining", "finings-lots", "too_many: left < 0", "too_many: left <= 0"),
    ("vegan", "finings-lots", "recipe && !fined", "recipe"),
    ("trial_ladder", "trial", "step > 0 && halfUp", "halfUp"),
    ("trial_proposal", "trial", "hours <= afterH.high", "true"),
    ("racking_plan", "racking", "chunk *= 2", "chunk *= 4"),
    ("racking_plan", "racking", "one.capacityMl - other.capacityMl", "0"),
    ("bench_sheet", "sheet", 'unit === "mL" ? per_l : 0', "per_l"),
    ("fill_by_weight", "weight", "capacityMl > above_ml ?", "capacityMl < above_ml ?"),
    ("strength", "strength", "fall <= row.up_to_tenths", "fall < row.up_to_tenths"),
    ("expected_strength", "strength", "cut(total, digits)", "halfUp(total, digits)"),
    ("peracetic_dilution", "washing", "target / active", "target / active / 10"),
    ("caustic_dilution", "washing", 'metal === "aluminium"', 'metal === "wood"'),
    ("titration", "solution", ".naoh", ".co2"),
    ("solution_state", "solution", 'hours_old") >= asked', 'hours_old") > asked'),
]


def test_every_rule_has_a_planted_fault() -> None:
    """A rule whose comparison cannot fail is not compared."""
    assert {rule for rule, *_ in PLANTED} == BENCH.keys()


@pytest.mark.parametrize(("rule", "file", "right", "wrong"), PLANTED)
def test_a_planted_fault_is_found(
    tmp_path: Path, rule: str, file: str, right: str, wrong: str
) -> None:
    """The comparison of this rule can fail."""

    def compare(twin: Twin, data: st.DataObject) -> None:
        asked, own = data.draw(inputs(rule)), data.draw(own_settings(rule))
        answer = twin.ask(rule, for_the_wire(asked), for_the_wire(own))
        assert answer == ("value", worked(rule, asked, own))

    assert_found(tmp_path, f"bench/{file}.ts", right, wrong, compare)
