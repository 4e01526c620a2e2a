"""The OpenAPI document says what the server does: asked at random, it answers as described."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
import schemathesis
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import HealthCheck, given, settings
from schemathesis import GenerationMode
from schemathesis.specs.openapi.checks import positive_data_acceptance

from cellarapp import create_app
from cellarapp.accounts.doors import DOORS
from cellarapp.accounts.principal import principal_of
from cellarapp.api.cookie import NAME
from cellarapp.api.limits import Limits
from cellarapp.domain.entries import KINDS
from cellarapp.domain.roles import ROLES, Role
from cellarapp.storage.db import close_connections
from cellarapp.storage.work import reading

from ..conftest import config_in
from ..signed_in import client_of

REFUSED = [400, 401, 403, 404, 405, 409, 410, 411, 413, 415, 422, 429]
CONFIG = schemathesis.Config.from_dict(
    {"checks": {"negative_data_rejection": {"expected-statuses": REFUSED}}}
)


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """An application that stands for the whole module."""
    app = create_app(config_in(tmp_path_factory.mktemp("openapi")))
    yield app
    with app.app_context():
        close_connections()


@pytest.fixture(scope="module")
def described(served: Flask) -> Any:
    """The document as it is served."""
    return schemathesis.openapi.from_wsgi("/api/openapi.json", served, config=CONFIG)


TAKING_SOMETHING = [
    ("/api/push", "post"),
    ("/api/pull", "get"),
    ("/api/snapshot/pages", "get"),
    ("/api/containers/{number}", "get"),
    ("/api/customers/{customer}", "get"),
    ("/api/calculations/{name}", "post"),
    ("/api/labels/fills.pdf", "get"),
    ("/api/labels/plates.pdf", "get"),
    ("/api/begin", "post"),
    ("/api/pair", "post"),
    ("/api/sign-in", "post"),
    ("/api/here", "post"),
    ("/api/passphrase-check", "post"),
    ("/api/people", "post"),
    ("/api/people/{person_id}", "post"),
    ("/api/devices/{device_id}", "post"),
    ("/api/devices/{device_id}/revoke", "post"),
    ("/api/invites", "post"),
    ("/api/held/{content_hash}", "post"),
    ("/api/audit", "get"),
    ("/api/calendar", "post"),
    ("/api/calendar/end", "post"),
]
TAKING_NOTHING = [  # or any bytes at all
    ("/api/calculations", "get"),
    ("/api/snapshot", "get"),
    ("/api/held", "get"),
    ("/api/ledger.json", "get"),
    ("/api/events.jsonld", "get"),
    ("/api/sheets", "get"),
    ("/api/sheets/{kind}", "post"),
    ("/api/sheets/{kind}.csv", "get"),
    ("/api/health", "get"),
    ("/api/ready", "get"),
    ("/api/me", "get"),
    ("/api/people", "get"),
    ("/api/devices", "get"),
    ("/api/calendar", "get"),
    ("/api/calendar/{secret}.ics", "get"),
    ("/api/sign-out", "post"),
]
JUDGED_BY_A_RULE = [
    "/api/events.jsonld",
    "/api/labels/fills.pdf",
    "/api/labels/plates.pdf",
    "/api/calculations/{name}",
    "/api/sheets/{kind}",
    "/api/begin",
    "/api/pair",
    "/api/sign-in",
    "/api/here",
    "/api/passphrase-check",
    "/api/people",
    "/api/people/{person_id}",
    "/api/devices/{device_id}",
    "/api/devices/{device_id}/revoke",
    "/api/invites",
    "/api/held/{content_hash}",
]
"""What the document allows may still be refused, by the rule that reads it."""

DOORS_AS_DESCRIBED = {
    (method, re.sub(r"<(?:\w+:)?(\w+)>", r"{\1}", path)): door
    for (method, _, path), door in ((name.partition(" "), door) for name, door in DOORS.items())
}

CASES = [(*one, mode) for one in TAKING_SOMETHING for mode in GenerationMode] + [
    (*one, GenerationMode.POSITIVE) for one in TAKING_NOTHING
]


def test_no_operation_is_left_untried(described: Any) -> None:
    """A new one has to be written into the lists above."""
    found = [one.ok() for one in described.get_all_operations()]
    tried = sorted(TAKING_SOMETHING + TAKING_NOTHING)
    assert sorted((one.path, one.method) for one in found) == tried


class Doorstep:
    """Whoever asks: somebody in each role with a device of their own, and nobody."""

    def __init__(self, app: Flask) -> None:
        self._app = app
        self._cookies: dict[Role, str] = {}

    def ask(self, case: schemathesis.Case, role: Role | None) -> None:
        """What comes back has to be as described, and no more than the role may have."""
        self._app.extensions["cellarapp-limits"] = Limits()
        # The client in the same process does not unpack what it says it accepts.
        answer = case.call_and_validate(
            headers={"Accept-Encoding": "identity"},
            cookies={} if role is None else {NAME: self._cookie(role)},
            excluded_checks=[positive_data_acceptance] if self._may_refuse(case, role) else [],
        )
        assert answer.status_code >= 400 or self._may(case, role)

    def _cookie(self, role: Role) -> str:
        """Made anew once it has signed out or was revoked."""
        with self._app.app_context(), reading() as work:
            who = principal_of(work, self._cookies.get(role, ""))
        if who is None or who.device.revoked_at is not None:
            signed = client_of(self._app, role).get_cookie(NAME)
            assert signed is not None
            self._cookies[role] = signed.value
        return self._cookies[role]

    def _may(self, case: schemathesis.Case, role: Role | None) -> bool:
        """As the table of doors says."""
        door = DOORS_AS_DESCRIBED[case.method, case.path]
        if role is None:
            return door == "anybody"
        let_in = {"owner": ["owner"], "owner now": ["owner"], "cellar": ["owner", "cellar"]}
        return role in let_in.get(door, [role])

    def _may_refuse(self, case: schemathesis.Case, role: Role | None) -> bool:
        return case.path in JUDGED_BY_A_RULE or not self._may(case, role)


@pytest.fixture(scope="module")
def doorstep(served: Flask) -> Doorstep:
    """The same people and devices for the whole module."""
    return Doorstep(served)


@pytest.mark.parametrize(("path", "method", "mode"), CASES)
def test_server_does_what_the_document_says(
    described: Any, doorstep: Doorstep, path: str, method: str, mode: GenerationMode
) -> None:
    """With what the document allows, and with what it does not, under each role and none."""

    @settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))
    @given(case=described[path][method].as_strategy(generation_mode=mode))
    def asked(case: schemathesis.Case) -> None:
        for role in (*ROLES, None):
            doorstep.ask(case, role)

    asked()


def test_document_describes_every_kind_of_entry(client: FlaskClient) -> None:
    """For whoever writes another client."""
    document = client.get("/api/openapi.json").json
    assert document is not None
    assert document["openapi"] == "3.1.0"
    described = {name for name in document["components"]["schemas"] if name.startswith("EntryOf_")}
    assert described == {f"EntryOf_{kind}" for kind in KINDS}


def test_document_names_every_problem_an_operation_may_meet(app: Flask) -> None:
    """As problem details, with their media type."""
    document = app.test_client().get("/api/openapi.json").json
    assert document is not None
    for path in document["paths"].values():
        for operation in (path[method] for method in ("get", "post") if method in path):
            for status, answer in operation["responses"].items():
                if status not in ("200", "204"):
                    name = answer["$ref"].rpartition("/")[2]
                    described = document["components"]["responses"][name]
                    assert list(described["content"]) == ["application/problem+json"]
