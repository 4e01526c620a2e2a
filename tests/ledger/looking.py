"""What the tests look at in a ledger."""

import json
from typing import Any

from sqlalchemy import delete

from cellarapp.accounts.rights import RightsOf
from cellarapp.ledger.opening import open_ledger
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import db
from cellarapp.storage.rows import Key
from cellarapp.storage.work import reading

from ..making import batch


def docs() -> dict[Key, str]:
    """The document of every row."""
    with reading() as work:
        return {row.key: row.doc for row in work.rows.all()}


def standing(number: str) -> dict[str, Any]:
    """The standing of a container."""
    found: dict[str, Any] = json.loads(docs()["container", number])
    return found


def head_position() -> int:
    with reading() as work:
        return work.head.read().position


def words(*elements: object, **how: Any) -> list[str]:
    """Push, and say only the verdicts."""
    return [verdict.word for verdict in take_in(batch(elements, **how)).verdicts]


def begin_again() -> None:
    """An empty ledger in place of the one that is there."""
    with db.engine.begin() as connection:
        for table in db.metadata.sorted_tables:
            connection.execute(delete(table))
    open_ledger(RightsOf)
