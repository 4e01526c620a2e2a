"""On the way to the glass: moved, stillaged, vented, tapped, stooped, dipped, emptied."""

from cellarapp.domain.checks import carry, check_fits, check_has_beer, count_move, put, same_day
from cellarapp.domain.entries import Entry
from cellarapp.domain.inference import be_back, be_stillaged, be_vented, end_of_beer, on_stillage
from cellarapp.domain.queries import raise_query
from cellarapp.domain.standing import Dip, Standing, mark

MOST_DIPS = 20
"""So many are kept: a cask that is dipped hourly tells its pace from those."""


def moved(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-5: to another place within the brewery; serving ends when it leaves the stillage.

    Moved while on record as with a customer it came back: with its beer if it went out today,
    empty if it has been away for longer.
    """
    trip = standing["trip"]
    just_sent = trip is not None and same_day(trip, entry)
    inferred = be_back(standing, entry, with_its_beer=just_sent)
    carry(standing, entry, entry["facts"]["place"])
    return inferred


def stillaged(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-6: set on the stillage, where serving begins; noted again it lies there as it did."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    place, to = standing["place"], entry["facts"].get("place")
    if to is None or (place is not None and place["at"] == to):
        if standing["serving"] is not None:
            return inferred
    else:
        put(standing, entry, to)
        inferred += ["moved"]
    standing["serving"] = on_stillage(mark(entry))
    count_move(standing, entry)
    return inferred


def vented(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-7: vented with a hard or a soft spile; noted again when the spile is changed."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    serving, missing = be_stillaged(standing, entry)
    before = serving["vented"]
    standing["serving"] = {
        **serving,
        "vented": {
            **mark(entry),
            "spile": entry["facts"]["spile"],
            "first_at": before["first_at"] if before else entry["effective_at"],
        },
    }
    return inferred + missing


def tapped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-8: tapped; the clock of days on sale starts."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    serving, not_stillaged = be_stillaged(standing, entry)
    serving, not_vented = be_vented(serving, entry)
    standing["serving"] = {**serving, "tapped": mark(entry)}
    return inferred + not_stillaged + not_vented


def stooped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-18: tilted to bring the last of it to the tap; from then on a dip tells nothing."""
    inferred = be_back(standing, entry, with_its_beer=True)
    check_has_beer(standing, entry)
    serving, not_stillaged = be_stillaged(standing, entry)
    standing["serving"] = {**serving, "stooped": mark(entry)}
    return inferred + not_stillaged


def dipped(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-9: millilitres left at a time. Beer does not come back into a cask by itself.

    Litres that were read off a wet dip are doubtful once the cask is tilted.
    """
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
    serving = standing["serving"]
    tilted = serving["stooped"] if serving is not None else None
    if tilted is not None and "wet_mm" in entry["facts"]:
        raise_query(standing, "dipped_tilted", [tilted["entry"], entry["id"]], entry)
    dip: Dip = {"at": entry["effective_at"], "left_ml": left_ml}
    standing["contents"] = {
        **contents,
        "left_ml": left_ml,
        "dipped": mark(entry),
        "dips": [*contents["dips"], dip][-MOST_DIPS:],
    }
    return []


def checked(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-10: clarity, taste, temperature, for the history; that it was tasted counts."""
    contents = standing["contents"]
    if contents is not None and entry["facts"].get("taste"):
        standing["contents"] = {**contents, "tasted": mark(entry)}
    return []


def planned(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-19: picked to be on sale at a time, or at none any more."""
    sale_at = entry["facts"]["sale_at"]
    standing["planned"] = None if sale_at is None else {**mark(entry), "sale_at": sale_at}
    return []


def emptied(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-11. Noted twice on one day it is one emptying; on another day it is odd.

    Of a container of which nothing is known yet it is news, and nothing to ask about.
    """
    clean = standing["clean"]
    twice_today = clean is not None and clean["state"] == "dirty" and same_day(clean, entry)
    if standing["contents"] is None and clean is not None and not twice_today:
        raise_query(standing, "emptied_empty", [entry["id"]], entry)
    end_of_beer(standing, entry, inferred=False)
    return []
