"""The one place where tests are let in: as the owner Ash, with a device of their own."""

import json
import re
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any
from urllib.request import Request, urlopen

from flask import Flask
from flask.testing import FlaskClient

from cellarapp.accounts import pairing
from cellarapp.accounts.pairing import Asking, begin, link_to_begin, link_to_pair
from cellarapp.accounts.people import Given, add, everybody
from cellarapp.accounts.principal import find_principal
from cellarapp.api.cookie import NAME
from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.domain.roles import Role

from .making import made_id

OWNER = "Ash"
PASSPHRASE = "a cask of mild, please"
JSON = "application/json"
PATIENCE_S = 60


def signed_in(app: Flask) -> FlaskClient:
    """A client of an application in this process that has just become its owner."""
    client = app.test_client()
    with app.app_context():
        client.set_cookie(NAME, owners_cookie())
    return client


def client_of(app: Flask, role: Role | None) -> FlaskClient:
    """A client whose device somebody in this role has in hand; of nobody's device without one.

    An owner has just given the passphrase.
    """
    client = app.test_client()
    if role is None:
        return client
    if role == "owner":
        return signed_in(app)
    name, now = f"{role} Ash", datetime.now(UTC)
    with app.app_context():
        owner = find_principal(owners_cookie())
        if all(one.name != name for one in everybody()):
            add(owner, name, role, Given(), now)
        token = link_to_pair(owner, name, now).token
        paired = pairing.pair(token, Asking(made_id(f"device {role}"), role, cookie=""), now)
    client.set_cookie(NAME, paired.secret)
    return client


def owner_in(config: Config) -> str:
    """The cookie of the owner of a brewery that nobody serves yet."""
    with opened(config):
        return owners_cookie()


def owners_cookie() -> str:
    """The cookie of a device that has just become the owner's, within an application's context."""
    now = datetime.now(UTC)
    asking = Asking(made_id("device bench"), "Bench", cookie="")
    return begin(link_to_begin(now).token, OWNER, PASSPHRASE, asking, now).secret


def become_owner(address: str, printed: str, device: str = "office") -> str:
    """The cookie of a device that opens the link which the server at this address has printed."""
    [token] = re.findall("#begin=([^ \n]+)", printed)[-1:]
    who = {"token": token, "name": OWNER, "passphrase": PASSPHRASE}
    return _let_in(address, "/api/begin", who | _device(device))


def pair(address: str, cookie: str, device: str, person: str = OWNER) -> str:
    """The cookie of a device that is paired by a link of a device that an owner has in hand."""
    token = call(address + "/api/invites", {"person": person}, cookie)["token"]
    return _let_in(address, "/api/pair", {"token": token} | _device(device))


def call(url: str, body: object = None, cookie: str = "") -> Any:
    """What a server answers, as JSON."""
    with urlopen(_request(url, body, cookie), timeout=PATIENCE_S) as answer:
        return json.load(answer)


def _device(name: str) -> dict[str, str]:
    return {"device": made_id(f"device {name}"), "device_name": name}


def _let_in(address: str, path: str, body: Mapping[str, str]) -> str:
    with urlopen(_request(address + path, body, ""), timeout=PATIENCE_S) as answer:
        given = answer.headers["Set-Cookie"]
    found = re.match(f"{re.escape(NAME)}=([^;]+)", given)
    assert found is not None
    return found[1]


def _request(url: str, body: object, cookie: str) -> Request:
    data = None if body is None else json.dumps(body).encode()
    headers = {"Content-Type": JSON} | ({"Cookie": f"{NAME}={cookie}"} if cookie else {})
    return Request(url, data, headers)
