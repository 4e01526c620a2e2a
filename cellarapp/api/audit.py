"""GET /api/audit: who did what."""

from typing import Any

from flask import Response, json

from cellarapp.accounts.audit import LINES_A_PAGE, lines
from cellarapp.api.account_shapes import AuditAnswer
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.parsing import Asked, AskedWhole
from cellarapp.storage.audit import StoredAudit

blueprint = Blueprint("audit", __name__, description="Who did what")


class Before(Asked):
    """Where the last page ended."""

    before = AskedWhole(1, 2**53 - 1, load_default=None)


@blueprint.at("GET", "/api/audit")
@blueprint.reads_query(Before)
@blueprint.answers(AuditAnswer, 401, 403, 422, 503)
def get_audit(asked: dict[str, Any]) -> Response:
    """A page of what was done about people, devices and held entries, newest first."""
    found = lines(asked["before"])
    following = found[-1].id if len(found) == LINES_A_PAGE else None
    told = {"lines": [_told(one) for one in found], "next": following}
    return answer(json.dumps(told))


def _told(one: StoredAudit) -> dict[str, Any]:
    return {
        "id": one.id,
        "at": one.at,
        "who": one.person,
        "device": one.device,
        "what": one.what,
        "about": one.about,
    }
