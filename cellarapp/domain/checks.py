"""What several steps do or look at in the same way."""

from typing import Literal

from cellarapp.domain.calendar import london_date
from cellarapp.domain.entries import Entry
from cellarapp.domain.queries import raise_query
from cellarapp.domain.standing import Mark, Standing, mark


def same_day(earlier: Mark, entry: Entry) -> bool:
    """Whether the entry came on the same day, in London, as what it is compared with."""
    return london_date(earlier["since"]) == london_date(entry["effective_at"])


def put(standing: Standing, entry: Entry, place: str) -> None:
    """At a place of the brewery."""
    standing["place"] = {**mark(entry), "at": place, "with_customer": False}


def hold(
    standing: Standing, entry: Entry, state: Literal["set_aside", "missing", "scrapped"]
) -> None:
    """Scrapped is the end: nothing but registering anew puts another hold in its place."""
    held = standing["held"]
    if held is None or held["state"] != "scrapped":
        standing["held"] = {**mark(entry), "state": state, "why": entry["facts"].get("why", "")}


def count_move(standing: Standing, entry: Entry) -> None:
    """Beer that is moved has to settle again."""
    contents = standing["contents"]
    if contents is not None:
        standing["contents"] = {**contents, "moves": contents["moves"] + 1, "moved": mark(entry)}


def carry(standing: Standing, entry: Entry, place: str) -> None:
    """To a place of the brewery; away from where it lay, serving ends and the beer is stirred."""
    before = standing["place"]
    if before is None or before["at"] != place:
        standing["serving"] = None
        count_move(standing, entry)
    put(standing, entry, place)


def check_has_beer(standing: Standing, entry: Entry) -> None:
    """What is served or sent should have beer in it."""
    if standing["contents"] is None:
        rule = "sent_empty" if entry["kind"] == "sent" else "served_empty"
        raise_query(standing, rule, [entry["id"]], entry, did=entry["kind"])


def check_fits(standing: Standing, entry: Entry, culprit: str, volume_ml: int) -> None:
    """No container holds more than it holds; the culprit is the entry that says so."""
    capacity_ml = standing["capacity_ml"]
    if capacity_ml is not None and volume_ml > capacity_ml:
        raise_query(
            standing, "overfull", [culprit], entry, volume_ml=volume_ml, capacity_ml=capacity_ml
        )
