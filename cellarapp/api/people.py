"""/api/people: the owner adds people and changes what they may do."""

from typing import Any

from flask import Response, json

from cellarapp.accounts.people import Given, add, change, everybody
from cellarapp.api.account_shapes import PeopleAnswer, PersonShape
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.guard import now, principal
from cellarapp.api.parsing import Asked
from cellarapp.api.signing_in import Name, NewPassphrase, Pin
from cellarapp.domain.roles import ROLES
from cellarapp.ledger.fields import Choice, YesNo
from cellarapp.storage.people import StoredPerson

blueprint = Blueprint("people", __name__, description="Who records")


class ChangePerson(Asked):
    """What is to be changed of somebody."""

    role = Choice(ROLES)
    passphrase = NewPassphrase()
    pin = Pin()
    retired = YesNo()


class NewPerson(Asked):
    """Somebody new."""

    name = Name(required=True)
    role = Choice(ROLES, required=True)
    passphrase = NewPassphrase()
    pin = Pin()


@blueprint.at("GET", "/api/people")
@blueprint.answers(PeopleAnswer, 401, 403, 503)
def get_people() -> Response:
    """Everybody, those who have retired too."""
    return answer(json.dumps({"people": [_told(one) for one in everybody()]}))


@blueprint.at("POST", "/api/people")
@blueprint.reads_body(NewPerson, "A name is given once and never changed.")
@blueprint.answers(PersonShape, 400, 401, 403, 409, 411, 413, 415, 422, 503)
def post_person(asked: dict[str, Any]) -> Response:
    """Add somebody."""
    name, role = asked.pop("name"), asked.pop("role")
    return answer(json.dumps(_told(add(principal(), name, role, Given(**asked), now()))))


@blueprint.at("POST", "/api/people/<id:person_id>")
@blueprint.reads_body(ChangePerson, "What is left out stays as it is.")
@blueprint.answers(PersonShape, 400, 401, 403, 404, 409, 411, 413, 415, 422, 503)
def post_change(asked: dict[str, Any], person_id: str) -> Response:
    """Change what somebody may do or proves themselves with; let them retire or come back."""
    return answer(json.dumps(_told(change(principal(), person_id, Given(**asked), now()))))


def _told(one: StoredPerson) -> dict[str, Any]:
    has = {"passphrase": one.passphrase, "pin": one.pin}
    return {
        "id": one.id,
        "name": one.name,
        "role": one.role,
        "has": [what for what, kept in has.items() if kept is not None],
        "created_at": one.created_at,
        "retired_at": one.retired_at,
    }
