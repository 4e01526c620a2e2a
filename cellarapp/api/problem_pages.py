"""GET /problems/<slug>: what a kind of problem means, for people."""

from html import escape

from flask import Blueprint, Response

from cellarapp.api.problem_table import TABLE
from cellarapp.api.problems import ProblemError

blueprint = Blueprint("problems", __name__)

PAGE = """<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>{title}</title>
<h1>{title}</h1>
<p>{advice}</p>
<p><a href="/">cellarapp</a></p>
</html>
"""


@blueprint.get("/problems/<slug>")
def get_page(slug: str) -> Response:
    """A small page with what to do."""
    kind = TABLE.get(slug)
    if kind is None:
        raise ProblemError("not-found", "No problem goes by this name.")
    text = PAGE.format(title=escape(kind.title), advice=escape(kind.advice))
    response = Response(text, content_type="text/html; charset=utf-8")
    response.headers["Cache-Control"] = "max-age=86400"
    return response
