"""The vectors themselves: well formed, complete, and able to find a fault."""

from collections import Counter
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from cellarapp.domain.calculations import CALCULATIONS

from ..twins import reference
from .reading import FOLDER, Case, entries_of, faults, files, lacking, read

RULES = {
    *(f"ORD-{n}" for n in range(1, 5)),
    *(f"LIFE-{n}" for n in range(1, 25)),
    *(f"READY-{n}" for n in range(1, 4)),
    *(f"TRIP-{n}" for n in range(1, 4)),
    "TEMP-1",
    "CHASE-1",
    "LINK-1",
    "NUM",
    "CAL",
    "SIZE",
}
ledger_files = [path for path in files() if read(path)["twin"] == "ledger"]


@pytest.mark.parametrize("path", files(), ids=lambda path: path.stem)
def test_file_keeps_to_the_schema(path: Path) -> None:
    """A reader in another language can rely on it."""
    jsonschema.Draft202012Validator(read(FOLDER / "schema.json")).validate(read(path))


@pytest.mark.parametrize("path", files(), ids=lambda path: path.stem)
def test_file_is_named_for_its_rule_and_says_each_case_once(path: Path) -> None:
    """Any rule id leads to its file, and any failure to its case."""
    file = read(path)
    assert path.stem.split(".")[0] == file["rule"].lower()
    assert [
        n for n, many in Counter(case["id"] for case in file["cases"]).items() if many > 1
    ] == []
    assert file["twin"] in reference.RULES


def test_every_rule_has_vectors() -> None:
    """A rule without a vector is one that two languages may read in two ways."""
    assert RULES - {read(path)["rule"] for path in files()} == set()


def test_every_calculation_has_vectors() -> None:
    """And each of them says what it refuses."""
    every = map(read, files())
    asked = {file["twin"]: file["cases"] for file in every if file["twin"] in CALCULATIONS}
    assert asked.keys() == CALCULATIONS.keys()
    assert all(any("refused" in case for case in cases) for cases in asked.values())


@pytest.mark.parametrize("path", ledger_files, ids=lambda path: path.stem)
def test_expected_queries_and_steps_name_entries_of_the_case(path: Path) -> None:
    """A mistyped name would expect something that can never be."""
    for case in read(path)["cases"]:
        names = {entry["id"] for entry in entries_of(case)}
        named = {name for query in case.get("open", []) for name in query.split(":")[1:]}
        named |= case.get("inferred", {}).keys() | case.get("dropped_by", {}).keys()
        named |= set(case.get("dropped_by", {}).values())
        assert named <= names


def test_entries_are_written_out_as_the_schema_says() -> None:
    """The short notation stands for a whole entry, and `more` replaces any of it."""
    row = ["a", "2026-03-02 09:40", "washed", {}]
    case = {"entries": [row, [*row, {"device": "phone-2", "clock": "corrected"}]]}
    first, second = entries_of(case)
    assert first == {
        "id": "a", "device": "phone-1", "seq": 1, "kind": "washed", "subject": "117",
        "happened_at": "2026-03-02T09:40:00.000Z", "effective_at": "2026-03-02T09:40:00.000Z",
        "person": "Ash", "facts": {}, "rules": 1, "clock": "ok",
    }  # fmt: skip
    assert second == {**first, "seq": 2, "device": "phone-2", "clock": "corrected"}


def answering(**changed: Any) -> Any:
    """The rules, with one part of the ledger's answer changed."""

    def ask(rule: str, *args: Any) -> tuple[str, Any]:
        sort, value = reference.answer(rule, *args)
        return sort, {**value, **changed}

    return ask


@pytest.mark.parametrize(
    "changed",
    [
        {"inferred": {}},
        {"dropped_by": {"w": "x"}},
        {"standings": {}},
    ],
    ids=["a step not inferred", "an entry dropped", "no standing"],
)
def test_planted_fault_is_found(changed: dict[str, Any]) -> None:
    """The comparison can fail."""
    case = next(c for c in read(FOLDER / "life-2.json")["cases"] if c["id"] == "beer-on-record")
    assert faults(Case("LIFE-2", "ledger", case), reference.answer) == []
    assert faults(Case("LIFE-2", "ledger", case), answering(**changed))


@pytest.mark.parametrize(
    ("expected", "found"),
    [
        ({"a": 1}, {"a": 2}),
        ({"a": None}, {"a": {}}),
        ({"a": {}}, {"a": {"b": 1}}),
        ({"a": {"b": 1}}, {"a": None}),
        ({"a": [1]}, {"a": [1, 2]}),
        ({"a": None}, {}),
        ({"a": 1}, {"a": True}),
    ],
)
def test_difference_is_found(expected: Any, found: Any) -> None:
    """Only keys that are not named may be anything."""
    assert lacking("here", expected, found) != []
    assert lacking("here", expected, {**expected, "more": 1}) == []


@pytest.mark.parametrize(
    "answer",
    [
        ("value", {"worked": {"result": {"left_days": 13, "expected_days": 14}}}),
        ("value", {"refused": "out-of-range", "facts": {"field": "shape"}}),
        ("error", "fault"),
    ],
)
def test_wrong_calculation_is_found(answer: Any) -> None:
    """Another result, a refusal, or a rule that failed altogether."""
    case = read(FOLDER / "shelf-3.json")["cases"][0]
    assert faults(Case("SHELF-3", "life_left", case), reference.answer) == []
    assert faults(Case("SHELF-3", "life_left", case), lambda *_: answer)
