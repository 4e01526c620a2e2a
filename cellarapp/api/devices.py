"""/api/devices and /api/invites: the owner lets devices in, names and revokes them."""

from typing import Any

from flask import Response, json

from cellarapp.accounts.devices import Known, all_devices, rename, revoke
from cellarapp.accounts.pairing import link_to_pair
from cellarapp.api.account_shapes import DevicesAnswer, DeviceShape, InviteAnswer
from cellarapp.api.addresses import link, qr_svg
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import now, principal
from cellarapp.api.parsing import Asked
from cellarapp.api.signing_in import Name, Nothing

blueprint = Blueprint("devices", __name__, description="Phones and tablets")


class RenameDevice(Asked):
    """Another name."""

    name = Name(required=True)


class Invite(Asked):
    """Whose device it will be."""

    person = Name(required=True)


@blueprint.at("GET", "/api/devices")
@blueprint.answers(DevicesAnswer, 401, 403, 503)
def get_devices() -> Response:
    """Every device that was ever paired, the last seen first."""
    return answer(json.dumps({"devices": [_told(one) for one in all_devices()]}))


@blueprint.at("POST", "/api/devices/<id:device_id>")
@blueprint.reads_body(RenameDevice, "Another name.")
@blueprint.answers(DeviceShape, 400, 401, 403, 404, 411, 413, 415, 422, 503)
def post_device(asked: dict[str, Any], device_id: str) -> Response:
    """Give a device another name."""
    return answer(json.dumps(_told(rename(principal(), device_id, asked["name"], now()))))


@blueprint.at("POST", "/api/devices/<id:device_id>/revoke")
@blueprint.reads_body(Nothing, "Nothing.")
@blueprint.answers(DeviceShape, 400, 401, 403, 404, 411, 413, 415, 422, 503)
def post_revoke(_asked: dict[str, Any], device_id: str) -> Response:
    """Shut a device out. What it still sends is held."""
    return answer(json.dumps(_told(revoke(principal(), device_id, now()))))


@blueprint.at("POST", "/api/invites")
@blueprint.reads_body(Invite, "Whose device it will be.")
@blueprint.answers(InviteAnswer, 400, 401, 403, 404, 411, 413, 415, 422, 503)
def post_invite(asked: dict[str, Any]) -> Response:
    """Make a link that pairs one device, within ten minutes."""
    made = link_to_pair(principal(), asked["person"], now())
    address = link("pair", made.token)
    told = {
        "link": address,
        "token": made.token,
        "expires_at": made.expires_at,
        "qr_svg": qr_svg(address),
    }
    return answer(json.dumps(told))


def _told(known: Known) -> dict[str, Any]:
    one = known.device
    return {
        "id": one.id,
        "name": one.name,
        "people": [person.name for person in known.people],
        "person": next((p.name for p in known.people if p.id == one.person), None),
        "paired_at": one.paired_at,
        "last_seen_at": one.last_seen_at,
        "waiting": one.waiting,
        "oldest_waiting_at": one.oldest_waiting_at,
        "app": one.app,
        "revoked_at": one.revoked_at,
    }
