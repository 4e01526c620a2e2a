"""GET /api/events.jsonld: what happened to containers, as EPCIS 2.0 events."""

from flask import Response

from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import now
from cellarapp.api.problems import ProblemError
from cellarapp.documents.epcis import CannotTell, events_document
from cellarapp.domain.calendar import write_instant
from cellarapp.domain.errors import NotAnAssetNumber

blueprint = Blueprint("events", __name__, description="EPCIS 2.0 events of containers")


@blueprint.at("GET", "/api/events.jsonld")
@blueprint.gives_file("application/ld+json", "An EPCIS 2.0 document.", 401, 403, 422, 503)
def get_events() -> Response:
    """Every event of every container, for a trading partner who asks for them."""
    try:
        document = "".join(events_document(write_instant(now())))
    except CannotTell as fault:
        raise ProblemError("cannot-tell", str(fault)) from fault
    except NotAnAssetNumber as fault:
        raise ProblemError(
            "cannot-tell", "The company prefix leaves no room for every kind of container."
        ) from fault
    response = Response(document, content_type="application/ld+json")
    response.headers["Content-Disposition"] = 'attachment; filename="events.jsonld"'
    return response
