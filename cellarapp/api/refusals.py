"""What a rule refuses, as a problem: which field it is about, and what it may be, in words."""

import re

from cellarapp.api.problem_table import TABLE
from cellarapp.api.problems import ProblemError
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.ledger.problem import FieldError, pointer

STEP = re.compile(r"[^.\[\]]+")
"""A name or a place in a list: "wishes[2].volume_ml" has three."""


def refused(refusal: DomainError, inputs: Inputs, settings: Settings) -> ProblemError:
    """The problem that a rule's refusal is to whoever asked."""
    field = refusal.facts.get("field")
    if not isinstance(field, str):
        return ProblemError(refusal.slug, TABLE[refusal.slug].advice)
    said = f"{field} {_must(refusal)}"
    if field in settings and field not in inputs:
        # Nothing in the request is wrong: the brewery's own value of a figure is.
        return ProblemError(refusal.slug, said, [FieldError(pointer(), said)])
    steps = STEP.findall(field)
    return ProblemError(refusal.slug, said, [FieldError(pointer("inputs", *steps), said)])


def _must(refusal: DomainError) -> str:
    """What the field has to be, and why."""
    facts, why = refusal.facts, refusal.facts.get("why") or ""
    found = "is missing; it must be" if facts.get("given") is None else "must be"
    choices = facts.get("choices")
    if isinstance(choices, list):
        known = ", ".join(_plain(one) for one in choices) or "nothing at all"
        return f"{found} one of: {known}. {why}".strip()
    return f"{found} {_range(facts)}. {why}".strip()


def _range(facts: dict[str, object]) -> str:
    low, high, unit = facts.get("low"), facts.get("high"), facts.get("unit")
    within = "a value"
    if low is not None and high is not None:
        within = f"from {_plain(low)} to {_plain(high)}"
    elif low is not None:
        within = f"{_plain(low)} or more"
    elif high is not None:
        within = f"at most {_plain(high)}"
    return f"{within}, {unit}" if unit else within


def _plain(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"{value:.10g}" if isinstance(value, float) else str(value)
