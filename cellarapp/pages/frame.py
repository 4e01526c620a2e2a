"""What all these pages share: how they are drawn, their headers, what they say of errors."""

import hashlib
import logging
from http import HTTPStatus
from pathlib import Path
from typing import Any

from flask import Blueprint, Response, render_template, request, url_for
from werkzeug.exceptions import HTTPException

from cellarapp.api.limits import OF_ONE_VISITOR, count_from_here
from cellarapp.api.problem_table import TABLE
from cellarapp.api.problems import ProblemError
from cellarapp.ledger.problem import incident
from cellarapp.storage.errors import StorageError

MOST_BYTES = 16 * 1024
"""Of what a form sends; all that its fields take is less than half of it."""

POLICY = "; ".join(
    [
        "default-src 'none'",
        "style-src 'self'",
        "img-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    ]
)

SAYS = {
    403: "This was sent from another site. Go back, load the page again and send it from there.",
    413: "That is more than this page takes. Go back, where what you wrote still stands, and say "
    "it in fewer words.",
    429: "This was asked too often. Wait a minute, then try again.",
    503: "This cannot be taken in just now, and nothing of it was kept. Go back and try again in "
    "a minute.",
}
OUR_FAULT = "The fault is ours, and nothing was kept. Try again later."

STYLE = (Path(__file__).parent / "style.css").read_bytes()
STYLE_MARK = hashlib.sha256(STYLE).hexdigest()[:16]

logger = logging.getLogger(__name__)

pages = Blueprint("pages", __name__, template_folder="templates")


def drawn(template: str, status: int = 200, **said: Any) -> Response:
    """A page."""
    text = render_template(template, **said)
    return Response(text, status=status, content_type="text/html; charset=utf-8")


@pages.get("/pages/style.css")
def get_style() -> Response:
    """The one stylesheet. Its address names what is in it, so that it is asked for once."""
    response = Response(STYLE, content_type="text/css; charset=utf-8")
    response.headers["Cache-Control"] = "public, max-age=31536000, immutable"
    return response


@pages.context_processor
def what_pages_know() -> dict[str, str]:
    """Beside what each of them is drawn with."""
    return {"style": url_for("pages.get_style", of=STYLE_MARK)}


@pages.before_request
def bound() -> None:
    """Anybody may ask: each only so often, and for so much at once. Raises: ProblemError."""
    request.max_content_length = MOST_BYTES
    count_from_here(OF_ONE_VISITOR, "pages")


@pages.after_request
def set_headers(response: Response) -> Response:
    """Nothing runs, nothing is kept on the way or found by a search.

    A page names itself to its own site, so that browsers without Sec-Fetch-Site say where a form
    comes from.
    """
    response.headers["Content-Security-Policy"] = POLICY
    response.headers["Referrer-Policy"] = "same-origin"
    response.headers["X-Robots-Tag"] = "noindex"
    response.headers.setdefault("Cache-Control", "no-store")
    return response


@pages.errorhandler(ProblemError)
def of_ours(error: ProblemError) -> Response:
    """The same problem as an app is told of, in words for anybody."""
    response = _sorry(TABLE[error.problem.slug].status)
    response.headers.update(error.headers)
    return response


@pages.errorhandler(HTTPException)
def of_http(error: HTTPException) -> Response | HTTPException:
    """Above all too long a text."""
    status = error.code or 500
    return error if status < 400 else _sorry(status)


@pages.errorhandler(StorageError)
def of_storage(error: StorageError) -> Response:
    """Nothing was kept."""
    logger.warning("a page could not be answered: %r", error.__cause__ or error)
    return _sorry(503)


@pages.errorhandler(Exception)
def of_a_fault(error: Exception) -> Response:
    """The log has the rest."""
    incident(error)
    return _sorry(500)


def _sorry(status: int) -> Response:
    says = SAYS.get(status, OUR_FAULT)
    return drawn("sorry.html", status, title=HTTPStatus(status).phrase, says=says)
