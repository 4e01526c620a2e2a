"""What an entry may hold, told in words that its author can act on."""

from datetime import timedelta
from typing import Any

import pytest

from cellarapp.domain.entries import KINDS
from cellarapp.ledger.forms import FACTS
from cellarapp.ledger.judge import Judged, judge

from ..making import NOW, Phone, batch, made_id


def judged(element: object, **how: Any) -> Judged:
    return judge(element, batch([element], **how))


def errors(element: object) -> dict[str, str]:
    """The pointers and words of what is wrong."""
    found = judged(element)
    assert found.entry is None
    assert found.problem is not None
    assert found.problem.slug == "malformed-entry"
    return {error.pointer: error.detail for error in found.problem.errors}


def test_there_is_a_form_for_every_kind_that_the_rules_know() -> None:
    """A kind without a form would be held for ever."""
    assert FACTS.keys() == KINDS


WHOLE = Phone().filled("117")


@pytest.mark.parametrize(
    ("change", "pointer", "words"),
    [
        ({"id": "7"}, "#/id", "id must be a UUID in lower case."),
        ({"id": None}, "#/id", "id must not be null; leave it out if there is nothing to say."),
        ({"device": made_id("x").upper()}, "#/device", "device must be a UUID in lower case."),
        ({"seq": 0}, "#/seq", "seq must be between 1 and 9999999999."),
        ({"seq": True}, "#/seq", "seq must be a whole number from 1 to 9999999999."),
        ({"seq": "1"}, "#/seq", "seq must be a whole number from 1 to 9999999999."),
        ({"seq": 1.0}, "#/seq", "seq must be a whole number from 1 to 9999999999."),
        ({"seq": 10**400}, "#/seq", "seq must be between 1 and 9999999999."),
        ({"subject": "ABC"}, "#/subject", "subject must be a container's number: one to eight"
         " letters and digits, at least one of them a digit."),
        ({"subject": ["117"]}, "#/subject", "subject must be a container's number: one to eight"
         " letters and digits, at least one of them a digit."),
        ({"happened_at": "yesterday"}, "#/happened_at",
         "happened_at must be a time with its zone, written as 2026-11-25T09:40:00.000Z."),
        ({"happened_at": "2026-11-25T09:40:00.000"}, "#/happened_at",
         "happened_at must be a time with its zone, written as 2026-11-25T09:40:00.000Z."),
        ({"happened_at": 1764060000}, "#/happened_at",
         "happened_at must be a time with its zone, written as 2026-11-25T09:40:00.000Z."),
        ({"person": "x" * 61}, "#/person", "person must have 0 to 60 characters."),
        ({"person": "x" * 60 + " "}, "#/person", "person must have 0 to 60 characters."),
        ({"person": 5}, "#/person", "person must be text."),
        ({"facts": []}, "#/facts", "This must be a JSON object."),
        ({"facts": None}, "#/facts", "facts must be a JSON object."),
        ({"colour": "red"}, "#/colour",
         "This is not known here. Leave it out, or update the server."),
        ({"a/b~c": 1}, "#/a~1b~0c", "This is not known here. Leave it out, or update the server."),
        ({"kind": ""}, "#/kind", "kind must have 1 to 40 characters."),
        ({"kind": 5}, "#/kind", "kind must be text."),
    ],
)  # fmt: skip
def test_envelope_that_is_refused(change: dict[str, Any], pointer: str, words: str) -> None:
    """Each fault has its pointer and says what it should be."""
    assert errors(WHOLE | change) == {pointer: words}


@pytest.mark.parametrize("missing", sorted(WHOLE))
def test_nothing_of_the_envelope_may_be_missing(missing: str) -> None:
    """An entry that lacks something is not completed by guessing."""
    found = errors({name: value for name, value in WHOLE.items() if name != missing})
    assert found[f"#/{missing}"].startswith(f"{missing} is missing")


FILL = WHOLE["facts"]


