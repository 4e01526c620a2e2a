"""Entry sets to try the rules with: lives as a brewery leads them, and sets meant to break things.

Few numbers, few times, many of them equal, several devices. Everything is plain JSON with ids of
the form that the server takes, so that the same sets can be asked of the phone's rules and pushed.
Each device gives every running number once, as a device does; ids are in no order.
"""

import json
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.containers import CONTAINER_KINDS as SIZES
from cellarapp.domain.entries import Entry
from cellarapp.domain.fold import entries_by_subject, fold
from cellarapp.domain.numbers import is_number
from cellarapp.domain.standing import blank

NUMBERS = ["12", "K12", "117"]


def made_up_id(sort: str, n: int) -> str:
    """An id that says in a failing example what it stands for."""
    return f"00000000-0000-7000-8000-{sort}{n:0{12 - len(sort)}d}"


DEVICES = [made_up_id("d", n) for n in (1, 2, 3)]
CUSTOMERS = [made_up_id("c", n) for n in (1, 2)]
PLACES = ["brewery", *[made_up_id("b", n) for n in (1, 2)]]
GYLES = [made_up_id("a", n) for n in (1, 2)]
PEOPLE = ["Ash", "Bo"]
HANDS = st.sampled_from(
    [(device, person, False) for device in DEVICES for person in PEOPLE]
    + [(DEVICES[0], PEOPLE[0], True)]
)
"""Device, person, and whether the device's clock was impossible."""
MOST = 61
"""More entries than a set holds; prime, so that strides through it give no id twice."""
DUE = [None, "2026-04-24", "2026-05-08"]
TIMES = [
    "2026-03-28T09:00:00.000Z",
    "2026-03-28T09:00:00.001Z",
    "2026-03-28T14:30:00.000Z",
    "2026-03-28T23:30:00.000Z",  # still winter time: the same day in London
    "2026-03-29T00:30:00.000Z",
    "2026-03-29T09:00:00.000Z",
    "2026-03-29T23:30:00.000Z",  # summer time by now: already the 30th in London
    "2026-04-20T09:00:00.000Z",
    "2026-10-24T23:00:00.000Z",  # the last midnight of summer time
    "2026-10-25T23:59:00.000Z",
]
WORDS = st.sampled_from(["", "leaks at the keystone", "nobody knows"])
VOLUMES = st.sampled_from([0, 1, 20_000, 20_457, 40_915, 41_500])

DOSES = st.fixed_dictionaries(
    {"what": st.sampled_from(["primings", "auxiliary_alginate", "isinglass", "hops"])},
    optional={
        "amount_ml": st.integers(0, 500),
        "amount_g": st.integers(0, 100),
        "lot": st.just(made_up_id("9", 1)),
    },
)
INSIDE = {"bung_diameter_mm": 392, "head_diameter_mm": 314, "length_mm": 385}

