"""A rule's working: nothing is used without being listed."""

import pytest

from cellarapp.domain.calculations import CALCULATIONS, calculate
from cellarapp.domain.errors import NotAmong
from cellarapp.domain.working import Working


def test_figures_are_listed_as_they_are_used() -> None:
    """Each once, in order, settings too."""
    work = Working({"resettles_most": 4})
    assert work.figure("alginate_interval_h") == 4
    assert work.setting("resettles_most") == 4
    assert work.figure("alginate_interval_h") == 4
    assert work.done({})["figures"] == ["alginate_interval_h", "resettles_most"]


def test_a_step_shows_rounded_and_hands_on_unrounded() -> None:
    work = Working()
    assert work.step("A third = 1 / 3", 1 / 3, "vol", 2) == 1 / 3
    assert work.done({})["steps"] == [{"says": "A third = 1 / 3", "value": 0.33, "unit": "vol"}]


def test_a_caution_is_said_once_and_must_be_known() -> None:
    work = Working()
    work.caution("pressure_high")
    work.caution("pressure_high")
    assert work.done({})["cautions"] == ["pressure_high"]
    with pytest.raises(KeyError):
        work.caution("no_such_caution")


def test_a_calculation_that_is_not_offered_is_refused() -> None:
    with pytest.raises(NotAmong) as refused:
        calculate("brewing", {})
    assert refused.value.facts["field"] == "calculation"
    assert refused.value.facts["choices"] == sorted(CALCULATIONS)


def test_every_calculation_has_a_title_and_says_what_it_asks() -> None:
    for name, known in CALCULATIONS.items():
        assert known.title, name
        assert known.rule.__doc__, name
