"""DUE: what is due when, from everything on record, by the rules that the phone goes by too.

What belongs together is one job: a gyle's casks that will be ready, a customer's or an owner's that
are due back.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import Any, NamedTuple
from uuid import UUID, uuid5

from cellarapp.domain.calendar import (
    add_days,
    days_between,
    london_date,
    parse_day,
    parse_instant,
    write_instant,
)
from cellarapp.domain.cellar.jobs import DOES
from cellarapp.domain.cellar.plan import plan_back
from cellarapp.domain.cellar.ready import ready
from cellarapp.domain.cellar.times import ms_of
from cellarapp.domain.cellar.told import Around, cask_inputs
from cellarapp.domain.cellar.units import HOUR_MS
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import Settings, setting
from cellarapp.domain.readiness import readiness
from cellarapp.domain.standing import Standing, Trip

Rows = Mapping[str, Mapping[str, Any]]
"""Everything on record: by type of row, then by id."""

TYPES = ("brewery", "container", "beer", "gyle", "place", "customer")
"""The types of rows that jobs come from."""
KEPT_DAYS = 30
"""A job whose day has gone by is shown on it for so long, if it is still to do."""
OVER_HOURS = 24
"""A cask picked for a sale that is over is no job for longer."""


class Due(NamedTuple):
    """A job: on a day, or at an instant. `uid` stays the same when the day moves."""

    uid: str
    what: str
    when: date | str
    summary: str
    says: str


def all_due(rows: Rows, now: str, settings: Settings) -> list[Due]:
    """DUE-1: every job, the same in the same order for the same ledger and day."""
    found = [
        *_of_gyles(rows, now, settings),
        *_of_sales(rows, now, settings),
        *_of_trips(rows),
        *_of_promises(rows),
        *_of_hires(rows, settings),
    ]
    today = london_date(now)
    kept = (one for one in found if days_between(_day(one), today) <= KEPT_DAYS)
    return sorted(kept, key=lambda one: (_day(one), str(one.when), one.what, one.summary, one.uid))


def _day(due: Due) -> str:
    return due.when.isoformat() if isinstance(due.when, date) else london_date(due.when)


def _fields(rows: Rows, kind: str, thing: str | None) -> Mapping[str, Any]:
    found: Mapping[str, Any] = rows[kind].get(thing or "", {}).get("fields", {})
    return found


def _beer_words(rows: Rows, gyle: str) -> str:
    fields = _fields(rows, "gyle", gyle)
    name = _fields(rows, "beer", fields.get("beer")).get("name") or "Beer not on record"
    return f"{name}, gyle {fields['number']}" if fields.get("number") else str(name)


def _many(numbers: Iterable[str]) -> str:
    count = len(list(numbers))
    return f"{count} container{'' if count == 1 else 's'}"


def _in_order(numbers: Iterable[str]) -> list[str]:
    return sorted(numbers, key=lambda number: (len(number), number))


def _listed(numbers: Iterable[str]) -> str:
    return ", ".join(_in_order(numbers))


def _say_day(day: str) -> str:
    return f"{parse_day(day):%a %-d %b}"


def _around(rows: Rows, standing: Standing, gyle: str) -> Around:
    place = standing["place"]
    return Around(
        rows["beer"].get(_fields(rows, "gyle", gyle).get("beer", "")),
        rows["gyle"].get(gyle),
        rows["place"].get(place["at"]) if place else None,
    )


def _ready_on(rows: Rows, standing: Standing, gyle: str, now: str, own: Settings) -> str | None:
    """DUE-2: the day from which it has conditioned, also by warmth where the brewery goes by it."""
    around = _around(rows, standing, gyle)
    if "conditioning_q10" in own:
        try:
            told = {**(cask_inputs(standing, around) or {}), "now": now}
            return london_date(ready(told, own)["result"]["conditioned_from_at"])
        except DomainError:  # what was noted cannot be, which a question says elsewhere
            pass
    ready_at = readiness(standing, around.beer, now, own)["ready_at"]
    return None if ready_at is None else london_date(ready_at)


def _of_gyles(rows: Rows, now: str, own: Settings) -> Iterator[Due]:
    """DUE-2, DUE-3: of each gyle's containers at the brewery: will be ready, and best before.

    What is ready is no job any more.
    """
    ready_on: dict[str, dict[str, list[str]]] = {}
    best: dict[str, dict[str, list[str]]] = {}
    for number, standing in rows["container"].items():
        contents = standing["contents"]
        if contents is None or standing["trip"] is not None or standing["held"] is not None:
            continue
        gyle = contents["gyle"]
        if contents["best_before"] is not None:
            best.setdefault(gyle, {}).setdefault(contents["best_before"], []).append(number)
        serving = standing["serving"] is not None
        day = None if serving else _ready_on(rows, standing, gyle, now, own)
        if day is not None and day >= london_date(now):
            ready_on.setdefault(gyle, {}).setdefault(day, []).append(number)
    for what, title, by_gyle in (("ready", "Ready", ready_on), ("best", "Best before", best)):
        for gyle, by_day in by_gyle.items():
            first = min(by_day)
            numbers = [number for some in by_day.values() for number in some]
            yield Due(
                uid=str(uuid5(UUID(gyle), what)),
                what=title,
                when=parse_day(first),
                summary=f"{title}: {_beer_words(rows, gyle)} ({_many(numbers)})",
                says=" ".join(
                    f"{_say_day(day)}: {_listed(by_day[day])}." for day in sorted(by_day)
                ),
            )


def _of_sales(rows: Rows, now: str, own: Settings) -> Iterator[Due]:
    """DUE-4: what is to do to each cask picked for a sale, as the cellar's plan has it."""
    for number, standing in rows["container"].items():
        planned, contents = standing["planned"], standing["contents"]
        elsewhere = standing["held"] is not None or standing["trip"] is not None
        if planned is None or contents is None or elsewhere:
            continue
        sale_at = planned["sale_at"]
        if ms_of(sale_at) <= ms_of(now) - OVER_HOURS * HOUR_MS:
            continue
        told = cask_inputs(standing, _around(rows, standing, contents["gyle"])) or {}
        asked = {"now": now, "sale_at": max(sale_at, now), "casks": [{**told, "number": number}]}
        try:
            [cask] = plan_back(asked, own)["result"]["casks"]
        except DomainError:  # what was noted cannot be, which a question says elsewhere
            continue
        for job in cask["jobs"]:
            yield Due(
                uid=str(uuid5(UUID(planned["entry"]), job["step"])),
                what=DOES[job["step"]],
                # What is late would else move on with every look at it.
                when=job["by_at"] if job["late"] else job["do_at"],
                summary=f"{DOES[job['step']]}: {number}, {_beer_words(rows, contents['gyle'])}",
                says=job["says"],
            )


