"""The sheets there are: their columns, and what a row of each says."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, NotRequired, TypedDict

from cellarapp.documents.sheets import cells
from cellarapp.documents.sheets.cells import CellNotReadable
from cellarapp.domain.calendar import add_days, london_date, london_instant
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Standing

MORNING_MIN = 9 * 60
"""A sheet says on which day a cask went out and not when."""


class Draft(TypedDict):
    """What a phone is to record. A new customer has no subject yet: the phone gives it an id."""

    kind: str
    subject: str | None
    facts: dict[str, Any]
    happened_at: NotRequired[str]


@dataclass(frozen=True)
class Known:
    """What is on record already: containers by number, customers in use by folded name."""

    now: str
    containers: Mapping[str, Standing]
    customers: Mapping[str, tuple[str, Record]]


def known_from(now: str, containers: Mapping[str, Any], customers: Mapping[str, Any]) -> Known:
    """What rows on record say, by id; customers no longer in use are left out."""
    in_use = {key: doc for key, doc in customers.items() if not doc["fields"].get("retired")}
    named = {folded(doc["fields"].get("name", "")): (key, doc) for key, doc in in_use.items()}
    return Known(now, containers, named)


@dataclass(frozen=True)
class Column:
    """One column; `also` are other headings under which people keep it."""

    key: str
    heading: str
    read: Callable[[str], Any]
    also: tuple[str, ...] = ()
    required: bool = False


@dataclass(frozen=True)
class Sheet:
    """One kind of sheet. `drafts` may find that a row says nothing new, or cannot be.

    Its CellNotReadable speaks of the column named in `judged`. `once` is what no two rows share.
    """

    title: str
    once: str
    judged: str
    columns: tuple[Column, ...]
    drafts: Callable[[dict[str, Any], Known], list[Draft]]


def folded(name: str) -> str:
    """A name for comparing: no difference of case or blanks."""
    return " ".join(name.split()).casefold()


def _container(row: dict[str, Any], known: Known) -> list[Draft]:
    about = CONTAINER_KINDS[row["kind"]]
    capacity_ml = row.get("capacity_ml", about["capacity_ml"])
    if capacity_ml is None:
        raise CellNotReadable(f"How many litres a {about['name'].lower()} holds is missing.")
    standing = known.containers.get(row["number"])
    if standing is not None and standing["registered"] is not None:
        if standing["kind"] == row["kind"]:
            return []
        name = CONTAINER_KINDS[standing["kind"] or ""]["name"]
        on_record = name[0].lower() + name[1:]  # the L of "50 L keg" stays
        raise CellNotReadable(
            f"{row['number']} is on record as a {on_record} already. Put one of the two right, "
            "or paint a letter on one."
        )
    facts = {"kind": row["kind"], "capacity_ml": capacity_ml}
    facts |= {key: row[key] for key in ("tare_g", "limit_millibar", "owner") if key in row}
    return [{"kind": "registered", "subject": row["number"], "facts": facts}]


def _customer(row: dict[str, Any], known: Known) -> list[Draft]:
    on_record = known.customers.get(folded(row["name"]))
    if on_record is None:
        return [{"kind": "customer", "subject": None, "facts": row}]
    customer, record = on_record
    changed = {key: value for key, value in row.items() if record["fields"].get(key) != value}
    changed.pop("name", None)
    return [{"kind": "customer", "subject": customer, "facts": changed}] if changed else []


def _out(row: dict[str, Any], known: Known) -> list[Draft]:
    found = known.customers.get(folded(row["customer"]))
    if found is None:
        raise CellNotReadable(
            f"There is no customer “{row['customer']}”. Bring in the customers first, or write "
            "the name as it is on record."
        )
    customer, record = found
    today = london_date(known.now)
    if row["sent_on"] > today:
        raise CellNotReadable(f"{row['number']} cannot have gone out after today.")
    standing = known.containers.get(row["number"])
    trip = None if standing is None else standing["trip"]
    if trip is not None and trip["customer"] == customer:
        return []
    if trip is not None or (standing is not None and _seen_since(standing, row["sent_on"])):
        raise CellNotReadable(
            f"{row['number']} has been somewhere else since, by what is on record. "
            "Look at it before bringing this in."
        )
    agreed_days = record["fields"].get("agreed_days")
    due_on = None if agreed_days is None else add_days(row["sent_on"], agreed_days)
    facts = {
        "customer": customer,
        "due_on": row.get("due_on", due_on),
        "on_record_since": today,
    }
    happened_at = min(london_instant(row["sent_on"], MORNING_MIN), known.now)
    return [{"kind": "sent", "subject": row["number"], "facts": facts, "happened_at": happened_at}]


def _seen_since(standing: Standing, day: str) -> bool:
    """Whether somebody had it in hand after that day; entering it in the register is not that."""
    marks = [standing[facet] for facet in ("place", "contents", "clean", "returned")]
    registered = standing["registered"]
    entered_by = None if registered is None else registered["entry"]
    return any(
        mark is not None and mark["entry"] != entered_by and london_date(mark["since"]) > day
        for mark in marks
    )


LIMIT_TOO = ("pressure limit", "limit", "working pressure", "working pressure bar")
NUMBER = Column("number", "Number", cells.number, ("no", "cask", "container"), required=True)

SHEETS: dict[str, Sheet] = {
    "containers": Sheet(
        "Containers",
        once="number",
        judged="number",
        columns=(
            NUMBER,
            Column("kind", "Kind", cells.kind, ("type", "size"), required=True),
            Column("capacity_ml", "Litres", cells.litres_as_ml, ("capacity", "volume")),
            Column("tare_g", "Empty weight kg", cells.kilograms_as_g, ("tare", "weight")),
            Column("limit_millibar", "Pressure limit bar", cells.bar_as_millibar, LIMIT_TOO),
            Column("owner", "Owner", partial(cells.words, most=60), ("belongs to",)),
        ),
        drafts=_container,
    ),
    "customers": Sheet(
        "Customers",
        once="name",
        judged="name",
        columns=(
            Column("name", "Name", partial(cells.words, most=60), ("customer", "pub"), True),
            Column("contact", "Contact", partial(cells.words, most=120), ("address",)),
            Column("phone", "Phone", partial(cells.words, most=40), ("telephone", "mobile")),
            Column("delivery_day", "Delivery day", cells.weekday, ("day",)),
            Column("agreed_days", "Days to return", cells.whole_days, ("days",)),
        ),
        drafts=_customer,
    ),
    "out": Sheet(
        "What is out",
        once="number",
        judged="number",
        columns=(
            NUMBER,
            Column("customer", "Customer", partial(cells.words, most=60), ("pub", "name"), True),
            Column("sent_on", "Sent on", cells.day, ("sent", "date", "delivered"), True),
            Column("due_on", "Due back", cells.day, ("due",)),
        ),
        drafts=_out,
    ),
}
