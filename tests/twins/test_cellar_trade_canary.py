"""A fault planted in a copy of any of the cellar's rules on the phone is found."""

from pathlib import Path

import pytest
from hypothesis import strategies as st

from cellarapp.domain.cellar.calculations import CELLAR

from .cellar_trade_arguments import inputs, own_settings
from .planting import assert_found
from .trade_answers import for_the_wire, worked
from .twin import Twin

PLANTED = [
    ("best_before", "days", "abvTenths <= row", "abvTenths < row"),
    ("life_left", "shelf-life", "left < expected", "left <= expected"),
    ("date_mark", "date-mark", "end === bestBeforeOn ? end :", "false ? end :"),
    ("date_mark", "date-mark", "packedOn, months.month_year", "bestBeforeOn, months.month_year"),
    ("lot_mark", "lot", ".toUpperCase()", ""),
    ("label", "label", "found > limit", "found >= limit"),
    ("label_strength", "label", "Math.min(byLabel, byTrue)", "byLabel"),
    ("off_by", "on-sale", "afterDays(since ?? tappedAt", "afterDays(tappedAt"),
    ("ageing", "ageing", "(tempC - referenceC)", "(referenceC - tempC)"),
    ("ageing", "temperatures", "reading.atMs >= stay.sinceMs", "true"),
    ("q10_between", "ageing", "firstDays / secondDays", "secondDays / firstDays"),
    ("cooling", "cooling", "(fromC - airC) / (toC - airC)", "(fromC - toC) / (toC - airC)"),
    ("cooled", "cooling", "Math.exp(-hours / tau)", "2 ** (-hours / tau)"),
    ("read_log", "logger", "backwards ? [...rows].reverse() : rows", "rows"),
    ("read_log", "log-times", "first <= beforeMs &&", "first > beforeMs &&"),
    ("read_log", "log-columns", "IN_F.test(head)", "IN_C.test(head)"),
    ("ready", "beer-temperature", "Math.max(highC, airC + nearC)", "highC"),
    ("ready", "outlook", "airIsFarther ? airC : gone.beerC", "gone.beerC"),
    ("ready", "timing", "done(cask.lastMovedAt) ?? stillage", "stillage"),
    ("ready", "conditioning", "q10 === BY_THE_DAYS", "q10 > BY_THE_DAYS"),
    ("plan_back", "plan", "Number(b.can) - Number(a.can) ||", ""),
    ("plan_back", "timing", "tap - gaps.soft)", "tap)"),
    ("plan_back", "working-day", "minute <= ends) return", "minute < ends) return"),
    ("todays_jobs", "plan", "job.do_at < midnight", "job.do_at > midnight"),
    ("left_by_dip", "gauging", "belowMl(inside, inside.bungMm - wetMm)", "belowMl(inside, wetMm)"),
    ("left_by_weight", "left", "(grossG - tareG) / density", "grossG / density"),
    ("sediment", "sediment", "share * holdsMl", "share"),
    ("run_out", "run-out", "Math.min(...ends)", "Math.max(...ends)"),
]


def test_every_rule_has_a_planted_fault() -> None:
    """A rule whose comparison cannot fail is not compared."""
    assert {rule for rule, *_ in PLANTED} == CELLAR.keys()


@pytest.mark.parametrize(("rule", "file", "right", "wrong"), PLANTED)
def test_a_planted_fault_is_found(
    tmp_path: Path, rule: str, file: str, right: str, wrong: str
) -> None:
    """The comparison of this rule can fail."""

    def compare(twin: Twin, data: st.DataObject) -> None:
        asked, own = data.draw(inputs(rule)), data.draw(own_settings())
        answer = twin.ask(rule, for_the_wire(asked), for_the_wire(own))
        assert answer == ("value", worked(rule, asked, own))

    assert_found(tmp_path, f"cellar/{file}.ts", right, wrong, compare)
