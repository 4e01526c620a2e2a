"""Reads the body of a request: JSON, plain or compressed, within bounds."""

import json
import zlib
from typing import Any

from flask import Request

from cellarapp.api.problems import ProblemError

MOST_BYTES = 1024 * 1024
"""Of a body, before and after decompression."""
FILE_TYPE = "application/octet-stream"
GZIP = 16 + zlib.MAX_WBITS


def read_json(request: Request) -> Any:
    """What the body says. Raises: ProblemError."""
    if not request.is_json:
        raise ProblemError("unknown-encoding", "Send the body as application/json.")
    if request.content_length is None and "Transfer-Encoding" in request.headers:
        raise ProblemError("no-length", "Say in Content-Length how long the body is.")
    body = request.get_data(cache=False)
    encoding = request.headers.get("Content-Encoding", "identity").strip().lower()
    if encoding in ("gzip", "x-gzip"):
        body = _decompressed(body)
    elif encoding not in ("identity", ""):
        raise ProblemError(
            "unknown-encoding", "Send the body plain or compressed with gzip, and in no other way."
        )
    try:
        return json.loads(body.decode("utf-8"))
    except UnicodeDecodeError as fault:
        raise ProblemError("not-json", "The body is not text in UTF-8.") from fault
    except RecursionError as fault:
        raise ProblemError("not-json", "The body is nested too deeply to be read.") from fault
    except json.JSONDecodeError as fault:
        where = f"line {fault.lineno}, column {fault.colno}"
        raise ProblemError("not-json", f"The body is not JSON from {where} on.") from fault
    except ValueError as fault:
        raise ProblemError("not-json", "The body holds a number that is too long.") from fault


def read_file(request: Request) -> bytes:
    """A file as it is. Raises: ProblemError."""
    if request.mimetype != FILE_TYPE:
        raise ProblemError("unknown-encoding", f"Send the file as {FILE_TYPE}.")
    if request.content_length is None:
        raise ProblemError("no-length", "Say in Content-Length how long the file is.")
    return request.get_data(cache=False)


def _decompressed(body: bytes) -> bytes:
    reader = zlib.decompressobj(GZIP)
    try:
        text = reader.decompress(body, MOST_BYTES + 1)
    except zlib.error as fault:
        raise ProblemError("not-json", "The body is not gzip, though it says so.") from fault
    if len(text) > MOST_BYTES:
        raise ProblemError("too-large", f"The body has more than {MOST_BYTES} bytes unpacked.")
    if not reader.eof:
        raise ProblemError("not-json", "The compressed body was cut off on its way.")
    return text
