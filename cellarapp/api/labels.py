"""GET /api/labels/…: container plates and fill labels as PDF."""

from collections.abc import Callable
from typing import Any, ClassVar, TypeVar

from flask import Response
from marshmallow.fields import Raw
from typing_extensions import override

from cellarapp.api.blueprint import Blueprint
from cellarapp.api.parsing import Asked, AskedWhole
from cellarapp.api.problems import ProblemError
from cellarapp.documents.labels import (
    STOCKS,
    TYPES,
    CannotLabel,
    collect_fill_labels,
    collect_plates,
    fill_labels,
    plates,
)
from cellarapp.domain.errors import NotANumber
from cellarapp.domain.numbers import normal_number
from cellarapp.ledger.fields import Choice, Spoken
from cellarapp.ledger.on_record import on_record
from cellarapp.ledger.settings import brewery_settings

MOST_LABELS = 300

Label = TypeVar("Label")

blueprint = Blueprint("labels", __name__, description="Container plates and fill labels")


class NumbersAsked(Spoken, Raw):
    """Containers' numbers, with commas between them."""

    messages: ClassVar = {
        "invalid": "{name} must be one to {most} containers' numbers with commas between them."
    }

    def __init__(self, **more: Any) -> None:
        described = {"type": "string", "description": "Containers' numbers, as 117,118,K3"}
        super().__init__(described=described, **more)

    @override
    def said(self) -> dict[str, Any]:
        return {"name": self.name, "most": MOST_LABELS}

    @override
    def read(self, value: Any) -> list[str]:
        try:
            numbers = [normal_number(one) for one in str(value).split(",")]
        except NotANumber as fault:
            raise self.make_error("invalid") from fault
        if len(numbers) > MOST_LABELS:
            raise self.make_error("invalid")
        return list(dict.fromkeys(numbers))


class LabelQuery(Asked):
    """Which labels, and on what."""

    numbers = NumbersAsked(required=True)
    stock = Choice(STOCKS, load_default="a4")
    used = AskedWhole(0, 9, load_default=0)


@blueprint.at("GET", "/api/labels/plates.pdf")
@blueprint.reads_query(LabelQuery)
@blueprint.gives_file("application/pdf", "One plate a container.", 401, 422, 503)
def get_plates(asked: dict[str, Any]) -> Response:
    """The plates that containers carry for life: number, brewery, and a code to scan."""
    found = _collected(lambda: collect_plates(asked["numbers"], on_record(*TYPES)))
    return _pdf("plates", plates(STOCKS[asked["stock"]], found, used=_used(asked)))


@blueprint.at("GET", "/api/labels/fills.pdf")
@blueprint.reads_query(LabelQuery)
@blueprint.gives_file("application/pdf", "One label a container.", 401, 422, 503)
def get_fill_labels(asked: dict[str, Any]) -> Response:
    """The labels of what is in containers now: beer, strength, date, lot, allergens."""
    settings = brewery_settings()
    found = _collected(lambda: collect_fill_labels(asked["numbers"], on_record(*TYPES), settings))
    return _pdf("labels", fill_labels(STOCKS[asked["stock"]], found, used=_used(asked)))


def _collected(collect: Callable[[], list[Label]]) -> list[Label]:
    try:
        return collect()
    except CannotLabel as fault:
        raise ProblemError("cannot-label", str(fault)) from fault


def _used(asked: dict[str, Any]) -> int:
    """A roll has no places that are used up."""
    return int(asked["used"]) % STOCKS[asked["stock"]].a_page


def _pdf(name: str, data: bytes) -> Response:
    response = Response(data, content_type="application/pdf")
    response.headers["Content-Disposition"] = f'inline; filename="{name}.pdf"'
    return response
