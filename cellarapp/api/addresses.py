"""Links into the app, and their QR codes.

The secret stands behind the #: browsers do not send that part, so that it is in no server's log.
"""

from io import BytesIO

import segno
from flask import current_app, request

from cellarapp.api.guard import here_alone


def reached_at() -> str:
    """The app's own address, such as https://casks.example/, that a phone can open too."""
    if here_alone():
        return f"{current_app.config['CELLAR_REACHED_AT']()[0]}/"
    return request.host_url


def link(what: str, token: str) -> str:
    """A link to the app."""
    return f"{reached_at()}#{what}={token}"


def qr_svg(address: str) -> str:
    """An address as a picture that a camera reads."""
    drawn = BytesIO()
    code = segno.make(address, error="m", micro=False)
    code.save(drawn, kind="svg", border=4, scale=4, xmldecl=False, light="#ffffff", nl=False)
    return drawn.getvalue().decode()
