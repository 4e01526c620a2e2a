"""How a rule shows what it did: the result, each step with its formula, cautions and figures.

A rule opens a Working, takes its figures and settings through it, so that none is used without
being listed, and closes it with the result.
"""

from collections.abc import Callable
from typing import Any, TypedDict

from cellarapp.domain.cautions import CAUTIONS
from cellarapp.domain.figures import Settings, figure, setting, setting_list
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.rounding import half_up


class Step(TypedDict):
    """One step: a sentence with the formula in symbols, and what came of it."""

    says: str
    value: float
    unit: str


class Worked(TypedDict):
    """A rule's answer. Names in `result` end in their units; `cautions` and `figures` are ids."""

    result: dict[str, Any]
    steps: list[Step]
    cautions: list[str]
    figures: list[str]


Rule = Callable[[Inputs, Settings | None], Worked]
"""A rule that a screen shows: what it is asked by field, and the brewery's settings."""


class Working:
    """What a rule has used and done so far, in order."""

    def __init__(self, settings: Settings | None = None) -> None:
        self.settings = settings
        self.steps: list[Step] = []
        self.cautions: list[str] = []
        self.figures: list[str] = []

    def figure(self, name: str) -> Any:
        """A published figure or a table, listed as used."""
        self._list(self.figures, name)
        return figure(name)

    def setting(self, name: str) -> float:
        """The brewery's own value or the default, listed as used. Raises: OutOfRange."""
        self._list(self.figures, name)
        return setting(name, self.settings)

    def setting_list(self, name: str) -> list[float]:
        """The same of a list. Raises: OutOfRange."""
        self._list(self.figures, name)
        return setting_list(name, self.settings)

    def step(self, says: str, value: float, unit: str, digits: int) -> float:
        """Shows a step, rounded to so many digits, and hands the value on unrounded."""
        self.steps.append({"says": says, "value": half_up(value, digits), "unit": unit})
        return value

    def caution(self, name: str) -> None:
        """Adds a caution once. Raises: KeyError for one that cautions.json lacks."""
        CAUTIONS[name]
        self._list(self.cautions, name)

    def done(self, result: dict[str, Any]) -> Worked:
        """The rule's answer; the figures in `result` are rounded by the rule."""
        return {
            "result": result,
            "steps": self.steps,
            "cautions": self.cautions,
            "figures": self.figures,
        }

    @staticmethod
    def _list(names: list[str], name: str) -> None:
        if name not in names:
            names.append(name)
