"""/api/calendar: jobs due as a calendar feed, at an address that only its owner knows."""

from typing import Any

from flask import Response, json
from marshmallow import Schema
from marshmallow.fields import String

from cellarapp.accounts.calendars import end_address, is_somebodys, made_at, new_address
from cellarapp.api.account_shapes import instant
from cellarapp.api.addresses import qr_svg, reached_at
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import now, principal
from cellarapp.api.limits import OF_CALENDARS, count_from_here
from cellarapp.api.problems import ProblemError
from cellarapp.api.signing_in import Nothing
from cellarapp.documents.calendar import TYPES, feed
from cellarapp.domain.calendar import write_instant
from cellarapp.ledger.on_record import on_record
from cellarapp.ledger.settings import brewery_settings

blueprint = Blueprint("calendar", __name__, description="Jobs due, for calendar programs")


class CalendarAnswer(Schema):
    """Whether there is an address, which nobody can read again."""

    made_at = instant(or_null=True)


class NewCalendarAnswer(CalendarAnswer):
    """The address, shown this once."""

    address = String(required=True, metadata={"format": "uri"})
    qr_svg = String(required=True)


@blueprint.at("GET", "/api/calendar")
@blueprint.answers(CalendarAnswer, 401, 403, 503)
def get_calendar_address() -> Response:
    """Since when whoever has this device in hand has an address."""
    return answer(json.dumps({"made_at": made_at(principal())}))


@blueprint.at("POST", "/api/calendar")
@blueprint.reads_body(Nothing, "Nothing.")
@blueprint.answers(NewCalendarAnswer, 400, 401, 403, 411, 413, 415, 422, 503)
def post_calendar_address(_asked: dict[str, Any]) -> Response:
    """Make an address; the one before works no more."""
    address = f"{reached_at()}api/calendar/{new_address(principal(), now())}.ics"
    told = {"made_at": write_instant(now()), "address": address, "qr_svg": qr_svg(address)}
    return answer(json.dumps(told))


@blueprint.at("POST", "/api/calendar/end")
@blueprint.reads_body(Nothing, "Nothing.")
@blueprint.answers_nothing(400, 401, 403, 411, 413, 415, 422, 503)
def post_end_of_address(_asked: dict[str, Any]) -> Response:
    """End the address."""
    end_address(principal(), now())
    return Response(status=204)


@blueprint.at("GET", "/api/calendar/<string:secret>.ics")
@blueprint.gives_file("text/calendar", "The jobs due (RFC 5545).", 404, 429, 503)
def get_calendar(secret: str) -> Response:
    """Ready, jobs of the day, best before, to collect, promised, hired ones due back."""
    count_from_here(OF_CALENDARS, "calendar")
    if not is_somebodys(secret):
        raise ProblemError(
            "not-found", "This address is none, or works no more. Make a new one at the Office."
        )
    jobs = feed(on_record(*TYPES), write_instant(now()), brewery_settings())
    response = Response(jobs, content_type="text/calendar; charset=utf-8")
    response.headers["Content-Disposition"] = 'inline; filename="jobs.ics"'
    return response
