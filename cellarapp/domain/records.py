"""Beers, gyles, places, customers and what else the brewery keeps a record of.

Field by field the last in the order of happening stands; what happens to a thing is added to it.
"""

from typing import Any, Literal, NotRequired, TypedDict

from cellarapp.domain.entries import RECORD_KINDS, Entry, order_key, row_type
from cellarapp.domain.readings import Reading, merged
from cellarapp.domain.standing import Mark, mark

PERSONAL = ["contact", "phone", "email", "map"]
"""What is kept of a person at a customer's."""


class Chase(Mark):
    """The last time a customer was asked for containers, what came of it, what was promised.

    `ask_again_on` is the day before which nobody needs to ask again.
    """

    words: str
    outcome: Literal["spoke", "no_answer", "not_there", "wrote"] | None
    promised_on: str | None
    ask_again_on: str | None


class EarlierChase(Chase):
    """One before the last; `key` puts them in order."""

    key: str


MOST_EARLIER = 4
"""Chases before the last that are kept with a customer; the ledger has all."""


class Check(Mark):
    """A solution's strength as it was titrated, mg/L; `key` puts checks in order."""

    strength_mg_per_l: int
    key: str


class TrialReading(Mark):
    """What was read of the jars of a trial in one go, by the jar's place in the row from 1.

    `instead_of` names readings that do not count any more; `key` puts readings in order.
    """

    jars: list[dict[str, int]]
    instead_of: list[str]
    key: str


class Link(Mark):
    """A link to the page of a customer: of its secret the SHA-256; `key` puts links in order."""

    hash: str
    key: str


MOST_LINKS = 20
"""LINK-1: so many of the latest work. Each phone that prints delivery notes makes its own."""


class Record(TypedDict):
    """The fields of one thing, and for each the order key of the entry that set it.

    Beside them: what fills have drawn from a gyle; the last chase of a customer, and, once there
    are any, those before it and the links to its page; the temperatures read at a place; how often
    a solution was used and what checks of it said; and what was read of a trial, once anything was.
    """

    fields: dict[str, Any]
    set_by: dict[str, str]
    drawn_ml: NotRequired[int]
    chase: NotRequired[Chase | None]
    earlier: NotRequired[list[EarlierChase]]
    links: NotRequired[list[Link]]
    temperatures: NotRequired[list[Reading]]
    uses: NotRequired[int]
    checks: NotRequired[list[Check]]
    readings: NotRequired[list[TrialReading]]


def blank_record(kind: str) -> Record:
    """A thing of which nothing is known yet: a gyle may be filled from before it is described."""
    record: Record = {"fields": {}, "set_by": {}}
    if kind == "gyle":
        record["drawn_ml"] = 0
    elif kind == "customer":
        record["chase"] = None
    elif kind == "place":
        record["temperatures"] = []
    elif kind == "solution":
        record["uses"] = 0
        record["checks"] = []
    return record


def step_record(record: Record, entry: Entry) -> Record:
    """The record after an entry about it; entries may come in any order, each of them once.

    A field set to null is empty again.
    """
    key, facts = order_key(entry), entry["facts"]
    kind = entry["kind"]
    if kind in RECORD_KINDS:
        fresh = {n: v for n, v in facts.items() if key > record["set_by"].get(n, "")}
        fields = {**record["fields"], **fresh}
        return {
            **record,
            "fields": {name: value for name, value in fields.items() if value is not None},
            "set_by": {**record["set_by"], **dict.fromkeys(fresh, key)},
        }
    if kind == "chased":
        return _chased(record, entry, key)
    if kind == "erased":
        return _erased(record, entry, key)
    if kind == "linked":
        link: Link = {**mark(entry), "hash": facts["hash"], "key": key}
        return _linked(record, [*record.get("links", []), link])
    if kind == "unlinked":
        stopped = max(key, record["set_by"].get("unlinked", ""))
        record = {**record, "set_by": {**record["set_by"], "unlinked": stopped}}
        return _linked(record, record.get("links", []))
    if kind == "temperature":
        return {**record, "temperatures": merged(record["temperatures"], facts["series"])}
    if kind == "solution_used":
        return {**record, "uses": record["uses"] + facts["uses"]}
    if kind == "solution_checked":
        check: Check = {
            **mark(entry),
            "strength_mg_per_l": facts["strength_mg_per_l"],
            "key": key,
        }
        checks = sorted([*record["checks"], check], key=lambda c: c["key"])
        return {**record, "checks": checks}
    if kind == "trial_read":
        reading: TrialReading = {
            **mark(entry),
            "jars": facts["jars"],
            "instead_of": facts.get("instead_of", []),
            "key": key,
        }
        readings = sorted([*record.get("readings", []), reading], key=lambda r: r["key"])
        return {**record, "readings": readings}
    return record


