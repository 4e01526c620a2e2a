"""/api/held: what could not be taken in and waits for an owner or a later release."""

from typing import Any

from flask import Response, json

from cellarapp.accounts.deciding import decide
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import now, principal
from cellarapp.api.parsing import Asked
from cellarapp.api.shapes import HeldAnswer
from cellarapp.ledger.fields import Choice
from cellarapp.ledger.history import held
from cellarapp.storage.held import HeldEntry

blueprint = Blueprint("held", __name__, description="Entries that are held")


class Decide(Asked):
    """What is to become of it."""

    decision = Choice(["take", "put_aside"], required=True)


@blueprint.at("GET", "/api/held")
@blueprint.answers(HeldAnswer, 401, 403, 503)
def get_held() -> Response:
    """Everything that is held, in the order it came. `raw` is the JSON that was sent, as text."""
    return _held()


@blueprint.at("POST", "/api/held/<hash:content_hash>")
@blueprint.reads_body(Decide, "Take it in, or put it aside for good.")
@blueprint.answers(HeldAnswer, 400, 401, 403, 404, 409, 411, 413, 415, 422, 503)
def post_decision(asked: dict[str, Any], content_hash: str) -> Response:
    """Decide about one of them, by its key; answers what is held then."""
    decide(principal(), content_hash, asked["decision"], now())
    return _held()


def _held() -> Response:
    return answer(json.dumps({"held": [_told(one) for one in held()]}))


def _told(one: HeldEntry) -> dict[str, Any]:
    return {
        "key": one.content_hash,
        "id": one.entry_id or None,
        "raw": one.raw,
        "type": f"/problems/{one.reason}",
        "incident": one.incident,
        "device": one.device,
        "received_at": one.received_at,
        "decision": one.decision,
    }
