"""Volumes that no brewery can mean, for containers whose size is known.

Looked at when an entry is taken in and never again: what is in the ledger has happened, and is
queried rather than refused.
"""

from collections.abc import Mapping

from cellarapp.domain.containers import ANY_BREWERY, CONTAINER_KINDS, most_that_fits_ml
from cellarapp.domain.entries import Entry
from cellarapp.ledger.problem import FieldError

VOLUMES = {"filled": ("volume_ml", 1), "dipped": ("left_ml", 0)}


def too_much(entry: Entry, sizes: Mapping[str, tuple[str, int]]) -> list[FieldError]:
    """What is wrong with the volume of an entry, nothing if it can be right.

    Args:
        entry: any entry.
        sizes: kind and capacity in mL of the containers that are known, by number.
    """
    if entry["kind"] not in VOLUMES:
        return []
    fact, least = VOLUMES[entry["kind"]]
    kind, capacity_ml = sizes.get(entry["subject"], (None, None))
    most = most_that_fits_ml(capacity_ml, ANY_BREWERY)
    if entry["facts"][fact] <= most:
        return []
    what = "is not registered yet" if kind is None else f"{_named(kind)} and holds {capacity_ml} mL"
    detail = f"{fact} must be between {least} and {most} mL: {entry['subject']} {what}."
    return [FieldError(f"#/facts/{fact}", detail)]


def _named(kind: str) -> str:
    name = CONTAINER_KINDS[kind]["name"]
    name = name[0].lower() + name[1:]
    return f"is an {name}" if name[0] in "aeiou" else f"is a {name}"
