"""SED: beer that stays in the cask because it cannot be drunk, by size and beer."""

from cellarapp.domain.bench.units import pint_ml
from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs, choice_of
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

KIND_WHY = "One of the kinds of container that the brewery keeps."


def pints(volume_ml: float) -> float:
    """Imperial pints, to a tenth."""
    return half_up(volume_ml / pint_ml(), 1)


def sediment_of(work: Working, kind: str, holds_ml: float, own_ml: float | None) -> int:
    """SED-1: the beer's own for that size; what is published for it; or in proportion.

    The published ones are one share of a gallon, so any other size takes the same.
    """
    if own_ml is not None:
        return half_up_whole(work.step("Sediment: the beer's own for this size", own_ml, "mL", 0))
    if CONTAINER_KINDS[kind]["shape"] == "keg":
        sediment = work.setting("keg_sediment_ml")
        return half_up_whole(work.step("Sediment: in a keg", sediment, "mL", 0))
    work.caution("sediment_measure_your_own")
    known = work.figure("sediment_ml")
    if kind in known:
        return half_up_whole(work.step("Sediment: as published", known[kind], "mL", 0))
    work.caution("sediment_by_proportion")
    share = known["firkin"] / (CONTAINER_KINDS["firkin"]["capacity_ml"] or 1)
    says = "Sediment: a firkin's, by size"
    return half_up_whole(work.step(says, share * holds_ml, "mL", 0))


def sediment(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """SED-2: sediment and what can be sold of a full container, litres and pints.

    Asked: kind; holds_ml for one of no usual size; sediment_ml where the beer has its own.
    Twin: static/src/domain/cellar/sediment.ts.
    """
    asked, work = CellarAsked(inputs, "kind", "holds_ml", "sediment_ml"), Working(settings)
    kind = choice_of("kind", asked.given.get("kind"), list(CONTAINER_KINDS), KIND_WHY)
    usual_ml = CONTAINER_KINDS[kind]["capacity_ml"]
    holds_ml = asked.whole("holds_ml") if asked.has("holds_ml") or not usual_ml else usual_ml
    left_behind = sediment_of(work, kind, holds_ml, asked.maybe_number("sediment_ml"))
    saleable = max(0, holds_ml - left_behind)
    work.step("Saleable = full - sediment", saleable, "mL", 0)
    return work.done(
        {
            "holds_ml": holds_ml,
            "sediment_ml": left_behind,
            "sediment_pints": pints(left_behind),
            "saleable_ml": saleable,
            "saleable_pints": pints(saleable),
        }
    )
