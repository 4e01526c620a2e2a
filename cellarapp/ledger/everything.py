"""The whole ledger as JSON, piece by piece: what a brewery takes along when it leaves."""

import json
from collections.abc import Iterator
from itertools import chain

from cellarapp.ledger.pulling import row_text
from cellarapp.storage.work import Work, reading


def everything() -> Iterator[str]:
    """One JSON object in pieces: `epoch`, `head`, `rules`, every row, every entry, what is held.

    All of one moment, however long the reader takes.
    """
    with reading() as work:
        yield from _told(work)


def _told(work: Work) -> Iterator[str]:
    head = work.head.read()
    about = {"epoch": head.epoch, "head": head.position, "rules": head.rules}
    yield json.dumps(about)[:-1]
    yield from _members("rows", map(row_text, work.rows.all()))
    entries = (one.entry | {"counts_for": one.counts_for} for one in work.entries.all_by_subject())
    yield from _members("entries", map(json.dumps, entries))
    yield from _members("held", (one.raw for one in work.held.all()))
    yield "}"


def _members(name: str, items: Iterator[str]) -> Iterator[str]:
    yield f',"{name}":['
    yield from chain.from_iterable((",\n" if n else "\n", item) for n, item in enumerate(items))
    yield "]"
