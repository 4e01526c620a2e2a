"""Queries: what cannot be right as it stands, waiting for a person (LIFE-21, LIFE-22, LIFE-24)."""

from collections.abc import Collection
from typing import Any

from cellarapp.domain.entries import Entry
from cellarapp.domain.standing import Query, Settlement, Standing

LAPSING = frozenset({"unwashed"})
"""LIFE-24: queries that have nothing left to decide once the beer they are about is gone.

Whether a cask was clean matters while somebody may still drink from it. Kept for ever, such a
query would bury the ones that still need a person, at a brewery that forgets to note a wash.
"""

WHEREABOUTS = frozenset({"reported", "told_not_here"})
"""LIFE-27: queries about where a container is, which end once somebody has it in hand."""


def raise_query(
    standing: Standing, rule: str, quarrel: list[str], entry: Entry, **facts: Any
) -> None:
    """Adds a query to the standing; its id names the rule and the entries that quarrel."""
    query: Query = {
        "id": ":".join([rule, *quarrel]),
        "rule": rule,
        "entries": quarrel,
        "at": entry["effective_at"],
        "facts": facts,
    }
    others = [q for q in standing["queries"] if q["id"] != query["id"]]
    standing["queries"] = [*others, query]


def lapse(standing: Standing, rules: Collection[str] = LAPSING) -> None:
    """LIFE-24, LIFE-27: drops the queries of these rules; those that end with the beer."""
    standing["queries"] = [q for q in standing["queries"] if q["rule"] not in rules]


def live_settlements(settlements: list[Settlement]) -> list[Settlement]:
    """The settlements that no later one replaces."""
    replaced = {entry for s in settlements for entry in s["replaces"]}
    return [s for s in settlements if s["entry"] not in replaced]


def agreed_way(settlements: list[Settlement]) -> str | None:
    """LIFE-21: the way out on which all live settlements agree, or None."""
    ways = {s["way"] for s in live_settlements(settlements)}
    return ways.pop() if len(ways) == 1 else None


def open_queries(standing: Standing) -> list[Query]:
    """The queries that wait for a person.

    Settled as right by all who settled it, a query is closed. Settled in two ways it is open
    again. A way that takes an entry out needs no closing: without the entry the query is not
    raised.
    """
    settled = standing["settlements"]
    return [q for q in standing["queries"] if agreed_way(settled.get(q["id"], [])) != "right"]
