"""Being let in, switching people, giving the passphrase once more, signing out."""

from collections.abc import Mapping
from typing import Any

from flask import Response, json

from cellarapp.accounts.pairing import Asking, LetIn, begin, pair
from cellarapp.accounts.principal import Principal
from cellarapp.accounts.secret import LEAST_CHARACTERS
from cellarapp.accounts.signing_in import give_passphrase, sign_in, sign_out, switch
from cellarapp.api.account_shapes import MeAnswer
from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.cookie import cookie_sent, give_cookie, take_cookie
from cellarapp.api.guard import now, only_where_secure, principal
from cellarapp.api.limits import OF_ONE_NAME, ON_ONE_DEVICE, count_at_the_door, count_try
from cellarapp.api.parsing import Asked
from cellarapp.ledger.fields import Id, Pattern, Secret, Words

MOST_PASSPHRASE = 200

blueprint = Blueprint("signing-in", __name__, description="Who is let in")


class Token(Secret):
    """What a link carries."""

    def __init__(self, **more: Any) -> None:
        super().__init__(1, 100, **more)


class Passphrase(Secret):
    """One that is to be right already. How a new one has to be is NewPassphrase."""

    def __init__(self, **more: Any) -> None:
        super().__init__(1, MOST_PASSPHRASE, **more)


class NewPassphrase(Secret):
    """A passphrase that somebody chooses."""

    def __init__(self, **more: Any) -> None:
        super().__init__(LEAST_CHARACTERS, MOST_PASSPHRASE, **more)


class Pin(Pattern):
    """What somebody types to take a shared device in hand."""

    def __init__(self, **more: Any) -> None:
        super().__init__("[0-9]{4,8}", "four to eight digits", load_only=True, **more)


class Name(Words):
    """Somebody's name, or a device's."""

    def __init__(self, **more: Any) -> None:
        super().__init__(60, least=1, **more)


class LetMeIn(Asked):
    """The device that asks."""

    device = Id(required=True)
    device_name = Name(required=True)


class Begin(LetMeIn):
    """An owner."""

    token = Token(required=True)
    name = Name(required=True)
    passphrase = NewPassphrase(required=True)


class Pair(LetMeIn):
    """A link."""

    token = Token(required=True)


class SignIn(LetMeIn):
    """Who it is."""

    name = Name(required=True)
    passphrase = Passphrase(required=True)


class Here(Asked):
    """Who takes the device in hand."""

    name = Name(required=True)
    pin = Pin(required=True)


class PassphraseCheck(Asked):
    """The passphrase of whoever has the device in hand."""

    passphrase = Passphrase(required=True)


class Nothing(Asked):
    """An empty object."""


@blueprint.at("POST", "/api/begin")
@blueprint.reads_body(Begin, "The token of the link that the server printed.")
@blueprint.answers(MeAnswer, 400, 403, 409, 410, 411, 413, 415, 422, 429, 503)
def post_begin(asked: dict[str, Any]) -> Response:
    """Make an owner, or give one a new passphrase, and let this device in."""
    _at_the_door()
    return _let_in(begin(asked["token"], asked["name"], asked["passphrase"], _asking(asked), now()))


@blueprint.at("POST", "/api/pair")
@blueprint.reads_body(Pair, "The token of a link that an owner made.")
@blueprint.answers(MeAnswer, 400, 403, 410, 411, 413, 415, 422, 429, 503)
def post_pair(asked: dict[str, Any]) -> Response:
    """Let this device in. The link works once, and for ten minutes."""
    _at_the_door()
    return _let_in(pair(asked["token"], _asking(asked), now()))


@blueprint.at("POST", "/api/sign-in")
@blueprint.reads_body(SignIn, "Name and passphrase.")
@blueprint.answers(MeAnswer, 400, 401, 403, 411, 413, 415, 422, 429, 503)
def post_sign_in(asked: dict[str, Any]) -> Response:
    """Let this device in again."""
    _at_the_door()
    count_try(OF_ONE_NAME, "name", asked["name"].casefold())
    return _let_in(sign_in(asked["name"], asked["passphrase"], _asking(asked), now()))


@blueprint.at("GET", "/api/me")
@blueprint.answers(MeAnswer, 401, 503)
def get_me() -> Response:
    """This device, who has it in hand, and who has proved themselves on it."""
    return _me(principal())


@blueprint.at("POST", "/api/here")
@blueprint.reads_body(Here, "Name and PIN.")
@blueprint.answers(MeAnswer, 400, 401, 403, 411, 413, 415, 422, 429, 503)
def post_here(asked: dict[str, Any]) -> Response:
    """Somebody takes this device in hand."""
    count_try(ON_ONE_DEVICE, "pin", principal().device.id)
    return _me(switch(principal(), asked["name"], asked["pin"], now()))


@blueprint.at("POST", "/api/passphrase-check")
@blueprint.reads_body(PassphraseCheck, "The passphrase of whoever has the device in hand.")
@blueprint.answers(MeAnswer, 400, 401, 403, 411, 413, 415, 422, 429, 503)
def post_passphrase_check(asked: dict[str, Any]) -> Response:
    """Prove it once more; the owner's doings are open for a quarter of an hour."""
    count_try(ON_ONE_DEVICE, "passphrase", principal().device.id)
    return _me(give_passphrase(principal(), asked["passphrase"], now()))


@blueprint.at("POST", "/api/sign-out")
@blueprint.reads_body(Nothing, "Nothing.")
@blueprint.answers_nothing(400, 401, 403, 411, 413, 415, 422, 503)
def post_sign_out(_asked: dict[str, Any]) -> Response:
    """Forget the cookie, here and there."""
    sign_out(principal(), now())
    response = Response(status=204)
    take_cookie(response)
    return response


def _at_the_door() -> None:
    only_where_secure()
    count_at_the_door()


def _asking(asked: Mapping[str, Any]) -> Asking:
    return Asking(asked["device"], asked["device_name"], cookie_sent())


def _let_in(let_in: LetIn) -> Response:
    response = _me(let_in.principal)
    give_cookie(response, let_in.secret)
    return response


def _me(who: Principal) -> Response:
    return answer(json.dumps(who.me()))
