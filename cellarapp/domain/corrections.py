"""ORD-3: entries that put other entries right.

`voided` takes its target out of the fold, `renumbered` lets it count for another container, and
`settled` does either as the way out of a query. They work whatever came before them in the order,
and wait while their target is not known.
"""

from typing import NamedTuple

from cellarapp.domain.entries import CONTAINER_KINDS, CORRECTION_KINDS, Entry, order_key
from cellarapp.domain.queries import agreed_way, live_settlements
from cellarapp.domain.standing import Settlement


class Resolved(NamedTuple):
    """What is left of a set of entries once its corrections are applied.

    `counts_for` gives, for each entry that counts, the subject it counts for; `dropped_by` gives,
    for each that does not, the entry that took it out.
    """

    counts_for: dict[str, str]
    dropped_by: dict[str, str]


def resolve(entries: list[Entry]) -> Resolved:
    """Applies the corrections among the entries, in whatever order they are given."""
    known = {e["id"]: e for e in entries}
    dropped_by = _voids(known)
    moved_by: list[tuple[str, str, str]] = []
    for way, settlement in _agreed(known, dropped_by):
        act, target, *to = way.split(":")
        quarrel = settlement["facts"]["query"].split(":")[1:]
        if target not in quarrel or known.get(target, settlement)["kind"] not in CONTAINER_KINDS:
            continue
        if act == "void":
            dropped_by.setdefault(target, settlement["id"])
        elif act == "renumber":
            moved_by.append((order_key(settlement), target, to[0]))
    for entry in known.values():
        if entry["kind"] == "renumbered" and entry["id"] not in dropped_by:
            moved_by.append((order_key(entry), entry["facts"]["target"], entry["facts"]["to"]))
    counts_for = {e["id"]: e["subject"] for e in known.values() if e["id"] not in dropped_by}
    for _, target, to_number in sorted(moved_by):
        if target in counts_for and known[target]["kind"] in CONTAINER_KINDS:
            counts_for[target] = to_number
    return Resolved(counts_for, dropped_by)


def _voids(known: dict[str, Entry]) -> dict[str, str]:
    """Which entries are void, and by which entry.

    A void counts unless it is itself voided by one that counts. Decided from the ends of the
    chains inwards; entries that void each other in a ring, which no screen can make, all stand.
    """
    voiders: dict[str, list[str]] = {}
    for entry in known.values():
        if entry["kind"] == "voided" and entry["facts"]["target"] in known:
            voiders.setdefault(entry["facts"]["target"], []).append(entry["id"])
    stands = {entry_id for entry_id in known if entry_id not in voiders}
    dropped: set[str] = set()
    undecided = set(voiders)
    while undecided:
        decided = set()
        for target in undecided:
            if any(v in stands for v in voiders[target]):
                dropped.add(target)
                decided.add(target)
            elif all(v in dropped for v in voiders[target]):
                stands.add(target)
                decided.add(target)
        if not decided:
            break
        undecided -= decided
    return {target: min(v for v in voiders[target] if v in stands) for target in dropped}


def _agreed(known: dict[str, Entry], dropped_by: dict[str, str]) -> list[tuple[str, Entry]]:
    """LIFE-21: the ways on which all who settled a query agree, with one settlement of each."""
    by_query: dict[str, list[Entry]] = {}
    for entry in known.values():
        if entry["kind"] == "settled" and entry["id"] not in dropped_by:
            by_query.setdefault(entry["facts"]["query"], []).append(entry)
    agreed = []
    for settlements in by_query.values():
        live = live_settlements([_as_settlement(e) for e in settlements])
        way = agreed_way(live)
        if way is not None and way != "right":
            agreed.append((way, known[min(settlement["entry"] for settlement in live)]))
    return sorted(agreed, key=lambda pair: pair[1]["id"])


def _as_settlement(entry: Entry) -> Settlement:
    facts = entry["facts"]
    return {"entry": entry["id"], "way": facts["way"], "replaces": facts.get("replaces", [])}


def is_correction(entry: Entry) -> bool:
    """Whether the entry may change what other entries count for, so that a refold is needed."""
    return entry["kind"] in CORRECTION_KINDS
