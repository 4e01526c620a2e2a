"""Reads the elements of a push, each by itself: one that is bad never touches its neighbours."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from marshmallow import ValidationError

from cellarapp.domain.entries import Entry
from cellarapp.ledger.canonical import as_sent, content_hash
from cellarapp.ledger.clock import take_effect, write_any
from cellarapp.ledger.forms import FORMS, LATER_FORM
from cellarapp.ledger.problem import FieldError, Problem, field_errors, incident
from cellarapp.ledger.verdicts import Batch


@dataclass(slots=True)
class Judged:
    """One element after reading: an entry that can be taken in, or a problem.

    With `hold`, the problem is not the author's and the element is kept raw.
    """

    id: str | None
    raw: str = ""
    hash: str = ""
    entry: Entry | None = None
    problem: Problem | None = None
    hold: bool = False


def judge(element: object, batch: Batch) -> Judged:
    """Read one element of a batch; the ledger is not looked at."""
    sent_id = element.get("id") if isinstance(element, dict) else None
    judged = Judged(sent_id if isinstance(sent_id, str) else None)
    try:
        judged.raw = as_sent(element)
    except RecursionError:
        judged.problem = _malformed([FieldError("#", "This is nested too deeply to be read.")])
        return judged
    judged.hash = content_hash(judged.raw)
    try:
        _read(judged, element, batch)
    except Exception as fault:  # noqa: BLE001 - a fault of ours must not cost an entry
        hold(judged, incident(fault))
    return judged


def _read(judged: Judged, element: object, batch: Batch) -> None:
    kind = element.get("kind") if isinstance(element, dict) else None
    form = FORMS.get(kind, LATER_FORM) if isinstance(kind, str) else LATER_FORM
    try:
        read: dict[str, Any] = form.load(element)  # type: ignore[arg-type]
    except ValidationError as fault:
        judged.problem = _malformed(field_errors(fault.messages))
        return
    if form is LATER_FORM:
        said = f'Entries of kind "{read["kind"]}" are not known to this release.'
        hold(judged, Problem("unknown-kind", said))
    else:
        judged.entry = _entry(read, batch)


def hold(judged: Judged, problem: Problem) -> None:
    """Keep an element raw, because its author can do nothing about the problem."""
    judged.entry = None
    judged.hold = True
    judged.problem = problem


def refuse(judged: Judged, errors: list[FieldError]) -> None:
    """Turn an entry that could be read into one that its author must put right."""
    judged.entry = None
    judged.problem = _malformed(errors)


def _malformed(errors: list[FieldError]) -> Problem:
    return Problem("malformed-entry", " ".join(error.detail for error in errors[:3]), errors)


def _entry(read: dict[str, Any], batch: Batch) -> Entry:
    happened_at: datetime = read["happened_at"]
    effect = take_effect(happened_at, offset=batch.offset, received_at=batch.received_at)
    return {
        "id": read["id"],
        "device": read["device"],
        "seq": read["seq"],
        "kind": read["kind"],
        "subject": read["subject"],
        "happened_at": write_any(happened_at),
        "effective_at": write_any(effect.effective_at),
        "person": read["person"],
        "facts": read["facts"],
        "rules": read["rules"],
        "clock": effect.clock,
        "received_at": write_any(batch.received_at),
    }
