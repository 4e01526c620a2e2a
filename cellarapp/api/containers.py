"""GET /api/containers/<number>: one container's whole history."""

from flask import Response
from werkzeug.routing import BaseConverter

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.problems import ProblemError
from cellarapp.api.shapes import HistoryAnswer
from cellarapp.domain.numbers import normal_number
from cellarapp.ledger.canonical import document
from cellarapp.ledger.history import history
from cellarapp.ledger.pulling import row_text

blueprint = Blueprint("containers", __name__, description="Containers by number")


class NumberPath(BaseConverter):
    """A number as somebody typed it."""

    typed = r"^(?=[^0-9]*[0-9])[ .-]*([A-Za-z0-9][ .-]*){1,8}$"


@blueprint.at("GET", "/api/containers/<number:number>")
@blueprint.answers(HistoryAnswer, 401, 404, 422, 503)
def get_history(number: str) -> Response:
    """A container's row, and every entry that was made about it or counts for it, in order."""
    normal = normal_number(number)
    found = history(normal)
    if found is None:
        raise ProblemError("not-found", f"Nobody has recorded anything about {normal} yet.")
    row, entries = found
    return answer(f'{{"row":{row_text(row)},"entries":{document(entries)}}}')
