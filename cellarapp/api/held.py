"""GET /api/held: what could not be taken in and waits for a person or a later release."""

from typing import Any

from flask import Response, json

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.shapes import HeldAnswer
from cellarapp.ledger.history import held
from cellarapp.storage.held import HeldEntry

blueprint = Blueprint("held", __name__, description="Entries that are held")


@blueprint.at("GET", "/api/held")
@blueprint.answers(HeldAnswer, 503)
def get_held() -> Response:
    """Everything that is held, in the order it came. `raw` is the JSON that was sent, as text."""
    return answer(json.dumps({"held": [_told(one) for one in held()]}))


def _told(one: HeldEntry) -> dict[str, Any]:
    return {
        "id": one.entry_id or None,
        "raw": one.raw,
        "type": f"/problems/{one.reason}",
        "incident": one.incident,
        "device": one.device,
        "received_at": one.received_at,
    }
