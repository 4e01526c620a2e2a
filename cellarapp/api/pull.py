"""GET /api/pull: rows that changed."""

from typing import Any

from flask import Response, json

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import principal
from cellarapp.api.parsing import Asked, AskedWhole
from cellarapp.api.problems import ProblemError
from cellarapp.api.shapes import PullAnswer
from cellarapp.ledger.fields import Words
from cellarapp.ledger.pulling import ROWS_A_PAGE, AnotherLedger, pull, rows_text

LARGEST_POSITION = 2**53 - 1
"""What JavaScript counts to without loss."""

blueprint = Blueprint("pull", __name__, description="Rows that changed")


class PullQuery(Asked):
    """Where the last pull ended."""

    epoch = Words(60, load_default="")
    since = AskedWhole(0, LARGEST_POSITION, load_default=0)
    limit = AskedWhole(1, 5000, load_default=ROWS_A_PAGE)


@blueprint.at("GET", "/api/pull")
@blueprint.reads_query(PullQuery)
@blueprint.answers(PullAnswer, 401, 409, 422, 503)
def get_changes(asked: dict[str, Any]) -> Response:
    """Rows that changed after a position, in the order of positions.

    `next` is where to go on from, at once while `more` is true. The last page carries a checksum
    of all rows.
    """
    try:
        found = pull(asked["epoch"] or None, asked["since"], asked["limit"])
    except AnotherLedger as other:
        raise another_ledger(other) from other
    told = {
        "epoch": found.head.epoch,
        "since": found.since,
        "next": found.next,
        "more": found.more,
        "head": found.head.position,
        "rules": found.head.rules,
        "me_version": principal().version,
    }
    if not found.more:
        told["checksum"] = found.head.checksum
    return answer(f'{json.dumps(told)[:-1]},"rows":{rows_text(found.rows)}}}')


def another_ledger(other: AnotherLedger) -> ProblemError:
    """The answer to a phone whose rows are not of this ledger."""
    facts = {"epoch": other.head.epoch, "head": other.head.position}
    return ProblemError("another-ledger", "Take a new snapshot.", facts=facts)
