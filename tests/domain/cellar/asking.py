"""Asks a calculation by its name, as the API and the screens do."""

from typing import Any

from hypothesis import settings

from cellarapp.domain.calculations import calculate
from cellarapp.domain.working import Worked

unhurried = settings(deadline=None)
"""The machine may be busy with something else."""


def ask(name: str, own: dict[str, Any] | None = None, **inputs: Any) -> Worked:
    return calculate(name, inputs, own)


def result(name: str, own: dict[str, Any] | None = None, **inputs: Any) -> dict[str, Any]:
    return ask(name, own, **inputs)["result"]
