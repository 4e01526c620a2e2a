"""GET /api/health: whether the server works, and which it is."""

from datetime import UTC, datetime
from importlib.metadata import version

from flask import Response, current_app, json

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.shapes import HealthAnswer
from cellarapp.ledger.clock import write_any
from cellarapp.ledger.pulling import current_head

blueprint = Blueprint("health", __name__, description="Whether the server works")


@blueprint.at("GET", "/api/health")
@blueprint.answers(HealthAnswer, 503)
def get_health() -> Response:
    """How far the ledger is, read from the database just now."""
    head = current_head()
    told = {
        "status": "ok",
        "version": version("cellarapp"),
        "epoch": head.epoch,
        "head": head.position,
        "rules": head.rules,
        "demo": current_app.config["CELLAR_DEMO"],
        "server_time": write_any(datetime.now(UTC)),
    }
    return answer(json.dumps(told))
