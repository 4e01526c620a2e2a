"""What is known now of every thing of one type."""

import json
from collections.abc import Iterable
from typing import Any

from cellarapp.storage.rows import StoredRow
from cellarapp.storage.work import reading


def on_record(*types: str) -> dict[str, dict[str, Any]]:
    """The rows of these types as they stand at one moment: by type, then by id."""
    with reading() as work:
        return {one: _by_id(work.rows.of_type(one)) for one in types}


def _by_id(rows: Iterable[StoredRow]) -> dict[str, Any]:
    return {row.id: json.loads(row.doc) for row in rows}
