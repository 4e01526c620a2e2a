"""Whatever fails, every entry that a person was told is saved stands exactly once everywhere.

SIMULATION_STEPS asks for more steps than the ten thousand of every run.
"""

import logging
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest
from freezegun import freeze_time
from hypothesis import HealthCheck, Phase, settings
from hypothesis.errors import FlakyFailure, FlakyStrategyDefinition
from hypothesis.stateful import run_state_machine_as_test

from .handsets import ROOT, Handsets, bundle
from .spell import FAULTS, Spell

STEPS = int(os.environ.get("SIMULATION_STEPS", "10000"))
MOST_STEPS_OF_A_SPELL = 250
STEPS_OF_A_SPELL = 190
"""Some are shorter."""


@contextmanager
def phones(script: Path) -> Iterator[None]:
    """Phones that run this script, at a time that goes by when it is told to."""
    logging.disable(logging.INFO)  # a server that starts says so, hundreds of times here
    Spell.handsets = Handsets(script)
    Spell.steps = 0
    Spell.seen.clear()
    try:
        with freeze_time("2026-11-25T12:00:00Z", ignore=["hypothesis"]) as clock:
            Spell.clock = clock
            yield
    finally:
        Spell.handsets.close()
        logging.disable(logging.NOTSET)


def spells(steps: int) -> None:
    """Draw spells until one fails, which is told as it is: making it small would take hours."""
    patient = settings(
        max_examples=steps // STEPS_OF_A_SPELL,
        stateful_step_count=MOST_STEPS_OF_A_SPELL,
        phases=[Phase.generate],
        database=None,
        deadline=None,
        report_multiple_bugs=False,
        suppress_health_check=list(HealthCheck),
    )
    while Spell.steps < steps:
        # Real phones take turns as the machine lets them, so that the same draws may lead to
        # another state; then it goes on from there. A phone that is wrong fails all the same.
        with suppress(FlakyStrategyDefinition):
            run_state_machine_as_test(Spell, settings=patient)


def unseen() -> list[str]:
    """The kinds of fault that have not struck yet."""
    return [fault for fault in FAULTS if Spell.seen[fault] == 0]


def test_every_entry_that_was_called_saved_stands_once_everywhere(tmp_path: Path) -> None:
    """Nothing is lost, nothing doubled, and phones and server agree in the end."""
    with phones(bundle(tmp_path)):
        spells(STEPS)
        while unseen() and Spell.steps < 5 * STEPS:  # some kinds are rare
            spells(Spell.steps + 1000)
    assert unseen() == []


@pytest.mark.parametrize(
    ("file", "right", "wrong"),
    [
        # What a restored ledger lacks is not offered again.
        ("store/first-load.ts", "const lost = ", "const lost = false && "),
        # Somebody is told before it is kept.
        ("store/connection.ts", "    await done;\n    return result;", "    return result;"),
        # A sleep is taken for a setting of the clock.
        ("store/clock.ts", "(ms: number): boolean =>", "(ms: number): boolean => ms < 0 &&"),
    ],
)
def test_a_fault_in_the_phone_is_found(tmp_path: Path, file: str, right: str, wrong: str) -> None:
    """The search above can fail."""
    for part in ("static/src", "cellarapp/domain", "tests/front", "tests/faults"):
        shutil.copytree(ROOT / part, tmp_path / part)
    faulty = tmp_path / "static/src" / file
    text = faulty.read_text()
    assert right in text, "the planted fault does not fit the phone any more: plant another"
    faulty.write_text(text.replace(right, wrong))
    with phones(bundle(tmp_path, tmp_path)), pytest.raises((AssertionError, FlakyFailure)):
        spells(5000)
