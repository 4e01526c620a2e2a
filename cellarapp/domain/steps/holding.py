"""Kept out of use, and words: set aside, released, scrapped, settled, noted."""

from cellarapp.domain.checks import hold
from cellarapp.domain.entries import Entry
from cellarapp.domain.queries import WHEREABOUTS, lapse
from cellarapp.domain.standing import Settlement, Standing


def set_aside(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-14."""
    hold(standing, entry, "set_aside")
    return []


def released(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-14: ends being set aside; only registering anew ends being scrapped."""
    if standing["held"] is not None and standing["held"]["state"] == "set_aside":
        standing["held"] = None
    return []


def scrapped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-15: ends everything."""
    hold(standing, entry, "scrapped")
    standing["contents"] = None
    standing["serving"] = None
    standing["planned"] = None
    standing["trip"] = None
    lapse(standing)
    lapse(standing, WHEREABOUTS)
    return []


def words_only(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-16 and corrections: for the history; the standing stays as it is.

    `forgotten` too: the ledger blanks what the report said before it is folded.
    """
    return []


def settled(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-21: how a person settled a query; kept with the query, whichever of them came first."""
    facts = entry["facts"]
    query = facts["query"]
    kept = standing["settlements"].get(query, [])
    settlement: Settlement = {
        "entry": entry["id"],
        "way": facts["way"],
        "replaces": facts.get("replaces", []),
    }
    both = sorted([*kept, settlement], key=lambda s: s["entry"])
    standing["settlements"] = {**standing["settlements"], query: both}
    return []
