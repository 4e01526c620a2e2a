"""GET /api/snapshot: all rows, in pages that are made once and kept compressed."""

import gzip
from threading import Lock
from typing import Any

from flask import Response, current_app, json

from cellarapp.api.answers import LEVEL, answer, compressed
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.parsing import Asked, AskedWhole
from cellarapp.api.shapes import PageAnswer, SnapshotAnswer
from cellarapp.ledger.fields import Pattern
from cellarapp.ledger.pulling import ROWS_A_PAGE, current_head, head_and_count, page, rows_text
from cellarapp.storage.rows import Key

blueprint = Blueprint("snapshot", __name__, description="All rows, for a device that has none")


class PageQuery(Asked):
    """Where the last page ended."""

    after = Pattern("|[a-z]{1,10}:[0-9A-Za-z-]{1,36}", "the key of a row", load_default="")
    limit = AskedWhole(1, 5000, load_default=ROWS_A_PAGE)


class PreparedPages:
    """Pages by what was asked for, compressed; forgotten as soon as the ledger moves on."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._state: tuple[str, int] = ("", -1)
        self._pages: dict[tuple[str, int], bytes] = {}

    def get(self, after: str, limit: int) -> bytes:
        """The page, made now if need be. Its rows are never older than the ledger is now."""
        head = current_head()
        state = (head.epoch, head.position)
        with self._lock:
            if state != self._state:
                self._state, self._pages = state, {}
            kept = self._pages.get((after, limit))
        if kept is not None:
            return kept
        made = gzip.compress(_page_text(after, limit).encode(), LEVEL, mtime=0)
        with self._lock:
            if state == self._state:
                self._pages[after, limit] = made
        return made


@blueprint.at("GET", "/api/snapshot")
@blueprint.answers(SnapshotAnswer, 401, 503)
def get_snapshot() -> Response:
    """What a device needs to know before it fetches the pages.

    Rows of the pages may be newer than `position`. So fetch the pages, then pull since `position`.
    """
    head, count = head_and_count()
    told = {
        "epoch": head.epoch,
        "position": head.position,
        "checksum": head.checksum,
        "rules": head.rules,
        "pages": -(-count // ROWS_A_PAGE),
    }
    return answer(json.dumps(told))


@blueprint.at("GET", "/api/snapshot/pages")
@blueprint.reads_query(PageQuery)
@blueprint.answers(PageAnswer, 401, 422, 503)
def get_page(asked: dict[str, Any]) -> Response:
    """One page of all rows, in the order of their keys; `next` is what to ask for after it."""
    prepared: PreparedPages = current_app.extensions["cellarapp-pages"]
    return compressed(prepared.get(asked["after"], asked["limit"]))


def _page_text(after: str, limit: int) -> str:
    key: Key | None = None
    if after:
        row_type, _, row_id = after.partition(":")
        key = (row_type, row_id)
    found = page(key, limit)
    following = None if found.next is None else ":".join(found.next)
    return f'{{"next":{json.dumps(following)},"rows":{rows_text(found.rows)}}}'
