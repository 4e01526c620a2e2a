"""Which rows there are because of an entry.

Decided by the entry alone and not by what else is known, so that the same entries make the same
rows whatever order they arrived in.
"""

from cellarapp.domain.entries import Entry, row_type
from cellarapp.storage.rows import Key

TRIPS = "trips"
"""The type of the rows that count the trips of a customer."""


def own_key(entry: Entry) -> Key:
    """The row that an entry is about."""
    return key_of(entry, entry["subject"])


def key_of(entry: Entry, subject: str) -> Key:
    """The row of the subject that an entry counts for."""
    return (row_type(entry["kind"]), subject)


def mentioned(entry: Entry) -> list[Key]:
    """Every row that has to be there once an entry is known."""
    kind, facts = entry["kind"], entry["facts"]
    keys = [own_key(entry)]
    if kind == "filled":
        keys.append(("gyle", facts["gyle"]))
    elif kind == "sent":
        keys.append((TRIPS, facts["customer"]))
    elif kind == "renumbered":
        keys.append(("container", facts["to"]))
    elif kind == "settled" and facts["way"].startswith("renumber:"):
        keys.append(("container", facts["way"].rpartition(":")[2]))
    return keys
