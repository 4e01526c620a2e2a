"""Who may call what: one line for every operation of the API, and for every page.

An operation that has no line here is shut to everybody.
"""

from datetime import datetime
from typing import Literal

from cellarapp.accounts.principal import Principal
from cellarapp.accounts.refusal import Refusal

Door = Literal["anybody", "device", "even revoked", "cellar", "owner", "owner now"]
"""Who is let through.

anybody: also who is not signed in. device: any that is paired, whoever has it in hand.
even revoked: a revoked device too. cellar: a device that somebody has in hand who works in the
cellar. owner: a device that an owner has in hand.
owner now: and on which the passphrase was given a short while ago.
"""

IN_THE_CELLAR = ("owner", "cellar")
"""Roles that work in the cellar."""

DOORS: dict[str, Door] = {
    "GET /api/openapi.json": "anybody",
    "GET /api/health": "anybody",
    "GET /api/ready": "anybody",
    "POST /api/begin": "anybody",
    "POST /api/pair": "anybody",
    "POST /api/sign-in": "anybody",
    "GET /api/me": "device",
    "POST /api/here": "device",
    "POST /api/passphrase-check": "device",
    "POST /api/sign-out": "device",
    "POST /api/push": "even revoked",
    "GET /api/pull": "device",
    "GET /api/snapshot": "device",
    "GET /api/snapshot/pages": "device",
    "GET /api/containers/<number:number>": "device",
    "GET /api/customers/<uuid:customer>": "owner",
    "GET /api/calculations": "device",
    "POST /api/calculations/<string:name>": "device",
    "GET /api/sheets": "device",
    "POST /api/sheets/<string:kind>": "device",
    "GET /api/sheets/<string:kind>.csv": "owner",
    "GET /api/ledger.json": "owner",
    "GET /api/events.jsonld": "owner",
    "GET /api/labels/plates.pdf": "device",
    "GET /api/labels/fills.pdf": "device",
    "GET /api/calendar": "cellar",
    "POST /api/calendar": "cellar",
    "POST /api/calendar/end": "cellar",
    "GET /api/calendar/<string:secret>.ics": "anybody",
    "GET /api/people": "owner",
    "POST /api/people": "owner now",
    "POST /api/people/<id:person_id>": "owner now",
    "GET /api/devices": "owner",
    "POST /api/devices/<id:device_id>": "owner now",
    "POST /api/devices/<id:device_id>/revoke": "owner now",
    "POST /api/invites": "owner now",
    "GET /api/held": "owner",
    "POST /api/held/<hash:content_hash>": "owner now",
    "GET /api/audit": "owner",
    "GET /f": "anybody",
    "GET /f/<typed>": "anybody",
    "POST /f/<typed>": "anybody",
    "GET /f/<typed>/thanks": "anybody",
    "GET /8003/<path:asset>": "anybody",
    "GET /yours/<token>": "anybody",
    "POST /yours/<token>": "anybody",
    "GET /pages/style.css": "anybody",
}
"""Whoever opens /yours holds a link, which is looked at there."""


def let_through(who: Principal, door: Door, now: datetime) -> None:
    """Raises: Refusal when the device may not go through."""
    if who.device.revoked_at is not None and door != "even revoked":
        raise Refusal("revoked")
    if door == "cellar" and who.person.role not in IN_THE_CELLAR:
        raise Refusal("role")
    if door in ("owner", "owner now") and who.person.role != "owner":
        raise Refusal("role")
    if door == "owner now" and not who.stepped_up(now):
        raise Refusal("step-up-needed")