@pytest.mark.parametrize(
    ("kind", "facts", "pointer", "words"),
    [
        ("filled", FILL | {"volume_ml": 0}, "volume_ml",
         "volume_ml must be between 1 and 1227445 mL."),
        ("filled", FILL | {"volume_ml": 40_000.5}, "volume_ml",
         "volume_ml must be a whole number from 1 to 1227445 mL."),
        ("filled", FILL | {"best_before": "2026-02-30"}, "best_before",
         "best_before must be a date from 2000 to 2100, written as 2026-11-25."),
        ("filled", FILL | {"best_before": "1999-12-31"}, "best_before",
         "best_before must be a date from 2000 to 2100, written as 2026-11-25."),
        ("filled", FILL | {"best_before": "2101-01-01"}, "best_before",
         "best_before must be a date from 2000 to 2100, written as 2026-11-25."),
        ("filled", FILL | {"gyle": "AA12"}, "gyle", "gyle must be a UUID in lower case."),
        ("filled", {"gyle": made_id("g"), "volume_ml": 1}, "best_before",
         "best_before is missing."),
        ("registered", {"kind": "bucket", "capacity_ml": 5}, "kind",
         "kind must be one of pin, firkin, ten, eleven, kilderkin, twenty_two, barrel, hogshead,"
         " keg_20, keg_30, keg_50, other_cask, other_keg."),
        ("inspected", {"passed": "yes"}, "passed", "passed must be true or false."),
        ("inspected", {"passed": 1}, "passed", "passed must be true or false."),
        ("moved", {"place": "the yard"}, "place",
         'place must be a UUID in lower case or "brewery".'),
        ("vented", {"spile": "wooden"}, "spile", "spile must be one of hard, soft."),
        ("checked", {"temp_decidegc": 2000}, "temp_decidegc",
         "temp_decidegc must be between -300 and 1000 tenths of a degree C."),
        ("settled", {"query": "unwashed", "way": "right"}, "query",
         "query must be the id of a query."),
        ("settled", {"query": f"unwashed:{made_id('e')}", "way": "burn it"}, "way",
         'way must be "right", "void:" and the id of an entry, or "renumber:", the id of an entry,'
         ' ":" and a number.'),
        ("settled", {"query": f"unwashed:{made_id('e')}", "way": "right", "replaces": [1]},
         "replaces/0", "replaces must be a UUID in lower case."),
        ("renumbered", {"target": made_id("e"), "to": "?"}, "to",
         "to must be a container's number: one to eight letters and digits, at least one of them"
         " a digit."),
    ],
)  # fmt: skip
def test_facts_that_are_refused(kind: str, facts: dict[str, Any], pointer: str, words: str) -> None:
    """The name of the fact, its limits and its unit are in the words."""
    assert errors(Phone().entry(kind, "117", **facts)) == {f"#/facts/{pointer}": words}


def test_null_empties_a_figure_of_a_record_and_no_name() -> None:
    """Words are emptied by no words, where there may be none."""
    assert judged(Phone().entry("beer", made_id("b"), abv_tenths=None)).problem is None
    assert errors(Phone().entry("beer", made_id("b"), name=None)) == {
        "#/facts/name": "name must not be null; leave it out if there is nothing to say."
    }


def test_what_is_primed_with_is_taken_within_its_limits() -> None:
    """A syrup as bought, a priming syrup by its gravity, and the CO2 of a keg."""
    facts = {
        "priming_sugar": "glucose_syrup",
        "sugar_solids_tenths": 800,
        "sugar_fermentable_tenths": 725,
        "syrup_gravity_e4": 11_500,
        "keg_co2_centivols": 220,
    }
    assert judged(Phone().entry("beer", made_id("b"), **facts)).problem is None
    beyond = facts | {"sugar_solids_tenths": 1001, "keg_co2_centivols": 601}
    assert errors(Phone().entry("beer", made_id("b"), **beyond)) == {
        "#/facts/sugar_solids_tenths": "sugar_solids_tenths must be between 1 and 1000"
        " tenths of a per cent by weight.",
        "#/facts/keg_co2_centivols": "keg_co2_centivols must be between 0 and 600"
        " hundredths of a volume.",
    }


@pytest.mark.parametrize(
    ("name", "facts"),
    [("resettles_most", {"value_millionths": 5_000_000}),
     ("agreed_days", {"value_millionths": 28_000_000}),
     ("trial_isinglass_pt", {"values_millionths": [1_000_000, 2_500_000]}),
     ("strength_classes", {"values_millionths": [4_000_000, 5_000_000, 8_000_000]}),
     ("strength_classes", {"retired": True})],
)  # fmt: skip
def test_a_figure_is_set_within_its_range(name: str, facts: dict[str, Any]) -> None:
    """One value, or the values of a list."""
    assert judged(Phone().entry("setting", name, **facts)).problem is None


