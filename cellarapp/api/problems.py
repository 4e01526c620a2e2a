"""Every error as problem details (RFC 9457), with the headers that belong to it."""

import logging
from collections.abc import Mapping
from http import HTTPStatus
from typing import Any

from flask import Flask, Response, json
from werkzeug.exceptions import HTTPException

from cellarapp.accounts.refusal import Refusal
from cellarapp.api.problem_table import TABLE
from cellarapp.domain.errors import DomainError
from cellarapp.ledger.problem import FieldError, Problem, incident, pointer
from cellarapp.storage.errors import StorageBusy, StorageDamaged, StorageError, StorageFull

MEDIA_TYPE = "application/problem+json"
BY_STATUS = {404: "not-found", 405: "method-not-allowed", 413: "too-large", 415: "unknown-encoding"}
RETRY_AFTER_S = {"busy": 2, "storage-trouble": 30, "disk-full": 30, "damaged": 30}
OF_STORAGE: dict[type[StorageError], str] = {
    StorageBusy: "busy",
    StorageFull: "disk-full",
    StorageDamaged: "damaged",
}

logger = logging.getLogger(__name__)


class ProblemError(Exception):
    """Ends a request with a problem. `facts` become members of their own."""

    def __init__(
        self,
        slug: str,
        detail: str,
        errors: list[FieldError] | None = None,
        facts: Mapping[str, Any] | None = None,
        *,
        retry_after_s: int | None = None,
    ) -> None:
        super().__init__(detail)
        self.problem = Problem(slug, detail, errors or [])
        self.facts = dict(facts or {})
        self.headers = {} if retry_after_s is None else {"Retry-After": str(retry_after_s)}


def details(problem: Problem) -> dict[str, Any]:
    """The members of a problem."""
    kind = TABLE[problem.slug]
    found: dict[str, Any] = {
        "type": f"/problems/{problem.slug}",
        "title": kind.title,
        "status": kind.status,
        "detail": problem.detail,
    }
    if problem.errors:
        found["errors"] = [error._asdict() for error in problem.errors]
    if problem.incident:
        found["incident"] = problem.incident
    return found


def register_handlers(app: Flask) -> None:
    """Make every error of this application a problem."""
    app.register_error_handler(HTTPException, _of_http)
    app.register_error_handler(ProblemError, _of_ours)
    app.register_error_handler(Refusal, _of_accounts)
    app.register_error_handler(DomainError, _of_domain)
    app.register_error_handler(StorageError, _of_storage)
    app.register_error_handler(Exception, _of_a_fault)


def _answer(members: dict[str, Any], headers: Mapping[str, str] | None = None) -> Response:
    body = json.dumps(members)
    response = Response(body, status=members["status"], content_type=MEDIA_TYPE)
    response.headers.update(headers or {})
    return response


def _of_ours(error: ProblemError) -> Response:
    return _answer(details(error.problem) | error.facts, error.headers)


def _of_accounts(error: Refusal) -> Response:
    detail = error.detail or TABLE[error.slug].advice
    errors = [FieldError(pointer(error.field), detail)] if error.field else []
    return _answer(details(Problem(error.slug, detail, errors)))


def _of_domain(error: DomainError) -> Response:
    return _answer(details(Problem(error.slug, TABLE[error.slug].advice)))


def _of_storage(error: StorageError) -> Response:
    slug = OF_STORAGE.get(type(error), "storage-trouble")
    logger.warning("%s: %r", slug, error.__cause__ or error)
    headers = {"Retry-After": str(RETRY_AFTER_S[slug])}
    return _answer(details(Problem(slug, TABLE[slug].advice)), headers)


def _of_a_fault(error: Exception) -> Response:
    return _answer(details(incident(error)))


def _of_http(error: HTTPException) -> Response | HTTPException:
    status = error.code or 500
    if status < 400:
        return error
    kept = {k: v for k, v in error.get_headers() if k.lower() not in ("content-type",)}
    if status in BY_STATUS:
        slug = BY_STATUS[status]
        return _answer(details(Problem(slug, TABLE[slug].advice)), kept)
    members = {"type": "about:blank", "title": HTTPStatus(status).phrase, "status": status}
    return _answer(members | {"detail": error.description or ""}, kept)
