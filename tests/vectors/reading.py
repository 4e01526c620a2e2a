"""Reads the vectors, writes their entries out, and says whether an answer is the one expected.

The notation is described in schema.json; a reader in another language does the same few things.
"""

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

FOLDER = Path(__file__).parent

Answer = tuple[str, Any]
"""("value", what the rule says) or ("error", the slug of what it refuses)."""
Ask = Callable[..., Answer]


class Case(NamedTuple):
    """One case with the rule it belongs to and the function that is asked."""

    rule: str
    twin: str
    case: dict[str, Any]


def files() -> list[Path]:
    """The vector files."""
    return sorted(path for path in FOLDER.glob("*.json") if path.name != "schema.json")


def read(path: Path) -> dict[str, Any]:
    """A file as it stands."""
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


def cases() -> Iterator[Case]:
    """Every case of every file."""
    for path in files():
        file = read(path)
        for case in file["cases"]:
            yield Case(file["rule"], file["twin"], case)


def entries_of(case: dict[str, Any]) -> list[dict[str, Any]]:
    """The rows of a case written out as entries."""
    return [_entry(place, *row) for place, row in enumerate(case.get("entries", []), start=1)]


def _entry(
    place: int, name: str, at: str, kind: str, facts: Any, more: Any = None
) -> dict[str, Any]:
    instant = f"{at.replace(' ', 'T')}:00.000Z"
    return {
        "id": name,
        "device": "phone-1",
        "seq": place,
        "kind": kind,
        "subject": "117",
        "happened_at": instant,
        "effective_at": instant,
        "person": "Ash",
        "facts": facts,
        "rules": 1,
        "clock": "ok",
        **(more or {}),
    }


def faults(case: Case, ask: Ask) -> list[str]:
    """What is wrong with the answers to a case; entries are also asked backwards and doubled."""
    return [fault for args in arguments(case) for fault in _faults(case, ask(case.twin, *args))]


def arguments(case: Case) -> Iterator[list[Any]]:
    """What the rule is asked, entries in several orders."""
    if "asked" in case.case:
        yield [case.case["asked"], case.case.get("own")]
        return
    entries = entries_of(case.case)
    orders = [entries, entries[::-1], entries + entries] if case.twin == "ledger" else [entries]
    for order in orders:
        yield [order if arg == "$entries" else arg for arg in case.case.get("args", ["$entries"])]


def _faults(case: Case, answered: Answer) -> list[str]:
    given = case.case
    if "asked" in given:
        return _calculation_faults(given, answered)
    sort, answer = answered
    if "error" in given:
        return different("error", ("error", given["error"]), (sort, answer))
    if sort == "error":
        return [f"refused with {answer}"]
    if case.twin == "ledger":
        return _ledger_faults(given, answer)
    return different("answer", given["expect"], answer)


def _ledger_faults(given: dict[str, Any], answer: Any) -> list[str]:
    standings = answer["standings"]
    opened = sorted(query for found in standings.values() for query in found["open"])
    found = [
        *different("open", sorted(given.get("open", [])), opened),
        *different("inferred", given.get("inferred", {}), answer["inferred"]),
        *different("dropped_by", given.get("dropped_by", {}), answer["dropped_by"]),
    ]
    look = different if given.get("exact") else lacking
    for number, expected in given["expect"].items():
        standing = standings.get(number, {}).get("standing")
        found += look(number, expected, standing)
    return found


def _calculation_faults(given: dict[str, Any], answered: Answer) -> list[str]:
    sort, answer = answered
    if sort == "error":
        return [f"failed with {answer}"]
    if "refused" in given:
        return lacking("refused", given["refused"], answer)
    if "worked" not in answer:
        return [f"refused with {answer}"]
    return lacking("result", _numbers(given["expect"]), _numbers(answer["worked"]["result"]))


def _numbers(value: Any) -> Any:
    """12.0 and 12 are one number, which the two languages write in two ways."""
    if isinstance(value, dict):
        return {name: _numbers(one) for name, one in value.items()}
    if isinstance(value, list):
        return [_numbers(one) for one in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


def different(where: str, expected: Any, found: Any) -> list[str]:
    """Whether two values are the same, byte for byte in canonical JSON."""
    wanted, got = canonical(expected), canonical(found)
    return [] if wanted == got else [f"{where}: expected {wanted}, found {got}"]


def lacking(where: str, expected: Any, found: Any) -> list[str]:
    """What of the expected keys is not so; keys that are not named may be anything."""
    if not isinstance(expected, dict) or not isinstance(found, dict) or not expected:
        return different(where, expected, found)
    return [
        fault
        for key, value in expected.items()
        for fault in (
            lacking(f"{where}.{key}", value, found[key])
            if key in found
            else [f"{where}.{key}: not there"]
        )
    ]


def canonical(value: Any) -> str:
    """One text for one value: keys sorted, no blanks."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
