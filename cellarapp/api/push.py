"""POST /api/push: entries from a device."""

from datetime import UTC, datetime
from typing import Any

from flask import Response, json

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.parsing import Asked, Elements, Protocol
from cellarapp.api.problems import ProblemError, details
from cellarapp.api.shapes import PushAnswer
from cellarapp.ledger.clock import write_any
from cellarapp.ledger.fields import Id, Moment, Words
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch, Verdict

MOST_ENTRIES = 500

blueprint = Blueprint("push", __name__, description="Entries from devices")


class Push(Asked):
    """A batch of entries."""

    proto = Protocol(required=True, metadata={"enum": [1]})
    app = Words(60, required=True, metadata={"description": "The app's build"})
    epoch = Words(60, load_default=None, allow_none=True)
    sent_at = Moment(required=True, metadata={"description": "By the same clock as happened_at"})
    device = Id(required=True)
    entries = Elements(
        required=True,
        metadata={
            "type": "array",
            "maxItems": MOST_ENTRIES,
            "description": "Each is judged by itself; see the schemas EntryOf_*.",
        },
    )


@blueprint.at("POST", "/api/push")
@blueprint.reads_body(Push, "At most 500 entries and 1 MiB; gzip is accepted.")
@blueprint.answers(PushAnswer, 400, 411, 413, 415, 422, 503)
def push(asked: dict[str, Any]) -> Response:
    """Take entries in. The same batch again changes nothing.

    Each entry gets a verdict of its own, in the order of the request: accepted, known, held
    or refused. A device with another epoch may push all the same.
    """
    if len(asked["entries"]) > MOST_ENTRIES:
        raise ProblemError("too-large", f"Send at most {MOST_ENTRIES} entries at once.")
    received_at = datetime.now(UTC)
    outcome = take_in(Batch(asked["device"], asked["sent_at"], received_at, asked["entries"]))
    told = {
        "epoch": outcome.epoch,
        "head": outcome.head,
        "server_time": write_any(received_at),
        "results": [_told(verdict) for verdict in outcome.verdicts],
    }
    return answer(json.dumps(told))


def _told(verdict: Verdict) -> dict[str, Any]:
    told: dict[str, Any] = {"id": verdict.id, "verdict": verdict.word}
    if verdict.position is not None:
        told["position"] = verdict.position
    if verdict.problem is not None:
        told["problem"] = details(verdict.problem)
    return told