def _is_gone(rows: Rows, standing: Standing) -> bool:
    """Scrapped, or with whom it belongs to: nobody's to fetch or to bring."""
    trip, held, owner = standing["trip"], standing["held"], standing["owner"]
    if held is not None and held["state"] == "scrapped":
        return True
    if trip is None or owner is None:
        return False
    name: str = _fields(rows, "customer", trip["customer"]).get("name", "")
    return owner.strip().lower() == name.strip().lower()


def _out(rows: Rows) -> Iterator[tuple[str, Trip]]:
    """Those that are out and can be fetched."""
    for number, standing in rows["container"].items():
        trip = standing["trip"]
        if trip is not None and not _is_gone(rows, standing):
            yield number, trip


def _customer_words(rows: Rows, customer: str) -> str:
    return str(_fields(rows, "customer", customer).get("name") or "a customer with no name")


def _of_trips(rows: Rows) -> Iterator[Due]:
    """DUE-5: what is due back from a customer on one day. That day is a fact and never moves."""
    due: dict[tuple[str, str], list[str]] = {}
    for number, trip in _out(rows):
        if trip["due_on"] is not None:
            due.setdefault((trip["customer"], trip["due_on"]), []).append(number)
    for (customer, day), numbers in due.items():
        yield Due(
            uid=str(uuid5(UUID(customer), f"collect {day}")),
            what="Collect",
            when=parse_day(day),
            summary=f"Collect at {_customer_words(rows, customer)}: {_many(numbers)}",
            says=f"{_listed(numbers)}.",
        )


def _of_promises(rows: Rows) -> Iterator[Due]:
    """DUE-6: what a customer has promised for a day: what was out when they were asked, and is."""
    out: dict[str, list[tuple[str, Trip]]] = {}
    for number, trip in _out(rows):
        out.setdefault(trip["customer"], []).append((number, trip))
    for customer, record in rows["customer"].items():
        chase = record.get("chase")
        if chase is None or chase["promised_on"] is None:
            continue
        there = out.get(customer, [])
        numbers = [number for number, trip in there if trip["since"] <= chase["since"]]
        if not numbers:
            continue
        yield Due(
            uid=str(uuid5(UUID(chase["entry"]), "promised")),
            what="Promised",
            when=parse_day(chase["promised_on"]),
            summary=f"Promised by {_customer_words(rows, customer)}",
            says=f"Out there: {_listed(numbers)}.",
        )


def _of_hires(rows: Rows, own: Settings) -> Iterator[Due]:
    """DUE-7: hired ones on the day on which they are due back, and so long before as Out warns."""
    lead_days = int(setting("hire_warn_days", own))
    due: dict[tuple[str, str], dict[str, str]] = {}
    for number, standing in rows["container"].items():
        hire, registered = standing["hire"], standing["registered"]
        if hire is None or registered is None or _is_gone(rows, standing):
            continue
        owner = standing["owner"] or "its owner"
        due.setdefault((owner, hire["due_on"]), {})[number] = registered["entry"]
    for (owner, day), entries in due.items():
        one, *more = numbers = _in_order(entries)
        hired = f"{len(numbers)} hired containers" if more else f"hired container {one}"
        says = " ".join(f"{_where(rows, number)}." for number in numbers)
        for what, when, summary in (
            ("Bring in", add_days(day, -lead_days), f"Due back at {owner} on {_say_day(day)}"),
            ("Due back", day, f"Due back at {owner}"),
        ):
            yield Due(
                uid=str(uuid5(UUID(entries[one]), f"hire {what}")),
                what=what,
                when=parse_day(when),
                summary=f"{summary}: {hired}",
                says=says,
            )


def _where(rows: Rows, number: str) -> str:
    trip = rows["container"][number]["trip"]
    return (
        f"{number} at {'the brewery' if trip is None else _customer_words(rows, trip['customer'])}"
    )


def changed_at(rows: Rows) -> str:
    """When anything that a job hangs on was last changed, as the ledger reckons it."""
    keys = [standing["last"] for standing in rows["container"].values()]
    for kind in TYPES:
        for record in rows[kind].values():
            keys += record.get("set_by", {}).values()
    latest = max(keys, default="")
    return latest.partition("/")[0] or write_instant(parse_instant("2000-01-01T00:00:00.000Z"))
