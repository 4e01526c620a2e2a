"""What is known now: of every thing of one type, of one thing, of what a customer holds."""

import json
from collections.abc import Iterable
from typing import Any

from cellarapp.domain.standing import Standing
from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading


def on_record(*types: str) -> dict[str, dict[str, Any]]:
    """The rows of these types as they stand at one moment: by type, then by id."""
    with reading() as work:
        return {one: _by_id(work.rows.of_type(one)) for one in types}


def fields_of(row_type: str, row_id: str) -> dict[str, Any]:
    """The fields of one record; none where nobody ever spoke of it."""
    with reading() as work:
        row = work.rows.load([(row_type, row_id)]).get((row_type, row_id))
    fields: dict[str, Any] = {} if row is None else json.loads(row.doc)["fields"]
    return fields


def held_by(customer: str) -> list[Standing]:
    """The containers that are with a customer; not its own that it had back, and none scrapped."""
    with reading() as work:
        # Only those that name the customer are read: there are thousands of others.
        docs = [row.doc for row in work.rows.of_type("container") if customer in row.doc]
    name = _folded(fields_of("customer", customer).get("name"))
    standings: list[Standing] = [json.loads(doc) for doc in docs]
    return [
        one
        for one in standings
        if one["trip"] is not None
        and one["trip"]["customer"] == customer
        and not (one["owner"] is not None and _folded(one["owner"]) == name)
    ]


def _folded(name: str | None) -> str:
    return (name or "").strip().lower()


def _by_id(rows: Iterable[StoredRow]) -> dict[str, Any]:
    return {row.id: json.loads(row.doc) for row in rows}
