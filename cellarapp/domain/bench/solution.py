"""A made-up solution: its strength by titration, and whether it may still be used."""

from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

TITRATED = ("peracetic", "caustic")


def titration(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """WASH-3: strength by titration: peracetic acid with thiosulphate, caustic with acid.

    Asked: titrated, titrant_ml used, normality of the titrant, titration_sample_ml.
    """
    asked = Asked(inputs, "titrated", "titrant_ml", "normality", "titration_sample_ml")
    work = Working(settings)
    titrated = asked.choice("titrated", TITRATED, "What the sample holds.")
    used, normality = asked.number("titrant_ml"), asked.number("normality")
    if titrated == "peracetic":
        equivalent = work.figure("paa_titration_equivalent_g")
    else:
        equivalent = work.figure("molar_masses_g")["naoh"]
    mg = used * normality * equivalent * 1000 / asked.number("titration_sample_ml")
    work.step("Strength = titrant mL x e x N x 1000 / sample mL, e one equivalent", mg, "mg/L", 1)
    return work.done(
        {"strength_mg_per_l": half_up(mg, 1), "strength_pct_w_v": half_up(mg / 1e4, 4)}
    )


def against(asked: Asked) -> list[str]:
    """Every reason why the solution must not be used any more."""
    reasons = []
    if asked.flag("thrown_away", "Whether it has been thrown away."):
        reasons.append("thrown_away")
    last = "last_check_mg_per_l" if asked.has("last_check_mg_per_l") else "made_mg_per_l"
    if asked.number(last) < asked.number("least_mg_per_l"):
        reasons.append("too_weak")
    if asked.has("most_uses") and asked.whole("uses") >= asked.whole("most_uses"):
        reasons.append("used_up")
    if asked.has("most_hours") and asked.number("hours_old") >= asked.number("most_hours"):
        reasons.append("too_old")
    return reasons


def solution_state(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """WASH-4: whether a made-up solution may be used once more, and if not why.

    Asked: made_mg_per_l, last_check_mg_per_l if it was checked, least_mg_per_l, uses, hours_old,
    thrown_away; most_uses and most_hours where the sheet or the brewery sets them.
    """
    fields = ("made_mg_per_l", "last_check_mg_per_l", "least_mg_per_l", "uses", "hours_old")
    asked = Asked(inputs, *fields, "thrown_away", "most_uses", "most_hours")
    work = Working(settings)
    made = asked.number("made_mg_per_l")
    uses, hours_old = asked.whole("uses"), asked.number("hours_old")
    lost = None
    if asked.has("last_check_mg_per_l"):
        lost = (1 - asked.number("last_check_mg_per_l") / made) * 100
        work.step("Lost since made = 1 - checked / made", lost, "%", 1)
    else:
        work.caution("solution_not_checked")
    reasons = against(asked)
    if reasons:
        work.caution("make_up_anew")
    return work.done(
        {
            "usable": not reasons,
            "because": reasons,
            "lost_pct": None if lost is None else half_up(lost, 1),
            "uses": uses,
            "hours_old": half_up(hours_old, 1),
        }
    )
