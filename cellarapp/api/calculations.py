"""POST /api/calculations/<name>: what the screens work out, for other programs too.

The same rules with the brewery's own settings; an answer carries its steps and its sources.
"""

import json
from typing import Any, ClassVar

from flask import Response
from marshmallow import Schema
from marshmallow.fields import Boolean, Dict, Float, List, Nested, Raw, String
from typing_extensions import override

from cellarapp.api.answers import answer
from cellarapp.api.blueprint import Blueprint
from cellarapp.api.parsing import Asked
from cellarapp.api.problems import ProblemError
from cellarapp.api.refusals import refused
from cellarapp.domain.calculations import CALCULATIONS, calculate
from cellarapp.domain.cautions import CAUTIONS
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import FIGURES, Settings
from cellarapp.ledger.fields import Spoken
from cellarapp.ledger.settings import brewery_settings

blueprint = Blueprint("calculations", __name__, description="The computation of the trade")


class InputFields(Spoken, Dict):
    """What a rule is asked, by field. The rule itself looks at each."""

    messages: ClassVar = {"invalid": "{name} must be an object of fields by name."}

    @override
    def read(self, value: Any) -> dict[str, Any]:
        if not isinstance(value, dict):
            raise self.make_error("invalid")
        return value


class Calculate(Asked):
    """One question."""

    inputs = InputFields(required=True)


class Offered(Schema):
    """One calculation."""

    name = String(required=True)
    title = String(required=True)


class OfferedAnswer(Schema):
    """Every calculation."""

    calculations = List(Nested(Offered), required=True)


class StepShape(Schema):
    """One step: the formula in symbols, and what came of it."""

    says = String(required=True)
    value = Float(required=True)
    unit = String(required=True)


class CautionShape(Schema):
    """A warning, and where what it says is published."""

    id = String(required=True)
    words = String(required=True)
    source = String(required=True, allow_none=True)


class SourceShape(Schema):
    """A figure that was used. `own`: its value is the brewery's, in place of the default."""

    id = String(required=True)
    name = String(required=True)
    value = Raw(required=True)
    unit = String(required=True)
    kind = String(required=True, metadata={"enum": ["published", "common practice", "from memory"]})
    source = String(required=True, allow_none=True)
    read_on = String(required=True, allow_none=True)
    remark = String(required=True)
    own = Boolean(required=True)


class CalculationAnswer(Schema):
    """A result, and all that stands behind it. Names in `result` end in their units."""

    result = Dict(required=True)
    steps = List(Nested(StepShape), required=True)
    cautions = List(Nested(CautionShape), required=True)
    sources = List(Nested(SourceShape), required=True)


@blueprint.at("GET", "/api/calculations")
@blueprint.answers(OfferedAnswer, 401, 503)
def get_calculations() -> Response:
    """The names of all calculations, with their titles."""
    offered = [{"name": name, "title": one.title} for name, one in CALCULATIONS.items()]
    return answer(json.dumps({"calculations": offered}))


@blueprint.at("POST", "/api/calculations/<string:name>")
@blueprint.reads_body(Calculate, "The fields that the calculation asks for.")
@blueprint.answers(CalculationAnswer, 400, 401, 403, 404, 411, 413, 415, 422, 503)
def post_calculation(asked: dict[str, Any], name: str) -> Response:
    """Work something out. Nothing is recorded."""
    if name not in CALCULATIONS:
        raise ProblemError("not-found", "There is no such calculation; GET /api/calculations.")
    settings = brewery_settings()
    try:
        worked = calculate(name, asked["inputs"], settings)
    except DomainError as refusal:
        raise refused(refusal, asked["inputs"], settings) from refusal
    told = {
        "result": worked["result"],
        "steps": worked["steps"],
        "cautions": [{"id": one, **CAUTIONS[one]} for one in worked["cautions"]],
        "sources": [_source(one, settings) for one in worked["figures"]],
    }
    return answer(json.dumps(told, allow_nan=False))


def _source(name: str, settings: Settings) -> dict[str, Any]:
    known = FIGURES[name]
    return {
        "id": name,
        "name": known["name"],
        "value": settings.get(name, known["value"]),
        "unit": known["unit"],
        "kind": known["kind"],
        "source": known["source"],
        "read_on": known["read_on"],
        "remark": known["remark"],
        "own": name in settings,
    }
