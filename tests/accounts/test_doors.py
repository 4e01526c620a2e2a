"""Every operation of the API, asked by every role and by nobody: who is let through."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest
from flask import Flask
from freezegun import freeze_time

from cellarapp import create_app
from cellarapp.accounts.doors import DOORS
from cellarapp.api.guard import FILES
from cellarapp.api.limits import Limits
from cellarapp.domain.roles import ROLES, Role
from cellarapp.storage.db import close_connections

from ..conftest import config_in
from ..making import made_id
from ..signed_in import client_of

NAMED = {
    "<number:number>": "117",
    "<string:name>": "rates",
    "<string:kind>": "containers",
    "<uuid:customer>": made_id("no customer"),
    "<id:person_id>": made_id("nobody"),
    "<id:device_id>": made_id("no device"),
    "<string:secret>": "no-secret",
    "<hash:content_hash>": "0" * 64,
    "<typed>": "117",
    "<path:asset>": "nonsense",
    "<token>": "nonsense",
}
SHUT = {"/problems/not-set-up", "/problems/not-paired", "/problems/revoked"}
SHUT |= {"/problems/role", "/problems/step-up-needed"}


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """One application for all of them: nobody here changes anything."""
    app = create_app(config_in(tmp_path_factory.mktemp("doors")))
    client_of(app, "owner")
    yield app
    with app.app_context():
        close_connections()


def shut_by(app: Flask, operation: str, role: Role | None) -> str:
    """The problem that somebody in this role meets at the door, or nothing."""
    method, path = operation.split(" ")
    for part, name in NAMED.items():
        path = path.replace(part, name)
    app.extensions["cellarapp-limits"] = Limits()
    answer = client_of(app, role).open(path, method=method, json={} if method == "POST" else None)
    assert answer.status_code < 500
    if answer.status_code not in (401, 403):
        return ""
    assert answer.json is not None
    problem: str = answer.json["type"]
    return problem if problem in SHUT else ""


def should_be(door: str, role: Role | None) -> str:
    if door == "anybody":
        return ""
    if role is None:
        return "/problems/not-paired"
    shut = {"owner": {"owner"}, "owner now": {"owner"}, "cellar": {"owner", "cellar"}}
    return "" if role in shut.get(door, {role}) else "/problems/role"


def test_every_operation_has_its_line_in_the_table(served: Flask) -> None:
    """And no line is for an operation that is not there. Files of the app need none."""
    there = {
        f"{method} {rule.rule}"
        for rule in served.url_map.iter_rules()
        for method in (rule.methods or set()) - {"HEAD", "OPTIONS"}
        if rule.endpoint.partition(".")[0] not in FILES
    }
    assert there == set(DOORS)


@pytest.mark.parametrize("role", [*ROLES, None])
@pytest.mark.parametrize("operation", sorted(DOORS))
def test_who_is_let_through(served: Flask, operation: str, role: Role | None) -> None:
    """A problem that lies behind the door, such as a malformed body, is met by those let in."""
    assert shut_by(served, operation, role) == should_be(DOORS[operation], role)


@pytest.mark.parametrize("operation", sorted(o for o, door in DOORS.items() if door == "owner now"))
def test_owners_doings_need_the_passphrase_again_after_a_quarter_of_an_hour(
    served: Flask, operation: str
) -> None:
    """Whoever finds the owner's phone lying about changes nothing."""
    method, path = operation.split(" ")
    for part, name in NAMED.items():
        path = path.replace(part, name)
    client = client_of(served, "owner")
    later = datetime.now(UTC) + timedelta(minutes=15, seconds=1)
    with freeze_time(later):
        answer = client.open(path, method=method, json={})
    assert answer.status_code == 403
    assert answer.json is not None
    assert answer.json["type"] == "/problems/step-up-needed"


def test_before_there_is_an_owner_nobody_is_let_in(app: Flask) -> None:
    """And the answer says what to do first."""
    for operation, door in DOORS.items():
        if door != "anybody":
            assert shut_by(app, operation, None) == "/problems/not-set-up"
