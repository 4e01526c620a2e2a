"""The page of whoever finds a container: whose it is, and how to give it back.

Reached from its plate. It is drawn from the number in the address alone, without a look at the
container: a number that nobody knows looks like any other, and nothing of it is given away.
"""

from typing import Any

from flask import Response, redirect, request, url_for

from cellarapp.api.guard import now
from cellarapp.api.limits import REPORTS_FROM_ONE, REPORTS_OF_ALL, count_from_here, count_try
from cellarapp.domain.asset_number import take_apart
from cellarapp.domain.errors import NotAnAssetNumber, NotANumber
from cellarapp.domain.numbers import normal_number
from cellarapp.ledger.forms import FACTS
from cellarapp.pages.brewery import the_brewery
from cellarapp.pages.frame import drawn, pages
from cellarapp.pages.telling import tell

FIELDS = FACTS["reported"]
LONGEST = {name: field.most for name, field in FIELDS.items()}  # type: ignore[attr-defined]
FINDER = "a finder"
"""As it stands in the history; what they say of themselves is among the facts."""


@pages.get("/f")
def get_number() -> Response:
    """For whoever has read the address and not the code: which number is it?"""
    typed = request.args.get("number", "")
    if not typed:
        return drawn("number.html", brewery=the_brewery(), typed="")
    return _page(typed)


@pages.get("/f/<typed>")
def get_container(typed: str) -> Response:
    """From a plate with a link of our own."""
    return _page(typed)


@pages.get("/8003/<path:asset>")
def get_asset(asset: str) -> Response:
    """From a plate with a GS1 Digital Link."""
    try:
        return _page(take_apart(asset).serial)
    except NotAnAssetNumber:
        return _unread(asset)


@pages.post("/f/<typed>")
def post_report(typed: str) -> Response:
    """Take in what a finder says."""
    try:
        number = normal_number(typed)
    except NotANumber:
        return _unread(typed)
    count_from_here(REPORTS_FROM_ONE, "report")
    count_try(REPORTS_OF_ALL, "report", "all")
    said = {name: request.form.get(name, "") for name in FIELDS}
    wrong = tell("reported", number, said, FINDER, now())
    if not wrong:
        return redirect(url_for("pages.get_thanks", typed=number), 303)  # type: ignore[return-value]
    faults = {error.pointer.rpartition("/")[2] for error in wrong}
    return _report(number, 422, said=said, faults=faults)


@pages.get("/f/<typed>/thanks")
def get_thanks(typed: str) -> Response:
    """It is in; loading this again sends nothing."""
    try:
        return drawn("thanks.html", brewery=the_brewery(), number=normal_number(typed))
    except NotANumber:
        return _unread(typed)


def _page(typed: str) -> Response:
    try:
        return _report(normal_number(typed))
    except NotANumber:
        return _unread(typed)


def _report(number: str, status: int = 200, **more: Any) -> Response:
    usual: dict[str, Any] = {"said": {}, "faults": ()}
    given = {"brewery": the_brewery(), "number": number, "longest": LONGEST}
    return drawn("finder.html", status, **given, **(usual | more))


def _unread(typed: str) -> Response:
    return drawn("number.html", 404, brewery=the_brewery(), typed=typed)