FACTS: dict[str, st.SearchStrategy[dict[str, Any]]] = {
    "registered": st.fixed_dictionaries(
        {
            "kind": st.sampled_from(sorted(SIZES)[:4]),
            "capacity_ml": st.sampled_from([20_457, 40_915]),
        },
        optional={
            "tare_g": st.just(9_600),
            "owner": st.just("us"),
            "hire": st.just({"pence_a_day": 15, "due_on": "2026-12-31"}),
            "place": st.sampled_from(PLACES),
            "inside": st.just(INSIDE),
            "limit_millibar": st.just(3_000),
        },
    ),
    "washed": st.fixed_dictionaries({}, optional={"with": st.just("caustic")}),
    "inspected": st.fixed_dictionaries({"passed": st.booleans()}, optional={"why": WORDS}),
    "filled": st.fixed_dictionaries(
        {
            "gyle": st.sampled_from(GYLES),
            "volume_ml": VOLUMES,
            "best_before": st.none() | st.just("2026-05-09"),
        },
        optional={
            "place": st.sampled_from(PLACES),
            "doses": st.lists(DOSES, max_size=2),
        },
    ),
    "dosed": DOSES,
    "moved": st.fixed_dictionaries({"place": st.sampled_from(PLACES)}),
    "stillaged": st.fixed_dictionaries({}, optional={"place": st.sampled_from(PLACES)}),
    "vented": st.fixed_dictionaries({"spile": st.sampled_from(["hard", "soft"])}),
    "tapped": st.just({}),
    "stooped": st.just({}),
    "dipped": st.fixed_dictionaries({"left_ml": VOLUMES}, optional={"wet_mm": st.just(120)}),
    "checked": st.fixed_dictionaries(
        {}, optional={"temp_decidegc": st.just(124), "words": WORDS, "taste": WORDS}
    ),
    "planned": st.fixed_dictionaries({"sale_at": st.none() | st.sampled_from(TIMES)}),
    "emptied": st.fixed_dictionaries({}, optional={"why": WORDS}),
    "sent": st.fixed_dictionaries(
        {"customer": st.sampled_from(CUSTOMERS), "due_on": st.sampled_from(DUE)},
        optional={"on_record_since": st.just("2026-03-20")},
    ),
    "returned": st.fixed_dictionaries(
        {},
        optional={
            "ullage_ml": VOLUMES,
            "place": st.sampled_from(PLACES),
            "customer": st.sampled_from(CUSTOMERS),
        },
    ),
    "set_aside": st.fixed_dictionaries({"why": WORDS}),
    "released": st.just({}),
    "missing": st.fixed_dictionaries({}, optional={"why": WORDS}),
    "found": st.fixed_dictionaries({}, optional={"place": st.sampled_from(PLACES)}),
    "scrapped": st.fixed_dictionaries({}, optional={"why": WORDS}),
    "noted": st.fixed_dictionaries({"words": WORDS}),
    "reported": st.fixed_dictionaries(
        {"where": st.just("Mill Lane")}, optional={"words": WORDS, "phone": st.just("0100")}
    ),
    "told": st.fixed_dictionaries(
        {
            "customer": st.sampled_from(CUSTOMERS),
            "says": st.sampled_from(["empty", "not_here", "here"]),
        }
    ),
    # Of a report that never arrives: what it does to one that has is the ledger's, not the fold's.
    "forgotten": st.just({"target": made_up_id("e", 999)}),
}

LIFE_AT_A_BREWERY = [
    "registered", "washed", "inspected", "filled", "moved", "checked", "sent", "returned",
    "washed", "filled", "dosed", "planned", "stillaged", "vented", "vented", "tapped", "dipped",
    "stooped", "dipped", "emptied",
    "washed", "filled", "sent", "told", "missing", "reported", "found", "washed", "filled", "sent",
    "told", "told", "returned",
]  # fmt: skip

Drawn = dict[str, Any]


@st.composite
def lives(draw: st.DrawFn) -> list[Drawn]:
    """One container's life with steps forgotten or noted twice, in order, times moving on."""
    at, number, drawn = 0, draw(st.sampled_from(NUMBERS)), []
    for kind in LIFE_AT_A_BREWERY:
        for _ in range(draw(st.sampled_from([1, 1, 1, 0, 2]))):
            drawn.append({"kind": kind, "subject": number, "at": at, "facts": draw(FACTS[kind])})
        at = min(at + draw(st.integers(0, 1)), len(TIMES) - 1)
    return drawn


@st.composite
def muddles(draw: st.DrawFn) -> list[Drawn]:
    """Anything at any time, as no brewery would do it."""
    return draw(
        st.lists(
            st.sampled_from(sorted(FACTS)).flatmap(
                lambda kind: st.fixed_dictionaries(
                    {
                        "kind": st.just(kind),
                        "subject": st.sampled_from(NUMBERS),
                        "at": st.integers(0, len(TIMES) - 1),
                        "facts": FACTS[kind],
                    }
                )
            ),
            min_size=1,
            max_size=12,
        )
    )


