"""The OpenAPI document says what the server does: asked at random, it answers as described."""

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
from cellarapp.domain.entries import KINDS
from cellarapp.storage.db import close_connections

from ..conftest import config_in

REFUSED = [400, 401, 403, 404, 405, 409, 411, 413, 415, 422]
CONFIG = schemathesis.Config.from_dict(
    {"checks": {"negative_data_rejection": {"expected-statuses": REFUSED}}}
)


@pytest.fixture(scope="module")
def described(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """The document as it is served, of an application that stands for the whole module."""
    app = create_app(config_in(tmp_path_factory.mktemp("openapi")))
    yield schemathesis.openapi.from_wsgi("/api/openapi.json", app, config=CONFIG)
    with app.app_context():
        close_connections()


TAKING_SOMETHING = [
    ("/api/push", "post"),
    ("/api/pull", "get"),
    ("/api/snapshot/pages", "get"),
    ("/api/containers/{number}", "get"),
    ("/api/customers/{customer}", "get"),
    ("/api/calculations/{name}", "post"),
    ("/api/labels/fills.pdf", "get"),
    ("/api/labels/plates.pdf", "get"),
]
TAKING_NOTHING = [  # or any bytes at all
    ("/api/calculations", "get"),
    ("/api/snapshot", "get"),
    ("/api/held", "get"),
    ("/api/ledger.json", "get"),
    ("/api/sheets", "get"),
    ("/api/sheets/{kind}", "post"),
    ("/api/sheets/{kind}.csv", "get"),
    ("/api/health", "get"),
    ("/api/ready", "get"),
]
JUDGED_BY_A_RULE = [
    "/api/labels/fills.pdf",
    "/api/labels/plates.pdf",
    "/api/calculations/{name}",
    "/api/sheets/{kind}",
]
"""What the document allows may still be refused, by the rule that reads it."""

CASES = [(*one, mode) for one in TAKING_SOMETHING for mode in GenerationMode] + [
    (*one, GenerationMode.POSITIVE) for one in TAKING_NOTHING
]


def test_no_operation_is_left_untried(described: Any) -> None:
    """A new one has to be written into the lists above."""
    found = [one.ok() for one in described.get_all_operations()]
    tried = sorted(TAKING_SOMETHING + TAKING_NOTHING)
    assert sorted((one.path, one.method) for one in found) == tried


@pytest.mark.parametrize(("path", "method", "mode"), CASES)
def test_server_does_what_the_document_says(
    described: Any, path: str, method: str, mode: GenerationMode
) -> None:
    """With what the document allows, and with what it does not."""

    @settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
    @given(case=described[path][method].as_strategy(generation_mode=mode))
    def ask(case: schemathesis.Case) -> None:
        # The client in the same process does not unpack what it says it accepts.
        case.call_and_validate(
            headers={"Accept-Encoding": "identity"},
            excluded_checks=[positive_data_acceptance] if path in JUDGED_BY_A_RULE else [],
        )

    ask()


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
                if status != "200":
                    name = answer["$ref"].rpartition("/")[2]
                    described = document["components"]["responses"][name]
                    assert list(described["content"]) == ["application/problem+json"]
