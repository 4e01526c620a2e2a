"""What is wrong with an entry, in words that its author can act on."""

import logging
from dataclasses import dataclass, field
from typing import NamedTuple
from uuid import uuid4

logger = logging.getLogger(__name__)


class FieldError(NamedTuple):
    """One thing to put right. `pointer` is a JSON Pointer (RFC 6901) within the entry."""

    pointer: str
    detail: str


@dataclass(frozen=True, slots=True)
class Problem:
    """Why an entry was not taken in. What `slug` means stands in api/problem_table.py."""

    slug: str
    detail: str
    errors: list[FieldError] = field(default_factory=list)
    incident: str | None = None
    """Names the lines in the server's log, when the fault was ours."""


def incident(fault: Exception) -> Problem:
    """The problem that a fault of ours is to its author; the log holds the rest under its name."""
    name = str(uuid4())
    logger.error("incident %s", name, exc_info=fault)
    said = "The server could not handle this entry. It is kept and will be tried again."
    return Problem("own-fault", said, incident=name)


def pointer(*steps: str | int) -> str:
    """The JSON Pointer along these steps, as a URI fragment: "#/facts/volume_ml"."""
    escaped = (str(step).replace("~", "~0").replace("/", "~1") for step in steps)
    return "#" + "".join(f"/{step}" for step in escaped)


def field_errors(messages: object, *steps: str | int) -> list[FieldError]:
    """Marshmallow's tree of messages as a flat list, one error for each field."""
    if isinstance(messages, dict):
        found = []
        for key, below in messages.items():
            here = steps if key == "_schema" else (*steps, key)
            found += field_errors(below, *here)
        return found
    if isinstance(messages, list):
        return [FieldError(pointer(*steps), str(message)) for message in messages]
    return [FieldError(pointer(*steps), str(messages))]
