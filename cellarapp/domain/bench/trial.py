"""A finings trial: what to put into each sample, and which dose the readings speak for."""

from typing import Any, NamedTuple

from cellarapp.domain.bench.units import ml_per_l_from_pints
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

MOST_STEPS = 20
MOST_SAMPLES = 200
MOST_READINGS = 50


def asked_steps(work: Working, asked: Asked, product: str, field: str) -> list[float]:
    """The steps of a ladder, or the usual ones where none are asked for."""
    if not asked.has("isinglass_steps") and not asked.has("auxiliary_steps"):
        if product == "isinglass":
            return work.setting_list("trial_isinglass_pt")
        return work.setting_list("trial_auxiliary_pt")
    parts = asked.parts(f"{product}_steps", MOST_STEPS, "steps")
    return [
        Asked({field: step}, field, at=f"{product}_steps[{index}].").number(field)
        for index, step in enumerate(parts)
    ]


def trial_ladder(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """TRIAL-1: millilitres of each finings for each sample of a ladder.

    Asked: sample_ml; isinglass_steps and auxiliary_steps in pints per barrel, or neither.
    """
    asked, work = (
        Asked(inputs, "sample_ml", "isinglass_steps", "auxiliary_steps"),
        Working(settings),
    )
    litres = asked.number("sample_ml") / 1000
    isinglass = asked_steps(work, asked, "isinglass", "isinglass_pt")
    auxiliary = asked_steps(work, asked, "auxiliary", "auxiliary_pt")
    each = work.step("1 pint per barrel in a sample", ml_per_l_from_pints(1) * litres, "mL", 3)
    smallest = work.setting("trial_smallest_ml")
    if any(0 < half_up(step * each, 6) < smallest for step in isinglass + auxiliary):
        work.caution("trial_doses_too_small")
    work.caution("trial_order")
    samples = [
        {
            "isinglass_pt": half_up(one, 3),
            "auxiliary_pt": half_up(other, 3),
            "isinglass_ml": half_up(one * each, 2),
            "auxiliary_ml": half_up(other * each, 2),
        }
        for one in isinglass
        for other in auxiliary
    ]
    return work.done({"samples": samples})


class Sample(NamedTuple):
    """What was read of one sample: whether it counts, was bright in time, and resettled bright."""

    isinglass_pt: float
    auxiliary_pt: float
    bright: bool
    settled_ml: float | None


def asked_sample(work: Working, row: object, at: str) -> Sample:
    """One sample's readings. It is bright if it was in time and after every resettling."""
    names = ("isinglass_pt", "auxiliary_pt", "clarity", "resettled", "settled_ml")
    part = Asked(row, *names, at=at)
    bright_from = work.setting("trial_bright_score")
    in_time = []
    after_h = work.figure("trial_read_after_h")
    for index, reading in enumerate(part.parts("clarity", MOST_READINGS, "readings")):
        read = Asked(reading, "after_h", "score", at=f"{at}clarity[{index}].")
        hours, score = read.number("after_h"), read.number("score")
        if after_h["low"] <= hours <= after_h["high"]:
            in_time.append(score)
    resettled = [
        Asked({"score": score}, "score", at=f"{at}resettled[{index}].").number("score")
        for index, score in enumerate(part.parts("resettled", MOST_READINGS, "readings"))
    ]
    bright = bool(in_time and resettled) and min(in_time + resettled) >= bright_from
    return Sample(
        part.number("isinglass_pt"),
        part.number("auxiliary_pt"),
        bright,
        half_up(part.number("settled_ml"), 1) if part.has("settled_ml") else None,
    )


def on_plateau(sample: Sample, samples: list[Sample]) -> bool:
    """Bright, and so is every sample with more isinglass and the same auxiliary.

    A sample that is bright between two that are not was luck.
    """
    more = [
        other
        for other in samples
        if other.auxiliary_pt == sample.auxiliary_pt and other.isinglass_pt >= sample.isinglass_pt
    ]
    return all(other.bright for other in more)


def trial_proposal(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """TRIAL-2: the lowest dose on the plateau: least isinglass, then least auxiliary.

    Asked: samples, each with isinglass_pt, auxiliary_pt, clarity [{after_h, score}], resettled
    [score after each], settled_ml if measured. A person sets the beer's rate, not this rule.
    """
    asked, work = Asked(inputs, "samples"), Working(settings)
    samples = [
        asked_sample(work, row, f"samples[{index}].")
        for index, row in enumerate(asked.parts("samples", MOST_SAMPLES, "samples"))
    ]
    plateau = [sample for sample in samples if on_plateau(sample, samples)]
    work.step("Samples on the plateau", len(plateau), "samples", 0)
    work.caution("trial_confirm_in_cask" if plateau else "trial_no_plateau")
    proposal: dict[str, Any] | None = None
    if plateau:
        lowest = min(plateau, key=lambda sample: (sample.isinglass_pt, sample.auxiliary_pt))
        proposal = {
            "isinglass_pt": half_up(lowest.isinglass_pt, 3),
            "auxiliary_pt": half_up(lowest.auxiliary_pt, 3),
            "settled_ml": lowest.settled_ml,
        }
        if lowest.isinglass_pt == max(sample.isinglass_pt for sample in samples):
            work.caution("trial_top_of_ladder")
    return work.done({"proposal": proposal, "on_plateau": len(plateau)})