class Desk:
    """Makes entries of what was drawn: gives ids, devices, running numbers, people."""

    def __init__(self, draw: st.DrawFn) -> None:
        self.draw = draw
        self.entries: list[Entry] = []
        self.stride = draw(st.integers(1, MOST - 1))
        self.seqs = dict.fromkeys(DEVICES, 0)

    def note(self, kind: str, subject: str, at: str, facts: dict[str, Any]) -> Entry:
        device, person, impossible = self.draw(HANDS)
        self.seqs[device] += 1
        entry: Entry = {
            "id": made_up_id("e", (1 + len(self.entries)) * self.stride % MOST),
            "device": device,
            "seq": self.seqs[device],
            "kind": kind,
            "subject": subject,
            "happened_at": "2031-01-01T00:00:00.000Z" if impossible else at,
            "effective_at": at,
            "person": person,
            "facts": facts,
            "rules": 1,
            "clock": "impossible" if impossible else "ok",
        }
        self.entries.append(entry)
        return entry

    def any_id(self) -> str:
        """An entry that is there, or one that has not arrived."""
        there = [entry["id"] for entry in self.entries]
        return self.draw(st.sampled_from([*there, made_up_id("e", 999)]))

    def correct(self) -> None:
        """A correction of any of the entries so far, corrections among them."""
        act = self.draw(st.sampled_from(["voided", "renumbered", "settled", "settled"]))
        at = self.draw(st.sampled_from(TIMES))
        subject = self.draw(st.sampled_from(NUMBERS))
        if act == "settled":
            self.settle(at)
        elif act == "voided":
            self.note("voided", subject, at, {"target": self.any_id()})
        else:
            to = self.draw(st.sampled_from(NUMBERS))
            self.note("renumbered", subject, at, {"target": self.any_id(), "to": to})

    def settle(self, at: str) -> None:
        """A way out of a query that is there, or of one that nothing raises (any more)."""
        raised = queries_of(self.entries)
        subject, query = self.draw(st.sampled_from([*raised, ("117", f"unwashed:{self.any_id()}")]))
        quarrel = query.split(":")[1:]
        target = self.draw(st.sampled_from([*quarrel, self.any_id()]))
        to = self.draw(st.sampled_from(NUMBERS))
        ways = ["right", f"void:{target}", f"renumber:{target}:{to}"]
        facts = {"query": query, "way": self.draw(st.sampled_from(ways))}
        if self.draw(st.booleans()):
            facts["replaces"] = self.draw(st.lists(st.just(self.any_id()), max_size=2))
        self.note("settled", subject, at, facts)


def queries_of(entries: list[Entry]) -> list[tuple[str, str]]:
    """Every query that the entries raise, with the container it is about."""
    return [
        (number, query["id"])
        for number, counting in entries_by_subject(entries).items()
        if is_number(number)
        for query in fold(number, counting)["queries"]
    ]


def _entry_sets(
    drawn_from: st.SearchStrategy[list[Drawn]], most_corrections: int
) -> st.SearchStrategy[list[Entry]]:
    @st.composite
    def noted(draw: st.DrawFn) -> list[Entry]:
        desk = Desk(draw)
        for one in draw(drawn_from)[:45]:
            desk.note(one["kind"], one["subject"], TIMES[one["at"]], one["facts"])
        for _ in range(draw(st.integers(0, most_corrections))):
            desk.correct()
        return desk.entries

    return noted()


uncorrected = _entry_sets(lives() | muddles(), 0)
"""Sets with no corrections in them."""

entry_sets = _entry_sets(lives() | muddles(), 8)
"""Sets with corrections, corrections of corrections, and some of entries that never arrive."""


def of_one(entries: list[Entry], number: str = "117") -> list[Entry]:
    """The same entries as if all were about one container."""
    return [{**entry, "subject": number} for entry in entries]


def arrivals(entries: list[Entry]) -> st.SearchStrategy[list[Entry]]:
    """The same entries in another order of receipt, some of them several times."""
    return st.tuples(st.permutations(entries), st.lists(st.sampled_from(entries), max_size=4)).map(
        lambda both: [*both[1][:1], *both[0], *both[1][1:]]
    )


