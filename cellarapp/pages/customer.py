"""The page of a customer: what it holds, and what it says of each of them.

Whoever has the link may see it and say so. Of each container it shows number, size and since when,
and nothing of anything else.
"""

from typing import NamedTuple

from flask import Response, redirect, request, url_for

from cellarapp.accounts.customer_links import customer_of
from cellarapp.api.guard import now
from cellarapp.api.limits import BY_ONE_LINK, count_try
from cellarapp.domain.calendar import london_date, parse_day
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.standing import Standing
from cellarapp.ledger.on_record import held_by
from cellarapp.pages.brewery import the_brewery
from cellarapp.pages.frame import drawn, pages
from cellarapp.pages.telling import tell

BY_THE_CUSTOMER = "the customer"
"""As it stands in the history; which one is among the facts."""
SAYS = ("empty", "not_here", "here")


class Held(NamedTuple):
    """One line of the page. `told` is what they have said of it, or nothing."""

    number: str
    size: str
    since: str
    told: str


@pages.get("/yours/<token>")
def get_customer(token: str) -> Response:
    """What the customer holds. A link that was never made and one that is stopped look alike."""
    customer = customer_of(token)
    if customer is None:
        return _no_longer()
    held = [_line(one) for one in held_by(customer)]
    return drawn("customer.html", brewery=the_brewery(), held=held, token=token)


@pages.post("/yours/<token>")
def post_word(token: str) -> Response:
    """What they say of one container, if it is still with them."""
    customer = customer_of(token)
    if customer is None:
        return _no_longer()
    count_try(BY_ONE_LINK, "told", customer)
    number, says = request.form.get("number", ""), request.form.get("says", "")
    if says in SAYS and number in {one["number"] for one in held_by(customer)}:
        tell("told", number, {"customer": customer, "says": says}, BY_THE_CUSTOMER, now())
    address = url_for("pages.get_customer", token=token, _anchor=f"n{number}")
    return redirect(address, 303)  # type: ignore[return-value]


def _no_longer() -> Response:
    return drawn("no_longer.html", 404, brewery=the_brewery())


def _line(standing: Standing) -> Held:
    trip = standing["trip"]
    since = parse_day(london_date(trip["since"])) if trip else None
    return Held(
        standing["number"],
        _size(standing),
        f"{since:%-d %B %Y}" if since else "",
        _told(standing),
    )


def _told(standing: Standing) -> str:
    trip = standing["trip"]
    return trip["told"]["says"] if trip and "told" in trip else ""


def _size(standing: Standing) -> str:
    kind, capacity_ml = standing["kind"], standing["capacity_ml"]
    if kind is None or capacity_ml is None:
        return "size not known"
    name = CONTAINER_KINDS[kind]["name"]
    return name if name[0].isdigit() else f"{name}, {capacity_ml / 1000:.3g} L"
