"""A finings trial: what goes into each sample, and what the readings speak for."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.errors import OutOfRange

from .asking import ask, result, unhurried


def test_ladder_of_a_half_litre_sample() -> None:
    """TRIAL-1: 1 pint per barrel is 1.736 mL in 500 mL (by hand), 4 x 5 samples by default."""
    found = result("trial_ladder", sample_ml=500)
    assert len(found["samples"]) == 20
    assert found["samples"][0] == {
        "isinglass_pt": 2, "auxiliary_pt": 0, "isinglass_ml": 3.47, "auxiliary_ml": 0,
    }  # fmt: skip
    assert found["samples"][-1]["auxiliary_ml"] == 1.74


def test_doses_too_small_for_a_syringe_are_said() -> None:
    """At 100 mL a pint per barrel is 0.347 mL."""
    small = ask("trial_ladder", sample_ml=100)
    assert "trial_doses_too_small" in small["cautions"]
    steps = {"isinglass_steps": [2, 3], "auxiliary_steps": [0]}
    assert "trial_doses_too_small" not in ask("trial_ladder", sample_ml=500, **steps)["cautions"]


def sample(isinglass: float, auxiliary: float, *scores: float, **other: Any) -> dict[str, Any]:
    """Read at 4.5 hours; the further scores are after resettling."""
    in_time, *resettled = scores
    return {
        "isinglass_pt": isinglass,
        "auxiliary_pt": auxiliary,
        "clarity": [{"after_h": 1, "score": 2}, {"after_h": 4.5, "score": in_time}],
        "resettled": resettled,
        **other,
    }


def proposal(*samples: dict[str, Any]) -> Any:
    return result("trial_proposal", samples=list(samples))["proposal"]


def test_lowest_dose_on_the_plateau_is_proposed() -> None:
    """TRIAL-2: least isinglass, then least auxiliary."""
    samples = [sample(2, 0.5, 3, 3), sample(3, 0, 4, 3), sample(3, 0.5, 4, 4), sample(3, 1, 5, 5)]
    samples += [sample(4, 0, 4, 4), sample(4, 0.5, 5, 5, settled_ml=9.5), sample(4, 1, 5, 5)]
    assert proposal(*samples) == {"isinglass_pt": 3, "auxiliary_pt": 0.5, "settled_ml": None}


def test_a_sample_bright_between_dull_ones_was_luck() -> None:
    assert proposal(sample(2, 0, 5, 5), sample(3, 0, 3, 3), sample(4, 0, 5, 5)) == {
        "isinglass_pt": 4, "auxiliary_pt": 0, "settled_ml": None,
    }  # fmt: skip


def test_a_sample_that_does_not_resettle_is_not_bright() -> None:
    """Nor is one that was never shaken, or was read only next day."""
    late = {**sample(3, 0, 5, 5), "clarity": [{"after_h": 24, "score": 5}]}
    assert proposal(sample(3, 0, 5, 5, 3)) is None
    assert proposal(sample(3, 0, 5)) is None
    assert proposal(late) is None


def test_only_the_top_step_bright_asks_for_a_higher_one() -> None:
    worked = ask("trial_proposal", samples=[sample(2, 0, 3, 3), sample(3, 0, 5, 5)])
    assert worked["cautions"] == ["trial_confirm_in_cask", "trial_top_of_ladder"]


def test_no_plateau_is_said() -> None:
    assert ask("trial_proposal", samples=[])["cautions"] == ["trial_no_plateau"]


scores = st.integers(1, 5)
steps = st.sampled_from([2, 3, 4, 5])
trials = st.lists(st.builds(sample, steps, st.sampled_from([0, 0.5]), scores, scores), max_size=8)


@unhurried
@given(trials)
def test_a_proposal_is_always_a_bright_sample(samples: list[dict[str, Any]]) -> None:
    """And no brighter reading of another sample makes it vanish."""
    found = proposal(*samples)
    bright = {
        (one["isinglass_pt"], one["auxiliary_pt"])
        for one in samples
        if min(one["clarity"][1]["score"], *one["resettled"]) >= 4
    }
    if found:
        assert (found["isinglass_pt"], found["auxiliary_pt"]) in bright


@pytest.mark.parametrize("asked", [{"isinglass_steps": [3]}, {"auxiliary_steps": [0]}])
def test_a_ladder_has_steps_of_both(asked: dict[str, Any]) -> None:
    with pytest.raises(OutOfRange):
        result("trial_ladder", sample_ml=500, **asked)
