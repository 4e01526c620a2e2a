"""A fault planted in the phone's rules is found: the comparison can fail.

Each is found for certain, by what the comparison asks before it draws anything. A fault that is
planted anew and not found wants a vector that tells it.
"""

import pytest

from cellarapp.domain.calculations import CALCULATIONS

from .comparing import assert_alike_where_known
from .twin import Fault, Twin

LEDGER = [
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
    ("cask_inputs", "cellar/told.ts", "standing.capacity_ml ?? ", ""),
    ("cask_inputs", "cellar/told.ts", "sale <= tapped", "sale >= tapped"),
    ("cask_inputs", "cellar/told.ts", "<= SAME_DECIDEGC", "< SAME_DECIDEGC"),
    ("best_before_on", "cellar/days.ts", "abvTenths / 10 > upTo", "abvTenths / 10 < upTo"),
    ("days_overdue", "trips.ts", "Math.max(0,", "Math.max(1,"),
    ("london_date", "calendar.ts", "ms + londonOffsetMs(ms))", "ms)"),
    ("london_minute", "calendar.ts", "+ 1440) % 1440", "+ 1439) % 1440"),
    ("london_minute", "calendar.ts", "month, 31, 1)", "month, 30, 1)"),
    ("london_minute", "calendar.ts", "ms >= summer[0]", "ms > summer[0]"),
    ("london_minute", "calendar.ts", "ms < summer[1]", "ms <= summer[1]"),
    ("london_minute", "calendar.ts", "ms < RULE_FROM_MS", "ms < 0 * RULE_FROM_MS"),
    ("london_instant", "calendar.ts", "minute * 60_000", "minute * 6_000"),
    ("same_time_after", "calendar.ts", "=== HOUR_MS ? inSummer", "=== 0 ? inSummer"),
    ("run_of_numbers", "numbers.ts", "count <= most", "count < most"),
    ("take_apart", "asset-number.ts", "n % 2 === 0 ? 3 : 1", "n % 2 === 0 ? 1 : 3"),
    ("normal_number", "numbers.ts", "{1,8}", "{1,9}"),
    ("may_record", "roles.ts", '"missing",', ""),
]
BENCH = [
    ("co2_in_beer", "bench/co2.ts", "curve.c * tempF ** 2", "curve.c * tempF"),
    ("co2_in_beer", "bench/gravity.ts", "second + gravity", "second - gravity"),
    ("primings", "bench/primings.ts", "targetVol - sources.residualVol", "targetVol"),
    ("primings", "bench/syrup.ts", "Math.ceil(halfUp(neededMl / stepMl, 6))", "1"),
    ("primings", "bench/sugars.ts", 'name === "invert_syrup" || ', ""),
    ("sealed_pressure", "bench/pressure.ts", "Math.max(cellar, dray)", "cellar"),
    ("keg_pressure", "bench/pressure.ts", "halfUp(bar, 2) <= stop", "true"),
    ("finings_dose", "bench/rates.ts", 'unit === "ml_per_hl" || ', ""),
    ("cask_hops", "bench/rates.ts", "ounces > usual.high", "ounces > usual.usual_high"),
    ("finings_order", "bench/finings-order.ts", "Math.min(...since)", "Math.max(...since)"),
    (
        "finings_conditions",
        "bench/finings-conditions.ts",
        "value > window.high",
        "value >= window.high",
    ),
    (
        "sulphite",
        "bench/finings-conditions.ts",
        "halfUp(total, 6) > work",
        "halfUp(total, 6) >= work",
    ),
    (
        "finings_life",
        "bench/finings-lots.ts",
        "daysBetween(today, useBy)",
        "daysBetween(received, useBy)",
    ),
    ("moves_after_fining", "bench/finings-lots.ts", "too_many: left < 0", "too_many: left <= 0"),
    ("vegan", "bench/finings-lots.ts", "recipe && !fined", "recipe"),
    ("trial_ladder", "bench/trial.ts", "ml > 0 && ml", "ml"),
    ("trial_proposal", "bench/trial.ts", "hours <= afterH.high", "true"),
    ("racking_plan", "bench/racking.ts", "chunk *= 2", "chunk *= 4"),
    ("racking_plan", "bench/racking.ts", "one.capacityMl - other.capacityMl", "0"),
    ("bench_sheet", "bench/sheet.ts", 'unit === "mL" ? per_l : 0', "per_l"),
    ("fill_by_weight", "bench/weight.ts", "capacityMl > above_ml ?", "capacityMl < above_ml ?"),
    ("strength", "bench/strength.ts", "fall <= row.up_to_tenths", "fall < row.up_to_tenths"),
    ("expected_strength", "bench/strength.ts", "cut(total, digits)", "halfUp(total, digits)"),
    ("peracetic_dilution", "bench/washing.ts", "target / active", "target / active / 10"),
    ("caustic_dilution", "bench/washing.ts", 'metal === "aluminium"', 'metal === "wood"'),
    ("titration", "bench/solution.ts", ".naoh", ".co2"),
    ("solution_state", "bench/solution.ts", 'hours_old") >= asked', 'hours_old") > asked'),
]
CELLAR = [
    ("best_before", "cellar/days.ts", "abvTenths / 10 > upTo", "abvTenths / 10 >= upTo"),
    ("life_left", "cellar/shelf-life.ts", "left < expected", "left <= expected"),
    ("date_mark", "cellar/date-mark.ts", "end === bestBeforeOn ? end :", "false ? end :"),
    (
        "date_mark",
        "cellar/date-mark.ts",
        "packedOn, months.month_year",
        "bestBeforeOn, months.month_year",
    ),
    ("lot_mark", "cellar/lot.ts", ".toUpperCase()", ""),
    ("label", "cellar/label.ts", "found > limit", "found >= limit"),
    ("label_strength", "cellar/label.ts", "Math.min(byLabel, byTrue)", "byLabel"),
    ("off_by", "cellar/on-sale.ts", "afterDays(since ?? tappedAt", "afterDays(tappedAt"),
    ("ageing", "cellar/ageing.ts", "(tempC - referenceC)", "(referenceC - tempC)"),
    ("ageing", "cellar/temperatures.ts", "reading.atMs >= stay.sinceMs", "true"),
    ("q10_between", "cellar/ageing.ts", "firstDays / secondDays", "secondDays / firstDays"),
    (
        "cooling",
        "cellar/cooling.ts",
        "Math.log(Math.abs(fromC - airC))",
        "Math.log(Math.abs(fromC + airC))",
    ),
    ("cooled", "cellar/cooling.ts", "Math.exp(-hours / tau)", "2 ** (-hours / tau)"),
    ("read_log", "cellar/logger.ts", "backwards ? [...rows].reverse() : rows", "rows"),
    ("read_log", "cellar/log-times.ts", "first <= beforeMs &&", "first > beforeMs &&"),
    ("read_log", "cellar/log-columns.ts", "IN_F.test(head)", "IN_C.test(head)"),
    ("ready", "cellar/beer-temperature.ts", "Math.max(highC, airC + nearC)", "highC"),
    ("ready", "cellar/outlook.ts", "airIsFarther ? airC : gone.beerC", "gone.beerC"),
    ("ready", "cellar/timing.ts", "done(cask.lastMovedAt) ?? stillage", "stillage"),
    ("ready", "cellar/conditioning.ts", "q10 === BY_THE_DAYS", "q10 > BY_THE_DAYS"),
    ("plan_back", "cellar/plan.ts", "Number(b.can) - Number(a.can) ||", ""),
    ("plan_back", "cellar/timing.ts", "tap - gaps.soft)", "tap)"),
    ("plan_back", "cellar/working-day.ts", "minute <= ends) return", "minute < ends) return"),
    ("todays_jobs", "cellar/plan.ts", "job.do_at < midnight", "job.do_at > midnight"),
    (
        "left_by_dip",
        "cellar/gauging.ts",
        "belowMl(inside, inside.bungMm - wetMm)",
        "belowMl(inside, wetMm)",
    ),
    ("left_by_weight", "cellar/left.ts", "(grossG - tareG) / density", "grossG / density"),
    ("sediment", "cellar/sediment.ts", "share * holdsMl", "share"),
    ("best_before", "figures.ts", "name, one, above, high", "name, one, low, high"),
    ("run_out", "cellar/run-out.ts", "Math.min(...ends)", "Math.max(...ends)"),
    ("run_out", "cellar/run-out.ts", "bar.nextOpen(gone)", "gone"),
    ("run_out", "cellar/open-hours.ts", "Math.min(ends, last)", "ends"),
    ("run_out", "cellar/open-hours.ts", "left > ends - begins", "left >= ends - begins"),
]
FLEET = [
    ("return_chance", "fleet/survival.ts", "one.entered_day < day", "one.entered_day <= day"),
    ("return_chance", "fleet/survival.ts", "one.days >= day", "one.days > day"),
    ("call_worth", "fleet/call-worth.ts", "daysOut <= agreedDays", "daysOut < agreedDays"),
    ("fleet_needed", "fleet/needed.ts", "found >= wanted", "found > wanted * 1.01"),
    ("fleet_needed", "fleet/needed.ts", "fills * sentBack - ", "0 * sentBack - "),
    ("fleet_needed", "fleet/needed.ts", "halfUp(turnDays, TURN_DIGITS) === 0", "turnDays === 0"),
    ("call_worth", "fleet/call-worth.ts", "Math.max(...stays", "Math.min(...stays"),
    ("call_worth", "fleet/call-worth.ts", "chanceStillOut(evidence, out) : stay", "stay : stay"),
    ("round_order", "fleet/stops.ts", "turned < now", "turned < now - 2000"),
    ("round_order", "fleet/stops.ts", "van ?? start", "start ?? van"),
    ("round_order", "fleet/stops.ts", "this.legM(here, n) < ", "this.legM(here, n) > "),
]
PLANTED = [*LEDGER, *BENCH, *CELLAR, *FLEET]


def test_every_calculation_has_a_planted_fault() -> None:
    """A rule whose comparison cannot fail is not compared."""
    assert CALCULATIONS.keys() - {rule for rule, *_ in PLANTED} == set()


@pytest.mark.parametrize(("rule", "file", "right", "wrong"), PLANTED)
def test_a_planted_fault_is_found(twin: Twin, rule: str, file: str, right: str, wrong: str) -> None:
    """The comparison of this rule can fail."""
    faulty = twin.with_fault(Fault(file, right, wrong))
    with pytest.raises(AssertionError):
        assert_alike_where_known(faulty, rule)
