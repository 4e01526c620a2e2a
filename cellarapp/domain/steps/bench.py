"""At the racking bench: registered, washed, inspected, filled, dosed."""

from typing import Any

from cellarapp.domain.checks import check_fits, check_has_beer, hold, put, same_day
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.entries import Entry
from cellarapp.domain.inference import AT_THE_BREWERY, be_back, be_emptied
from cellarapp.domain.queries import raise_query
from cellarapp.domain.standing import Dose, Standing, blank, mark


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
    standing["hire"] = facts.get("hire", standing["hire"])
    standing["inside"] = facts.get("inside", standing["inside"])
    standing["limit_millibar"] = facts.get("limit_millibar", standing["limit_millibar"])
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
        "doses": [_dose(entry, dose, moves=0) for dose in facts.get("doses", [])],
        "moves": 0,
        "moved": None,
        "dipped": None,
        "dips": [],
        "tasted": None,
    }
    standing["serving"] = None
    standing["planned"] = None
    standing["fills"] += 1
    if "place" in facts or standing["place"] is None:
        put(standing, entry, facts.get("place", AT_THE_BREWERY))
    return inferred


def dosed(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-17: primings, finings or hops added to the beer in it."""
    check_has_beer(standing, entry)
    contents = standing["contents"]
    if contents is not None:
        dose = _dose(entry, entry["facts"], moves=contents["moves"])
        standing["contents"] = {**contents, "doses": [*contents["doses"], dose]}
    return []


def _dose(entry: Entry, said: dict[str, Any], *, moves: int) -> Dose:
    return {
        **mark(entry),
        "what": said["what"],
        "amount_ml": said.get("amount_ml"),
        "amount_g": said.get("amount_g"),
        "lot": said.get("lot"),
        "moves": moves,
    }
