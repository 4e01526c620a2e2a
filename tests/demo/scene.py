"""The demo as the app would show it: entries taken in, folded, and looked at."""

from dataclasses import dataclass
from datetime import timedelta
from functools import cache
from typing import Any

from cellarapp import demo
from cellarapp.domain.calendar import parse_instant, write_instant
from cellarapp.domain.entries import RECORD_KINDS, Entry
from cellarapp.domain.fold import entries_by_subject, fold
from cellarapp.domain.numbers import is_number
from cellarapp.domain.queries import open_queries
from cellarapp.domain.readiness import readiness
from cellarapp.domain.records import Record, fold_record
from cellarapp.domain.standing import Query, Standing
from cellarapp.ledger.clock import take_effect

NOWS = [
    "2026-11-25T09:40:00.000Z",  # a Wednesday
    "2028-02-29T12:00:00.000Z",  # a leap day
    "2026-03-29T00:30:00.000Z",  # Sunday, half an hour before the clocks go forward
    "2026-03-29T23:30:00.000Z",  # Monday already in London
    "2026-10-25T01:30:00.000Z",  # Sunday, the second half past one
    "2027-01-01T00:00:00.000Z",  # New Year's Day
    "2026-12-26T21:00:00.000Z",  # a Saturday, and a holiday
    "2026-06-01T05:00:00.000Z",  # a Monday before anybody is up
]


@dataclass(frozen=True)
class Scene:
    """What there is to be seen at one time."""

    now: str
    entries: list[Entry]
    standings: dict[str, Standing]
    records: dict[str, dict[str, Record]]

    @property
    def queries(self) -> list[Query]:
        return [query for standing in self.standings.values() for query in open_queries(standing)]

    @property
    def out(self) -> list[Standing]:
        return [standing for standing in self.standings.values() if standing["trip"]]

    @property
    def full(self) -> list[Standing]:
        """Full and at the brewery."""
        return [s for s in self.standings.values() if s["contents"] and not s["trip"]]

    @property
    def ready_to_fill(self) -> list[Standing]:
        return [
            s
            for s in self.standings.values()
            if not s["contents"] and not s["trip"] and not s["held"] and is_clean(s)
        ]

    def beer_in(self, standing: Standing) -> Record:
        contents = standing["contents"]
        assert contents is not None
        return self.records["beer"][self.records["gyle"][contents["gyle"]]["fields"]["beer"]]

    def stage(self, standing: Standing) -> str:
        return readiness(standing, self.beer_in(standing), self.now)["stage"]

    def of_kind(self, *kinds: str) -> list[Entry]:
        return [entry for entry in self.entries if entry["kind"] in kinds]


def is_clean(standing: Standing) -> bool:
    clean = standing["clean"]
    return clean is not None and clean["state"] in ("washed", "passed")


def effective(received: demo.Received) -> Entry:
    """An entry as the server takes it in."""
    moment = parse_instant(received.received_at)
    happened_at = parse_instant(received.entry["happened_at"])
    effect = take_effect(happened_at, offset=timedelta(0), received_at=moment)
    wire: Any = received.entry
    return {
        **wire,
        "effective_at": write_instant(effect.effective_at),
        "received_at": received.received_at,
        "clock": effect.clock,
    }


@cache
def scene(now: str, seed: int = 1) -> Scene:
    """The demo at a time; made once for all tests that look at it."""
    entries = [effective(received) for received in demo.entries(now, seed)]
    by_subject = entries_by_subject(entries)
    standings = {n: fold(n, counting) for n, counting in by_subject.items() if is_number(n)}
    records: dict[str, dict[str, Record]] = {kind: {} for kind in sorted(RECORD_KINDS)}
    for subject, counting in by_subject.items():
        for kind in {entry["kind"] for entry in counting} & RECORD_KINDS:
            records[kind][subject] = fold_record(kind, counting)
    return Scene(now, entries, standings, records)
