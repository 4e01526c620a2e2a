"""Puts the HTTP side together and describes it in OpenAPI."""

from http import HTTPStatus
from importlib.metadata import version

from apispec import APISpec
from flask import Flask
from flask_smorest import Api  # type: ignore[import-untyped]

from cellarapp.api import (
    audit,
    calculations,
    calendar,
    client,
    containers,
    customers,
    devices,
    epcis,
    everything,
    health,
    held,
    labels,
    people,
    problem_pages,
    pull,
    push,
    sheets,
    signing_in,
    snapshot,
)
from cellarapp.api.bodies import MOST_BYTES
from cellarapp.api.guard import register_guard
from cellarapp.api.headers import register_headers
from cellarapp.api.limits import Limits
from cellarapp.api.paths import HashPath, IdPath
from cellarapp.api.problems import MEDIA_TYPE, register_handlers
from cellarapp.api.request_log import register_request_log
from cellarapp.api.shapes import ProblemDetails
from cellarapp.ledger.forms import FORMS
from cellarapp.storage.ready import Looking

RESOURCES = (
    push,
    pull,
    snapshot,
    containers,
    customers,
    calculations,
    signing_in,
    people,
    devices,
    held,
    audit,
    health,
    sheets,
    everything,
    epcis,
    labels,
    calendar,
)


class Service(Api):  # type: ignore[misc]
    """flask-smorest with problem details in place of its own errors."""

    ERROR_SCHEMA = ProblemDetails

    def _register_error_handlers(self) -> None:
        """Ours are registered for the whole application."""

    def _register_responses(self) -> None:
        for status in HTTPStatus:
            if status >= 400:
                self._describe(status.name, status.phrase)
        self._describe("DEFAULT_ERROR", "A problem")

    def _describe(self, name: str, description: str) -> None:
        described = {
            "description": description,
            "content": {MEDIA_TYPE: {"schema": ProblemDetails}},
        }
        self.spec.components.response(name, described, lazy=True)


def register(app: Flask) -> None:
    """Register everything that answers requests."""
    app.config.update(
        API_TITLE="cellarapp",
        API_VERSION=version("cellarapp"),
        OPENAPI_VERSION="3.1.0",
        OPENAPI_URL_PREFIX="/api",
        MAX_CONTENT_LENGTH=MOST_BYTES,
    )
    app.url_map.converters["client"] = client.ClientPath
    app.url_map.converters["number"] = containers.NumberPath
    app.url_map.converters["id"] = IdPath
    app.url_map.converters["hash"] = HashPath
    app.extensions["cellarapp-limits"] = Limits()
    app.extensions["cellarapp-looking"] = Looking()
    app.extensions["cellarapp-pages"] = snapshot.PreparedPages()
    register_handlers(app)
    register_headers(app)
    if app.config["CELLAR_LOG"] == "json":
        register_request_log(app)
    register_guard(app)
    service = Service(app)
    service.register_converter(containers.NumberPath, _number_described)
    service.register_converter(IdPath, _id_described)
    service.register_converter(HashPath, _hash_described)
    for resource in RESOURCES:
        service.register_blueprint(resource.blueprint)
    app.register_blueprint(problem_pages.blueprint)
    app.register_blueprint(client.blueprint)
    _describe_entries(service.spec)


def _number_described(converter: containers.NumberPath) -> dict[str, str]:
    return {"type": "string", "pattern": converter.typed}


def _id_described(_converter: IdPath) -> dict[str, str]:
    return {"type": "string", "format": "uuid"}


def _hash_described(converter: HashPath) -> dict[str, str]:
    return {"type": "string", "pattern": f"^{converter.regex}$"}


def _describe_entries(spec: APISpec) -> None:
    """A push may carry anything; these are the entries that it means."""
    for kind, form in FORMS.items():
        spec.components.schema(f"EntryOf_{kind}", schema=form)
