"""Every calculation that is offered by name, to the API and to whoever lists them."""

from dataclasses import dataclass

from cellarapp.domain.bench.calculations import BENCH
from cellarapp.domain.cellar.calculations import CELLAR
from cellarapp.domain.errors import NotAmong
from cellarapp.domain.figures import Settings
from cellarapp.domain.fleet.calculations import FLEET
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Rule, Worked


@dataclass(frozen=True)
class Calculation:
    """A rule with the title under which it is offered."""

    title: str
    rule: Rule


CALCULATIONS = {
    name: Calculation(title, rule) for name, (title, rule) in (BENCH | CELLAR | FLEET).items()
}


def calculate(name: str, inputs: Inputs, settings: Settings | None = None) -> Worked:
    """The named calculation's answer. Raises: NotAmong for a name not offered, and the rule's."""
    known = CALCULATIONS.get(name)
    if known is None:
        raise NotAmong(
            field="calculation", given=name, choices=sorted(CALCULATIONS), why="None is so named."
        )
    return known.rule(inputs, settings)
