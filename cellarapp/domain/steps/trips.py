"""Out and back: sent, returned, missing, found; what others say of where it is."""

from cellarapp.domain.checks import carry, check_has_beer, count_move, hold, put, same_day
from cellarapp.domain.entries import Entry
from cellarapp.domain.inference import AT_THE_BREWERY, be_back, be_found, end_of_beer
from cellarapp.domain.queries import lapse, raise_query
from cellarapp.domain.standing import Standing, Trip, mark


def sent(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-12: to a customer. Sent on from one pub to another it came back in between.

    Of one that was out already when the records began nobody knows what was in it. One of another
    owner's goes home empty.
    """
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
    on_record_since = facts.get("on_record_since")
    if on_record_since is None and standing["owner"] is None:
        check_has_beer(standing, entry)
    count_move(standing, entry)
    standing["serving"] = None
    standing["planned"] = None
    begun: Trip = {
        **mark(entry),  # type: ignore[typeddict-item] # a mark holds no `told`
        "customer": facts["customer"],
        "due_on": facts["due_on"],
        "on_record_since": on_record_since,
    }
    standing["trip"] = begun
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


def reported(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-25: a finder says where it is. Who that is nobody knows: a person has to look at it."""
    facts = entry["facts"]
    said = {name: facts.get(name, "") for name in ("where", "words", "name", "phone")}
    raise_query(standing, "reported", [entry["id"]], entry, **said)
    return []


def told(standing: Standing, entry: Entry) -> list[str]:
    """LIFE-26: the customer says that it is empty, or not there, or takes that back.

    Not there contradicts what was noted when it was sent. Of a container that is not on record as
    with that customer it is words only.
    """
    facts, trip = entry["facts"], standing["trip"]
    if trip is None or trip["customer"] != facts["customer"]:
        return []
    lapse(standing, ("told_not_here",))
    after: Trip = trip.copy()
    after.pop("told", None)
    standing["trip"] = after
    if facts["says"] == "here":
        return be_found(standing)
    after["told"] = {**mark(entry), "says": facts["says"]}
    if facts["says"] == "empty":
        return be_found(standing)
    raise_query(
        standing, "told_not_here", [trip["entry"], entry["id"]], entry, customer=trip["customer"]
    )
    return []
