"""An entry: one fact, recorded once, on one device, about one thing."""

from typing import Any, Literal, NotRequired, TypedDict

Kind = str
Clock = Literal["ok", "corrected", "impossible"]

CONTAINER_KINDS = frozenset(
    {
        "registered", "washed", "inspected", "filled", "dosed", "moved", "stillaged", "vented",
        "tapped", "stooped", "dipped", "checked", "planned", "emptied", "sent", "returned",
        "set_aside", "released", "missing", "found", "scrapped", "noted", "reported", "told",
        "forgotten",
    }
)  # fmt: skip
"""What happens to a container."""

CORRECTION_KINDS = frozenset({"voided", "renumbered", "settled"})
"""What puts another entry right; its subject is the container of the entry it is about."""

RECORD_KINDS = frozenset(
    {
        "brewery", "beer", "gyle", "place", "customer", "setting", "lot", "solution", "trial",
        "drop",
    }
)  # fmt: skip
"""Entries named for a thing set fields of that thing."""

HAPPENINGS = {
    "chased": "customer",
    "erased": "customer",
    "linked": "customer",
    "unlinked": "customer",
    "temperature": "place",
    "solution_used": "solution",
    "solution_checked": "solution",
    "trial_read": "trial",
}
"""What happens to a thing that is no container, and the kind of that thing."""

KINDS = CONTAINER_KINDS | CORRECTION_KINDS | RECORD_KINDS | frozenset(HAPPENINGS)


class Entry(TypedDict):
    """One entry as the fold reads it.

    `effective_at` is fixed once, when the brewery takes the entry in; on the phone, before that,
    it is the time the entry was made. `clock` says whether the device's time could be believed.
    """

    id: str
    device: str
    seq: int
    kind: Kind
    subject: str
    happened_at: str
    effective_at: str
    person: str
    facts: dict[str, Any]
    rules: int
    clock: Clock
    received_at: NotRequired[str]
    position: NotRequired[int]


def order_key(entry: Entry) -> str:
    """ORD-1: entries fold in the order in which things happened.

    Then by device and its running number, so that the order is one and the same everywhere, and by
    id, should a cloned phone give one number twice. The key is text that sorts as itself in any
    language.
    """
    return f"{entry['effective_at']}/{entry['device']}/{entry['seq']:010d}/{entry['id']}"


def row_type(kind: Kind) -> str:
    """What an entry of this kind is about: "container", or the kind of record."""
    return kind if kind in RECORD_KINDS else HAPPENINGS.get(kind, "container")
