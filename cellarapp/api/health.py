"""GET /api/health: whether the server is alive. GET /api/ready: whether it can do its work."""

from datetime import UTC, datetime
from importlib.metadata import version
from pathlib import Path

from flask import Response, current_app, json

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.client import build_id
from cellarapp.api.problems import ProblemError
from cellarapp.api.shapes import HealthAnswer, ReadyAnswer
from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.clock import write_any
from cellarapp.storage.ready import Looking

blueprint = Blueprint("health", __name__, description="Whether the server works")


@blueprint.at("GET", "/api/health")
@blueprint.answers(HealthAnswer)
def get_health() -> Response:
    """That the server answers, and which it is. Nothing else is looked at."""
    told = {
        "status": "ok",
        "version": version("cellarapp"),
        "rules": RULES_VERSION,
        "build": build_id(current_app.config["CELLAR_CLIENT"]),
        "demo": current_app.config["CELLAR_DEMO"],
        "server_time": write_any(datetime.now(UTC)),
    }
    return answer(json.dumps(told))


@blueprint.at("GET", "/api/ready")
@blueprint.answers(ReadyAnswer, 503)
def get_ready() -> Response:
    """Whether the database can be read and written, has the right tables, and has room to grow.

    Anybody may ask, so it is looked at every few seconds at most.
    """
    file: Path | None = current_app.config["CELLAR_DATABASE_FILE"]
    least = current_app.config["CELLAR_LEAST_FREE_MIB"]
    looking: Looking = current_app.extensions["cellarapp-looking"]
    findings = looking.found(file and file.parent, least_free_mib=least)
    checks = [finding._asdict() for finding in findings]
    wrong = [f"{finding.name}: {finding.said}" for finding in findings if not finding.ok]
    if wrong:
        raise ProblemError("not-ready", "; ".join(wrong), facts={"checks": checks})
    return answer(json.dumps({"checks": checks}))
