"""GET /api/customers/<id>: everything that is kept about one customer, for whoever asks."""

from uuid import UUID

from flask import Response

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.problems import ProblemError
from cellarapp.api.shapes import HistoryAnswer
from cellarapp.ledger.canonical import document
from cellarapp.ledger.history import history
from cellarapp.ledger.pulling import row_text

blueprint = Blueprint("customers", __name__, description="Customers by id")


@blueprint.at("GET", "/api/customers/<uuid:customer>")
@blueprint.answers(HistoryAnswer, 401, 404, 503)
def get_customer(customer: UUID) -> Response:
    """A customer as it stands, and every entry about it: what was said of its people, and when."""
    found = history(str(customer), "customer")
    if found is None:
        raise ProblemError("not-found", "Nobody has recorded anything about this customer.")
    row, entries = found
    return answer(f'{{"row":{row_text(row)},"entries":{document(entries)}}}')
