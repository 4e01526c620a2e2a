"""A line in the log for each request, where the log is written for machines.

It never holds what may be secret or private: no body, no header, and of the address only which
kind it is, since a link may carry a secret in its path.
"""

import logging
from time import perf_counter

from flask import Flask, Response, g, request

from cellarapp.logs import FACTS

logger = logging.getLogger(__name__)


def register_request_log(app: Flask) -> None:
    """Write a line for each request that this application answers."""
    app.before_request(_begin)
    app.after_request(_write)


def _begin() -> None:
    g.began_s = perf_counter()


def _write(response: Response) -> Response:
    facts = {
        "method": request.method,
        "route": request.url_rule.rule if request.url_rule else None,
        "status": response.status_code,
        "ms": round((perf_counter() - g.began_s) * 1000, 1),
        "bytes_in": request.content_length or 0,
        "bytes_out": response.content_length or 0,
    }
    logger.info("request", extra={FACTS: facts})
    return response