@pytest.mark.parametrize(
    ("name", "facts", "says"),
    [("resettles_most", {"value_millionths": 10**12}, "from 0 to 20 moves"),
     ("agreed_days", {"value_millionths": -1}, "from 0 to 1000 days"),
     ("strength_classes", {"values_millionths": [4_000_000]}, "from 3 to 3 values"),
     ("strength_classes", {"values_millionths": [1_000_000, 2_000_000, 31_000_000]}, "to 30 %"),
     ("conditioning_counts_between_c", {"values_millionths": [20_000_000, 10_000_000]},
      "none below the one before it")],
)  # fmt: skip
def test_a_figure_set_beyond_its_range_is_told_it(
    name: str, facts: dict[str, Any], says: str
) -> None:
    """In its range, its count and its order: every rule that uses it would refuse it."""
    [fact] = facts
    told = errors(Phone().entry("setting", name, **facts))
    assert list(told) == [f"#/facts/{fact}"]
    assert says in told[f"#/facts/{fact}"]


@pytest.mark.parametrize("element", [None, 3, "entry", [], [WHOLE], True, 1.5])
def test_element_that_is_no_object_is_refused(element: object) -> None:
    """Whatever it is."""
    assert errors(element) == {"#": "This must be a JSON object."}


def test_nesting_beyond_reason_is_refused() -> None:
    """A list in a list in a list, and so on."""
    deep: list[Any] = []
    for _ in range(100_000):
        deep = [deep]
    assert errors({"id": "x", "facts": deep}) == {"#": "This is nested too deeply to be read."}


@pytest.mark.parametrize("written", ["f 117", "F-117", " f.117 ", "F117"])
def test_number_is_put_into_its_normal_form(written: str) -> None:
    """Two phones that write it in two ways speak of one container."""
    entry = judged(Phone().entry("tapped", written)).entry
    assert entry is not None
    assert entry["subject"] == "F117"


def test_way_out_of_a_query_names_a_number_in_its_normal_form() -> None:
    """What the rules read is what the row is called."""
    way = f"renumber:{made_id('e')}:k 12"
    settled = Phone().entry("settled", "117", query=f"unwashed:{made_id('e')}", way=way)
    entry = judged(settled).entry
    assert entry is not None
    assert entry["facts"]["way"] == f"renumber:{made_id('e')}:K12"


def test_words_are_repaired_and_not_refused() -> None:
    """Half a pair of surrogates and a nul cannot be stored by every database."""
    entry = judged(Phone().entry("noted", "117", words="\ud800 bung\x00 split\nagain ")).entry
    assert entry is not None
    assert entry["facts"] == {"words": "bung split\nagain"}


def test_kind_that_is_not_known_is_held_as_it_was_sent() -> None:
    """It may be known to a later release."""
    found = judged(Phone().entry("blessed", "f 117", by="a bishop"))
    assert (found.hold, found.entry) == (True, None)
    assert found.problem is not None
    assert found.problem.slug == "unknown-kind"
    assert '"subject":"f 117"' in found.raw


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("2026-11-25T09:40:00.000Z", "2026-11-25T09:40:00.000Z"),
        ("2026-11-25T09:40:00+01:00", "2026-11-25T08:40:00.000Z"),
        ("2026-11-25T09:40:00.123999Z", "2026-11-25T09:40:00.123Z"),
        ("0001-01-01T00:00:00+14:00", "0001-01-01T00:00:00.000Z"),
        ("9999-12-31T23:59:59-14:00", "9999-12-31T23:59:59.000Z"),
    ],
)
def test_any_time_with_a_zone_can_be_read(written: str, kept: str) -> None:
    """However wrong the clock, it never stops an entry."""
    entry = judged(Phone().entry("tapped", "117", at=written)).entry
    assert entry is not None
    assert entry["happened_at"] == kept


def test_clock_that_is_behind_by_hours_is_corrected() -> None:
    """By what it was behind when it sent."""
    entry = judged(WHOLE, sent_at=NOW - timedelta(hours=2)).entry
    assert entry is not None
    assert (entry["effective_at"], entry["clock"]) == ("2026-11-25T11:00:00.000Z", "corrected")
