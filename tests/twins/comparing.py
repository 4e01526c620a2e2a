"""The comparison itself, and what it asks for certain before anything is drawn."""

import json
from pathlib import Path
from typing import Any

from cellarapp.domain.calculations import CALCULATIONS

from ..domain.histories import canonical
from ..vectors.reading import arguments, cases
from . import reference
from .trade_answers import for_the_wire
from .twin import Twin

TELLING = json.loads(Path(__file__).with_name("telling.json").read_text(encoding="utf-8"))
"""For rules whose vectors let a planted fault pass: arguments that tell it, by the rule."""


def assert_alike(twin: Twin, rule: str, args: Any) -> None:
    """Both say the same of these arguments: of calculations all but whether 12 is 12.0."""
    if rule in CALCULATIONS:
        assert twin.ask(rule, *for_the_wire(list(args))) == reference.answer(rule, *args)
    else:
        assert canonical(twin.ask(rule, *args)) == canonical(reference.answer(rule, *args))


def assert_alike_where_known(twin: Twin, rule: str) -> None:
    """Both say the same of what the vectors ask, and of what tells a fault that they let pass."""
    for case in cases():
        if case.twin == rule:
            for args in arguments(case):
                assert_alike(twin, rule, args)
    for args in TELLING.get(rule, []):
        assert_alike(twin, rule, args)
