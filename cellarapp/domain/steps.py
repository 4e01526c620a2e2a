"""What each kind of entry does to a container's standing (LIFE-1 to LIFE-16).

Every function changes the fresh standing it is given and answers with the steps it had to infer.
Nothing here refuses: what cannot be right raises a query and the work goes on (LIFE-22).
"""

from collections.abc import Callable
from typing import Any

from cellarapp.domain.checks import (
    carry,
    check_fits,
    check_has_beer,
    count_move,
    hold,
    put,
    same_day,
)
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.entries import Entry
from cellarapp.domain.inference import (
    AT_THE_BREWERY,
    be_back,
    be_emptied,
    be_stillaged,
    be_vented,
    end_of_beer,
)
from cellarapp.domain.queries import lapse, raise_query
from cellarapp.domain.standing import Standing, blank, mark

Step = Callable[[Standing, Entry], list[str]]


def registered(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-1: makes the container, or corrects what is known of it.

    After scrapping it begins a new life under the old number. Registered again as something else
    while in use, one number would stand on two containers: a query.
    """
    facts = entry["facts"]
    if standing["held"] is not None and standing["held"]["state"] == "scrapped":
        kept = (standing["queries"], standing["settlements"])
        standing.update(blank(standing["number"]))
        standing["queries"], standing["settlements"] = kept
    first = standing["registered"]
    if first is not None and (standing["kind"], standing["capacity_ml"]) != (
        facts["kind"],
        facts["capacity_ml"],
    ):
        raise_query(
            standing, "registered_twice", [first["entry"], entry["id"]], entry,
            first_kind=standing["kind"], second_kind=facts["kind"],
        )  # fmt: skip
    standing["registered"] = mark(entry)
    standing["kind"] = facts["kind"]
    standing["shape"] = CONTAINER_KINDS[facts["kind"]]["shape"]
    standing["capacity_ml"] = facts["capacity_ml"]
    standing["tare_g"] = facts.get("tare_g", standing["tare_g"])
    standing["owner"] = facts.get("owner", standing["owner"])
    if standing["place"] is None or "place" in facts:
        put(standing, entry, facts.get("place", AT_THE_BREWERY))
    if standing["contents"] is not None:
        check_fits(
            standing, entry, standing["contents"]["entry"], standing["contents"]["volume_ml"]
        )
    return []


def washed(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-2."""
    inferred = [*be_back(standing, entry), *be_emptied(standing, entry)]
    standing["clean"] = {**mark(entry), "state": "washed"}
    return inferred


def inspected(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-3: passed, or set aside with its reason."""
    inferred = be_back(standing, entry)
    passed = entry["facts"]["passed"]
    standing["clean"] = {**mark(entry), "state": "passed" if passed else "failed"}
    if not passed:
        hold(standing, entry, "set_aside")
    return inferred


def filled(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-4: filled at the bench.

    Beer on record from an earlier day has been drunk and nobody noted it: emptied is inferred.
    Beer on record from the same day makes a query: which of the two fills is right?
    """
    facts = entry["facts"]
    inferred = be_back(standing, entry)
    before = standing["contents"]
    if before is not None and same_day(before, entry):
        raise_query(
            standing, "filled_twice", [before["entry"], entry["id"]], entry,
            first_gyle=before["gyle"], second_gyle=facts["gyle"],
        )  # fmt: skip
    else:
        inferred += be_emptied(standing, entry)
        clean = standing["clean"]
        if clean is not None and clean["state"] in ("dirty", "failed"):
            raise_query(standing, "unwashed", [entry["id"]], entry, since=clean["since"])
    held = standing["held"]
    if held is not None and held["state"] == "set_aside":
        raise_query(
            standing, "filled_set_aside", [held["entry"], entry["id"]], entry, why=held["why"]
        )
    check_fits(standing, entry, entry["id"], facts["volume_ml"])
    standing["contents"] = {
        **mark(entry),
        "gyle": facts["gyle"],
        "volume_ml": facts["volume_ml"],
        "left_ml": facts["volume_ml"],
        "best_before": facts["best_before"],
        "moves": 0,
        "dipped": None,
    }
    standing["serving"] = None
    standing["fills"] += 1
    if "place" in facts or standing["place"] is None:
        put(standing, entry, facts.get("place", AT_THE_BREWERY))
    return inferred


def moved(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-5: to another place within the brewery; serving ends when it leaves the stillage."""
    inferred = be_back(standing, entry, with_its_beer=True)
    carry(standing, entry, entry["facts"]["place"])
    return inferred


def stillaged(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-6: set on the stillage, where serving begins."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    place, to = standing["place"], entry["facts"].get("place")
    if to is not None and (place is None or place["at"] != to):
        put(standing, entry, to)
        inferred += ["moved"]
    standing["serving"] = {"stillaged": mark(entry), "vented": None, "tapped": None}
    count_move(standing)
    return inferred


def vented(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-7: vented with a hard or a soft spile; noted again when the spile is changed."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    serving, missing = be_stillaged(standing, entry)
    standing["serving"] = {**serving, "vented": {**mark(entry), "spile": entry["facts"]["spile"]}}
    return inferred + missing


def tapped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-8: tapped; the clock of days on sale starts."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    serving, not_stillaged = be_stillaged(standing, entry)
    serving, not_vented = be_vented(serving, entry)
    standing["serving"] = {**serving, "tapped": mark(entry)}
    return inferred + not_stillaged + not_vented


def dipped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-9: millilitres left at a time. Beer does not come back into a cask by itself."""
    contents = standing["contents"]
    if contents is None:
        check_has_beer(standing, entry)
        return []
    left_ml = entry["facts"]["left_ml"]
    if left_ml > contents["left_ml"]:
        before = contents["dipped"]["entry"] if contents["dipped"] else contents["entry"]
        raise_query(
            standing, "dip_rose", [before, entry["id"]], entry,
            before_ml=contents["left_ml"], now_ml=left_ml,
        )  # fmt: skip
    check_fits(standing, entry, entry["id"], left_ml)
    standing["contents"] = {**contents, "left_ml": left_ml, "dipped": mark(entry)}
    return []


def emptied(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-11. Noted twice on one day it is one emptying; on another day it is odd."""
    clean = standing["clean"]
    if standing["contents"] is None and not (
        clean is not None and clean["state"] == "dirty" and same_day(clean, entry)
    ):
        raise_query(standing, "emptied_empty", [entry["id"]], entry)
    end_of_beer(standing, entry, inferred=False)
    return []


def sent(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-12: to a customer. Sent on from one pub to another it came back in between."""
    facts, trip = entry["facts"], standing["trip"]
    inferred: list[str] = []
    if trip is not None and not (trip["customer"] == facts["customer"] and same_day(trip, entry)):
        if trip["customer"] != facts["customer"]:
            raise_query(
                standing, "sent_elsewhere", [trip["entry"], entry["id"]], entry,
                first_customer=trip["customer"], second_customer=facts["customer"],
            )  # fmt: skip
        inferred += be_back(standing, entry, with_its_beer=True)
    held = standing["held"]
    if held is not None and held["state"] == "set_aside":
        raise_query(
            standing, "sent_set_aside", [held["entry"], entry["id"]], entry, why=held["why"]
        )
    check_has_beer(standing, entry)
    count_move(standing)
    standing["serving"] = None
    standing["trip"] = {**mark(entry), "customer": facts["customer"], "due_on": facts["due_on"]}
    standing["place"] = {**mark(entry), "at": facts["customer"], "with_customer": True}
    return inferred


def returned(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-13: back in the yard, dirty and empty, or with the ullage that came back in it.

    Noted twice on one day, from two phones in the yard, it is one return.
    """
    facts, back = entry["facts"], standing["returned"]
    if standing["trip"] is None and back is not None and same_day(back, entry):
        return []
    inferred = [] if standing["trip"] is not None else ["sent"]
    contents = standing["contents"]
    ullage_ml = facts.get("ullage_ml", 0)
    if ullage_ml > 0 and contents is not None:
        standing["contents"] = {**contents, "left_ml": min(ullage_ml, contents["left_ml"])}
        standing["serving"] = None
    else:
        end_of_beer(standing, entry, inferred=False)
    standing["trip"] = None
    standing["returned"] = mark(entry)
    put(standing, entry, facts.get("place", AT_THE_BREWERY))
    return inferred


def set_aside(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-14."""
    hold(standing, entry, "set_aside")
    return []


def released(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-14: ends being set aside; only registering anew ends being scrapped."""
    if standing["held"] is not None and standing["held"]["state"] == "set_aside":
        standing["held"] = None
    return []


def missing(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-15. Its trip stays open: the customer who had it last is still the one to ask."""
    hold(standing, entry, "missing")
    return []


def found(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-15: ends being missing; found at a place of the brewery, its trip has ended too.

    Found elsewhere than on the stillage where it was last seen, it is no longer being served.
    """
    if "place" not in entry["facts"]:
        return []
    inferred = be_back(standing, entry)
    carry(standing, entry, entry["facts"]["place"])
    return inferred


def scrapped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-15: ends everything."""
    hold(standing, entry, "scrapped")
    standing["contents"] = None
    standing["serving"] = None
    standing["trip"] = None
    lapse(standing)
    return []


def words_only(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-10, LIFE-16 and corrections: for the history; the standing stays as it is."""
    return []


def settled(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-21: how a person settled a query; kept with the query, whichever of them came first."""
    facts = entry["facts"]
    query = facts["query"]
    kept = standing["settlements"].get(query, [])
    settlement: dict[str, Any] = {
        "entry": entry["id"],
        "way": facts["way"],
        "replaces": facts.get("replaces", []),
    }
    both = sorted([*kept, settlement], key=lambda s: str(s["entry"]))
    standing["settlements"] = {**standing["settlements"], query: both}  # type: ignore[dict-item]
    return []


STEPS: dict[str, Step] = {
    "registered": registered,
    "washed": washed,
    "inspected": inspected,
    "filled": filled,
    "moved": moved,
    "stillaged": stillaged,
    "vented": vented,
    "tapped": tapped,
    "dipped": dipped,
    "checked": words_only,
    "emptied": emptied,
    "sent": sent,
    "returned": returned,
    "set_aside": set_aside,
    "released": released,
    "missing": missing,
    "found": found,
    "scrapped": scrapped,
    "noted": words_only,
    "voided": words_only,
    "renumbered": words_only,
    "settled": settled,
}

HANDLED = frozenset(STEPS) - {
    "registered", "missing", "scrapped", "noted", "voided", "renumbered", "settled",
}  # fmt: skip
"""Kinds in which somebody has the container in hand, so that it cannot be missing."""
