"""The cookie of a paired device.

The prefix makes browsers refuse it unless it is Secure, of this host alone and of every path.
"""

from flask import Response, request

NAME = "__Host-cellar"
LASTS_S = 400 * 24 * 3600
"""As long as browsers keep a cookie at most."""


def cookie_sent() -> str:
    """The secret that the request carries, or nothing."""
    return request.cookies.get(NAME, "")


def give_cookie(response: Response, secret: str) -> None:
    """Let the browser keep the secret, or keep it for longer."""
    response.set_cookie(
        NAME, secret, max_age=LASTS_S, path="/", secure=True, httponly=True, samesite="Strict"
    )


def take_cookie(response: Response) -> None:
    """Let the browser forget the secret."""
    response.delete_cookie(NAME, path="/", secure=True, httponly=True, samesite="Strict")