def _chased(record: Record, entry: Entry, key: str) -> Record:
    """CHASE-1: the last one stands, and a few before it are kept, in whatever order they arrive."""
    facts, last_key = entry["facts"], record["set_by"].get("chase", "")
    is_erased = key < record["set_by"].get("erased", "")
    chase: Chase | None = {
        **mark(entry),
        "words": "" if is_erased else facts.get("words", ""),
        "outcome": facts.get("outcome"),
        "promised_on": facts.get("promised_on"),
        "ask_again_on": facts.get("ask_again_on"),
    }
    before, earlier = record["chase"], record.get("earlier", [])
    if key > last_key:
        record = {**record, "chase": chase, "set_by": {**record["set_by"], "chase": key}}
        chase, key = before, last_key
    if chase is None:
        return record
    one_more: EarlierChase = {**chase, "key": key}
    kept = sorted([*earlier, one_more], key=lambda one: one["key"])
    return {**record, "earlier": kept[-MOST_EARLIER:]}


def _linked(record: Record, links: list[Link]) -> Record:
    """LINK-1: the links that work: made after all were last stopped, and the latest of them."""
    stopped = record["set_by"].get("unlinked", "")
    working = sorted((link for link in links if link["key"] > stopped), key=lambda one: one["key"])
    return {**record, "links": working[-MOST_LINKS:]}


def personal_fields(erased: Entry) -> list[str]:
    """The fields of a customer that an erasure empties; the name only if it says so."""
    return [*PERSONAL, "name"] if erased["facts"].get("name") else PERSONAL


def _erased(record: Record, entry: Entry, key: str) -> Record:
    """What was said of a person before is gone, whatever order it arrives in."""
    fields, set_by = dict(record["fields"]), dict(record["set_by"])
    for name in personal_fields(entry):
        if key > set_by.get(name, ""):
            fields.pop(name, None)
            set_by[name] = key
    chase = record["chase"]
    if chase is not None and key > set_by.get("chase", ""):
        chase = {**chase, "words": ""}
    set_by["erased"] = max(key, set_by.get("erased", ""))
    erased: Record = {**record, "fields": fields, "set_by": set_by, "chase": chase}
    if "earlier" not in record:
        return erased
    earlier: list[EarlierChase] = [
        {**one, "words": ""} if key > one["key"] else one for one in record["earlier"]
    ]
    return {**erased, "earlier": earlier}


def fold_record(kind: str, entries: list[Entry]) -> Record:
    """ORD-2: a record from its entries in any order, each of them once.

    Litres drawn from a gyle come from its fills.
    """
    record = blank_record(kind)
    for entry in {e["id"]: e for e in entries}.values():
        if row_type(entry["kind"]) == kind:
            record = step_record(record, entry)
    return record


def drawn_ml(gyle: str, counting: list[Entry]) -> int:
    """What the fills that count have drawn from a gyle, mL."""
    return sum(
        e["facts"]["volume_ml"]
        for e in counting
        if e["kind"] == "filled" and e["facts"]["gyle"] == gyle
    )
