"""POST /api/push: entries from a device."""

from typing import Any

from flask import Response, current_app, json
from typing_extensions import override

from cellarapp.accounts.devices import Waiting, says_something_new
from cellarapp.accounts.principal import Principal
from cellarapp.accounts.rights import RightsOf
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import note_that_it_was_seen, now, principal
from cellarapp.api.limits import OF_ONE_REVOKED, count_try
from cellarapp.api.parsing import Asked, Elements, Protocol
from cellarapp.api.problems import ProblemError, details
from cellarapp.api.shapes import PushAnswer
from cellarapp.ledger.clock import write_any
from cellarapp.ledger.fields import Id, Moment, Whole, Words
from cellarapp.ledger.take_in import take_in
from cellarapp.ledger.verdicts import Batch, Verdict

MOST_ENTRIES = 500
LARGEST_COUNT = 2**31 - 1

blueprint = Blueprint("push", __name__, description="Entries from devices")


class Count(Whole):
    """A whole number, also where JSON writes it as 3.0."""

    @override
    def read(self, value: Any) -> int:
        return super().read(
            int(value) if isinstance(value, float) and value.is_integer() else value
        )


class Push(Asked):
    """A batch of entries."""

    proto = Protocol(required=True, metadata={"enum": [1]})
    app = Words(60, required=True, metadata={"description": "The app's build"})
    epoch = Words(60, load_default=None, allow_none=True)
    sent_at = Moment(required=True, metadata={"description": "By the same clock as happened_at"})
    device = Id(required=True)
    waiting = Count(
        0,
        LARGEST_COUNT,
        load_default=None,
        metadata={"description": "How many entries are left on the device after this batch"},
    )
    oldest_waiting_at = Moment(load_default=None, allow_none=True)
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
@blueprint.answers(PushAnswer, 400, 401, 403, 411, 413, 415, 422, 429, 503)
def push(asked: dict[str, Any]) -> Response:
    """Take entries in. The same batch again changes nothing.

    Each entry gets a verdict of its own, in the order of the request: accepted, known, held
    or refused. A device with another epoch may push all the same, and so may one that
    was revoked: what it sends is held.
    """
    if len(asked["entries"]) > MOST_ENTRIES:
        raise ProblemError("too-large", f"Send at most {MOST_ENTRIES} entries at once.")
    who, received_at = principal(), now()
    if who.device.revoked_at is not None:
        count_try(OF_ONE_REVOKED, "push", who.device.id)
    rights = None if current_app.config["CELLAR_DEMO"] else RightsOf(who.device.id)
    sender = asked["device"] if rights is None else who.device.id
    outcome = take_in(Batch(sender, asked["sent_at"], received_at, asked["entries"], rights))
    _note(who, asked)
    told = {
        "epoch": outcome.epoch,
        "head": outcome.head,
        "server_time": write_any(received_at),
        "results": [_told(verdict) for verdict in outcome.verdicts],
    }
    return answer(json.dumps(told))


def _note(who: Principal, asked: dict[str, Any]) -> None:
    """What the device says of itself, for the owner's list of devices."""
    oldest = asked["oldest_waiting_at"]
    said = Waiting(asked["app"], asked["waiting"], None if oldest is None else write_any(oldest))
    if says_something_new(who, said):
        note_that_it_was_seen(said)


def _told(verdict: Verdict) -> dict[str, Any]:
    told: dict[str, Any] = {"id": verdict.id, "verdict": verdict.word}
    if verdict.position is not None:
        told["position"] = verdict.position
    if verdict.problem is not None:
        told["problem"] = details(verdict.problem)
    return told
