"""What an entry may hold: the envelope that all share, and the facts of each kind.

Anything else is malformed. The limits here only catch what cannot be meant; what is odd but
possible is taken in and becomes a query.
"""

from typing import Any

from marshmallow.fields import Dict, Field, Nested

from cellarapp.domain.figures import FIGURES
from cellarapp.domain.wordings import WORDINGS
from cellarapp.ledger.fields import Choice, Id, Moment, Number, Whole, Words
from cellarapp.ledger.forms.container import HAPPENING
from cellarapp.ledger.forms.correction import CORRECTION
from cellarapp.ledger.forms.form import NOT_READABLE, Facts, Form, place
from cellarapp.ledger.forms.record import RECORD
from cellarapp.ledger.forms.setting import SettingForm

LARGEST_SEQ = 9_999_999_999
"""Ten digits, as the order key has room for."""

NO_FACTS: dict[str, Any] = {
    "required": "facts is missing; it may be an empty object.",
    "null": "facts must be a JSON object.",
    "invalid": "facts must be a JSON object.",
}

FACTS: Facts = HAPPENING | CORRECTION | RECORD


def _entry_form(kind: str) -> Form:
    """The form of a whole entry of one kind."""
    facts = Form.from_dict(dict(FACTS[kind]), name=f"FactsOf_{kind}")
    return _form(
        f"EntryOf_{kind}",
        of=SettingForm if kind == "setting" else Form,
        kind=Choice([kind], required=True),
        subject=_subject(kind),
        facts=Nested(facts, required=True, error_messages=NO_FACTS),
    )


def _subject(kind: str) -> Field[Any]:
    """A container goes by its number, a setting by its figure or text, the rest by an id.

    The brewery itself is the one thing of its kind.
    """
    if kind == "brewery":
        return Choice([kind], required=True)
    if kind in HAPPENING or kind in CORRECTION:
        return Number(required=True)
    settable = [*FIGURES, *WORDINGS]
    return Choice(settable, required=True) if kind == "setting" else place(required=True)


def _form(name: str, of: type[Form] = Form, **parts: Field[Any]) -> Form:
    envelope = {
        "id": Id(required=True),
        "device": Id(required=True),
        "seq": Whole(1, LARGEST_SEQ, required=True),
        "happened_at": Moment(required=True),
        "person": Words(60, required=True),
        "rules": Whole(0, 2**31 - 1, required=True),
    }
    form = of.from_dict(envelope | parts, name=name)()
    assert isinstance(form, Form)
    return form


FORMS: dict[str, Form] = {kind: _entry_form(kind) for kind in FACTS}
"""The form of each kind of entry."""

LATER_FORM = _form(
    "EntryOfLaterKind",
    kind=Words(40, least=1, required=True),
    subject=Words(60, least=1, required=True),
    facts=Dict(required=True, error_messages=NO_FACTS),
)
"""The form of an entry whose kind a later release may know."""

__all__ = ["FACTS", "FORMS", "LATER_FORM", "NOT_READABLE"]
