"""A container's standing: what the ledger says of it now.

Six facets change on their own: place, contents, cleanness, serving, held, trip. Each remembers the
entry that set it, so that a screen can say "since Tue 09:40, noted by Ann".
A standing is plain JSON; the same keys travel to the phone and are read by its twin.
"""

from typing import Any, Literal, NotRequired, TypedDict

from cellarapp.domain.entries import Entry


class Mark(TypedDict):
    """Who said so and when; `inferred` when no entry said it and another one implied it."""

    since: str
    entry: str
    by: str
    inferred: bool


class Place(Mark):
    """Where it is: a place of the brewery, or with a customer."""

    at: str
    with_customer: bool


class Dose(Mark):
    """What was added, liquid in mL or dry in g; `moves` is how often the beer had moved by then."""

    what: Literal["primings", "auxiliary_alginate", "auxiliary_silica", "isinglass", "hops"]
    amount_ml: int | None
    amount_g: int | None
    lot: str | None
    moves: int


class Dip(TypedDict):
    """What was left at a time."""

    at: str
    left_ml: int


class Contents(Mark):
    """The beer in it. `since` is when it was racked; `moves` counts how often it was moved full.

    `dips` are the latest ones in their order: a pace takes more than one, whoever made them.
    """

    gyle: str
    volume_ml: int
    left_ml: int
    best_before: str | None
    doses: list[Dose]
    moves: int
    moved: Mark | None
    dipped: Mark | None
    dips: list[Dip]
    tasted: Mark | None


class Clean(Mark):
    """How clean it is inside."""

    state: Literal["dirty", "washed", "passed", "failed"]


class Vent(Mark):
    """Which spile is in the shive since when; none known when the venting is inferred.

    `first_at` is when it was vented, whatever spile has been put in since.
    """

    spile: Literal["hard", "soft"] | None
    first_at: str


class Serving(TypedDict):
    """How far it has come on the way to the glass."""

    stillaged: Mark | None
    vented: Vent | None
    tapped: Mark | None
    stooped: Mark | None


class Planned(Mark):
    """Picked to be on sale at that time."""

    sale_at: str


class Inside(TypedDict):
    """Inside measures of a lying cask, mm, from which a dip tells what is left."""

    bung_diameter_mm: int
    head_diameter_mm: int
    length_mm: int


class Hire(TypedDict):
    """What it costs to have, in pence a day, and when it is due back to its owner."""

    pence_a_day: int
    due_on: str


class Held(Mark):
    """Kept out of use, and why."""

    state: Literal["set_aside", "missing", "scrapped"]
    why: str


class Told(Mark):
    """What the customer says of a container: ready to be collected, or not there at all."""

    says: Literal["empty", "not_here"]


class Trip(Mark):
    """With a customer since `since`; due back on a day, if one is agreed.

    `on_record_since` is the day on which the records came to know of it, if it was out by then.
    `told` is there once the customer has said something.
    """

    customer: str
    due_on: str | None
    on_record_since: str | None
    told: NotRequired[Told]


class Query(TypedDict):
    """Something that cannot be right as it stands. `entries` quarrel; `facts` fill the sentence."""

    id: str
    rule: str
    entries: list[str]
    at: str
    facts: dict[str, Any]


class Settlement(TypedDict):
    """A person's way out of a query: "right", "void:<entry>" or "renumber:<entry>:<number>"."""

    entry: str
    way: str
    replaces: list[str]


class Standing(TypedDict):
    """Everything the ledger says of one container now."""

    number: str
    registered: Mark | None
    kind: str | None
    shape: str | None
    capacity_ml: int | None
    tare_g: int | None
    owner: str | None
    hire: Hire | None
    inside: Inside | None
    limit_millibar: int | None
    place: Place | None
    contents: Contents | None
    clean: Clean | None
    serving: Serving | None
    held: Held | None
    trip: Trip | None
    planned: Planned | None
    returned: Mark | None
    fills: int
    queries: list[Query]
    settlements: dict[str, list[Settlement]]
    last: str


def blank(number: str) -> Standing:
    """The standing of a container of which nothing is known yet."""
    return {
        "number": number,
        "registered": None,
        "kind": None,
        "shape": None,
        "capacity_ml": None,
        "tare_g": None,
        "owner": None,
        "hire": None,
        "inside": None,
        "limit_millibar": None,
        "place": None,
        "contents": None,
        "clean": None,
        "serving": None,
        "held": None,
        "trip": None,
        "planned": None,
        "returned": None,
        "fills": 0,
        "queries": [],
        "settlements": {},
        "last": "",
    }


def mark(entry: Entry, *, inferred: bool = False) -> Mark:
    """The mark that an entry leaves on what it sets."""
    return {
        "since": entry["effective_at"],
        "entry": entry["id"],
        "by": entry["person"],
        "inferred": inferred,
    }