def canonical(value: Any) -> str:
    """One text for one value: keys sorted, no blanks."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def standings(entries: list[Entry]) -> str:
    """The standings of all containers that the entries ever spoke of, as one text."""
    return canonical(
        {
            number: fold(number, counting)
            for number, counting in entries_by_subject(entries).items()
            if is_number(number)
        }
    )


def later(
    entries: list[Entry], kind: str, subject: str, facts: dict[str, Any], at: str = TIMES[-1]
) -> list[Entry]:
    """The entries and one more, from the first device."""
    entry: Entry = {
        "id": made_up_id("f", len(entries)),
        "device": DEVICES[0],
        "seq": 1 + max([e["seq"] for e in entries if e["device"] == DEVICES[0]], default=0),
        "kind": kind,
        "subject": subject,
        "happened_at": at,
        "effective_at": at,
        "person": PEOPLE[0],
        "facts": facts,
        "rules": 1,
        "clock": "ok",
    }
    return [*entries, entry]


def faces(entries: list[Entry]) -> dict[str, Any]:
    """Standings of those containers for which anything counts, without the key of the last entry.

    A correction moves that key, whatever else it does.
    """
    found = json.loads(standings(entries))
    return {n: {**s, "last": ""} for n, s in found.items() if s != {**blank(n), "last": s["last"]}}


RECORD_FACTS: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "brewery": {"name": WORDS, "company_prefix": st.just("9521141")},
    "beer": {"name": WORDS, "abv_tenths": st.none() | st.integers(20, 90), "vegan": st.booleans()},
    "gyle": {"number": WORDS, "volume_ml": st.integers(0, 900_000), "retired": st.booleans()},
    "place": {"name": WORDS, "role": st.sampled_from(["store", "yard", "stillage", "bar"])},
    "customer": {
        "name": WORDS,
        "contact": WORDS,
        "agreed_days": st.none() | st.integers(0, 90),
    },
    "setting": {"value_millionths": st.integers(0, 90_000), "retired": st.booleans()},
    "drop": {
        "customer": st.sampled_from(CUSTOMERS),
        "numbers": st.just(["117"]),
        "asked": st.just([{"beer": made_up_id("f", 1), "kind": "firkin", "count": 2}]),
        "empties_counted": st.integers(0, 3),
        "matched": st.sampled_from([[], ["12"], ["12", "K12"]]),
        "count_closed": st.booleans(),
    },
    "lot": {"what": st.just("isinglass"), "name": WORDS, "opened_on": st.sampled_from(DUE)},
    "solution": {"agent": st.just("caustic"), "made_mg_per_l": st.just(20_000)},
    "trial": {
        "sample_ml": st.just(500),
        "auxiliary_at": st.none() | st.sampled_from(TIMES),
        "isinglass_lot": st.none() | st.sampled_from(CUSTOMERS),
    },
}
READINGS = st.lists(
    st.tuples(st.sampled_from(TIMES), st.integers(-50, 250)).map(list), min_size=1, max_size=4
)
HAPPENINGS: dict[str, dict[str, st.SearchStrategy[dict[str, Any]]]] = {
    "customer": {
        "chased": st.fixed_dictionaries(
            {},
            optional={
                "words": WORDS,
                "outcome": st.sampled_from(["spoke", "no_answer", "not_there", "wrote"]),
                "promised_on": st.sampled_from(DUE),
                "ask_again_on": st.sampled_from(DUE),
            },
        ),
        "erased": st.fixed_dictionaries({}, optional={"name": st.booleans()}),
        "linked": st.fixed_dictionaries({"hash": st.sampled_from(["a" * 64, "b" * 64])}),
        "unlinked": st.just({}),
    },
    "place": {"temperature": st.fixed_dictionaries({"series": READINGS})},
    "solution": {
        "solution_used": st.fixed_dictionaries({"uses": st.integers(1, 9)}),
        "solution_checked": st.fixed_dictionaries({"strength_mg_per_l": st.integers(0, 9)}),
    },
    "trial": {
        "trial_read": st.fixed_dictionaries(
            {"jars": st.just([{"jar": 1, "after_min": 270, "clarity_tenths": 40}])},
            optional={"instead_of": st.just([made_up_id("e", 1)])},
        )
    },
}


@st.composite
def record_sets(draw: st.DrawFn, kind: str) -> list[Entry]:
    """Entries about one thing: what sets its fields, and what happens to it."""
    desk = Desk(draw)
    facts = {kind: st.fixed_dictionaries({}, optional=RECORD_FACTS[kind])}
    facts |= HAPPENINGS.get(kind, {})
    for _ in range(draw(st.integers(1, 10))):
        noted = draw(st.sampled_from(sorted(facts)))
        desk.note(noted, CUSTOMERS[0], draw(st.sampled_from(TIMES)), draw(facts[noted]))
    return desk.entries
