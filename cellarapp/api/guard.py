"""Looks at a request before it is answered: where it comes from, whose it is, what it may do."""

import logging
from datetime import UTC, datetime
from ipaddress import ip_address
from urllib.parse import urlsplit

from flask import Flask, Response, current_app, g, request

from cellarapp.accounts.devices import Waiting, is_due, note_seen
from cellarapp.accounts.doors import DOORS, let_through
from cellarapp.accounts.principal import Principal, demo_principal, find_principal
from cellarapp.api.cookie import cookie_sent, give_cookie
from cellarapp.api.problems import ProblemError
from cellarapp.storage.errors import StorageError

logger = logging.getLogger(__name__)

SAFE = ("GET", "HEAD", "OPTIONS")
FILES = ("client", "problems")
"""What anybody may fetch and no door stands before: the app itself, and words about problems."""


def principal() -> Principal:
    """Whose request this is."""
    found: Principal = g.principal
    return found


def now() -> datetime:
    """When the request came: one and the same time for all that is done about it."""
    moment: datetime = g.now
    return moment


def guard() -> None:
    """Raises: ProblemError, Refusal."""
    g.now, g.principal = datetime.now(UTC), None
    if request.method not in SAFE and not _of_this_site():
        raise ProblemError("cross-site", "This was asked for by a page of another site.")
    if request.url_rule is None or request.blueprint in FILES:
        return
    method = "GET" if request.method == "HEAD" else request.method
    if method == "OPTIONS":
        return
    door = DOORS.get(f"{method} {request.url_rule.rule}")
    if door == "anybody":
        return
    g.principal = _principal()
    if door is None:
        raise ProblemError("role", "This operation is open to nobody.")
    let_through(g.principal, door, now())


def _principal() -> Principal:
    if current_app.config["CELLAR_DEMO"]:
        if not here_alone():
            raise ProblemError("not-secure", "The demo is open on its own machine only.")
        return demo_principal()
    return find_principal(cookie_sent())


def _of_this_site() -> bool:
    """Whether a page of ours asks, or no page at all.

    Browsers say so in Sec-Fetch-Site; older ones in Origin. A program that is no browser says
    neither, and carries no cookie that somebody else might use.
    """
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        return site == "same-origin"
    origin = request.headers.get("Origin")
    if origin is None:
        return True
    parts = urlsplit(origin)
    return parts.netloc == request.host and (parts.scheme == "https" or not request.is_secure)


def here_alone() -> bool:
    """Whether the app was reached by a name that leads to this very machine."""
    host = urlsplit(f"//{request.host}").hostname or ""
    if host == "localhost":
        return True
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return False


def only_where_secure() -> None:
    """Browsers keep no cookie of ours from plain http. Raises: ProblemError."""
    if not request.is_secure and not here_alone():
        raise ProblemError(
            "not-secure",
            "A device can be signed in only over https. Start the server with serve --lan, or put "
            "a proxy with a certificate before it, and open the link with https.",
        )


def note_that_it_was_seen(said: Waiting | None = None) -> None:
    """Note it for the owner's list of devices, which is worth less than the answer itself."""
    try:
        note_seen(principal(), now(), said)
    except StorageError as fault:
        logger.warning("that a device was seen could not be noted: %r", fault)


def _renew(response: Response) -> Response:
    """Keep the cookie for another while, and note now and then that the device was seen."""
    who: Principal | None = g.get("principal")
    if who is not None and response.status_code < 400 and is_due(who, now()):
        note_that_it_was_seen()
        if "Set-Cookie" not in response.headers:
            give_cookie(response, cookie_sent())
    return response


def register_guard(app: Flask) -> None:
    """Put the guard before every request of this application."""
    app.before_request(guard)
    app.after_request(_renew)
