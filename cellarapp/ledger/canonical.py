"""JSON in its one canonical form, and the hash that says whether two entries are the same."""

import hashlib
import json

DOCUMENT = json.JSONEncoder(
    sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False
)
SENT = json.JSONEncoder(sort_keys=True, separators=(",", ":"), ensure_ascii=True)


def document(value: object) -> str:
    """A row's document or an entry's facts, as stored and compared: keys sorted, no blanks."""
    return DOCUMENT.encode(value)


def as_sent(element: object) -> str:
    """An element of a push, whatever it holds: ASCII only, so that any database can keep it.

    Raises: RecursionError when it is nested too deeply to be written.
    """
    return SENT.encode(element)


def content_hash(sent: str) -> str:
    """SHA-256 of an element in canonical form, hexadecimal."""
    return hashlib.sha256(sent.encode("ascii")).hexdigest()
