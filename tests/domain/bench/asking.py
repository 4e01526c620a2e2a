"""Asks a calculation by its name, as the API and the screens do."""

from typing import Any

from hypothesis import settings

from cellarapp.domain.calculations import calculate
from cellarapp.domain.working import Worked

FIRKIN = [{"volume_ml": 40910, "count": 1}]
"""40.91 L, to which the reference's worked figures are rounded."""

unhurried = settings(deadline=None)
"""The machine may be busy with something else."""


def ask(name: str, **inputs: Any) -> Worked:
    return calculate(name, inputs)


def result(name: str, **inputs: Any) -> dict[str, Any]:
    return ask(name, **inputs)["result"]
