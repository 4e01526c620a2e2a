"""GET /api/ledger.json: everything there is, in one file."""

from flask import Response, stream_with_context
from marshmallow import Schema
from marshmallow.fields import Dict, Integer, List, Raw, String

from cellarapp.api.blueprint import Blueprint
from cellarapp.ledger.everything import everything

blueprint = Blueprint("everything", __name__, description="The whole ledger")


class LedgerAnswer(Schema):
    """Rows as devices pull them, entries as they were taken in, and what is held as it was sent."""

    epoch = String(required=True)
    head = Integer(required=True)
    rules = Integer(required=True)
    rows = List(Dict(), required=True)
    entries = List(Dict(), required=True)
    held = List(Raw(), required=True)


@blueprint.at("GET", "/api/ledger.json")
@blueprint.answers(LedgerAnswer, 401, 503)
def get_everything() -> Response:
    """The whole ledger, as it is at one moment, to keep or to take elsewhere."""
    response = Response(stream_with_context(everything()), content_type="application/json")
    response.headers["Content-Disposition"] = 'attachment; filename="ledger.json"'
    return response
