"""Strength: by the published table of factors, in whole numbers, and what to expect in the cask."""

from typing import NamedTuple

from cellarapp.domain.bench.sugars import SUGAR_FIELDS, asked_sugar, strength_rise_pct
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, number_in
from cellarapp.domain.rounding import cut, half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

TENTHS_PER_GRAVITY = 10_000
"""A degree is a thousandth of specific gravity, and the table goes by tenths of a degree."""


class ByTable(NamedTuple):
    """Strength in ten-thousandths of % vol, and the fall and factor that it comes from."""

    strength: int
    fall_tenths: int
    thousandths: int


def strength_by_table(work: Working, original_gravity: float, gravity: float) -> ByTable:
    """Fall of gravity times the factor for it; the fall is taken to a tenth of a degree first.

    All in whole numbers: held in binary, 4.2 may be a little less than 4.2 and would be cut to 4.1.
    Raises: OutOfRange beyond the table, or when the gravity has risen.
    """
    table = work.figure("excise_strength_factors")
    fall = half_up_whole((original_gravity - gravity) * TENTHS_PER_GRAVITY)
    why = "The published table of factors goes no further."
    number_in("gravity_fall", fall / 10, 0, table[-1]["up_to_tenths"] / 10, "degrees", why)
    thousandths = next(row["thousandths"] for row in table if fall <= row["up_to_tenths"])
    work.step("Fall of gravity = original - present", fall / 10, "degrees", 1)
    work.step("Factor for that fall", thousandths / 1000, "% vol", 3)
    strength = fall * thousandths
    work.step("Strength = fall x factor", strength / TENTHS_PER_GRAVITY, "% vol", 4)
    return ByTable(strength, fall, thousandths)


def strength(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """ABV-1: strength from original and present gravity; for duty it is cut, not rounded.

    For cask beer the gravity is the one after secondary fermentation in the cask. Asked:
    original_gravity, present_gravity.
    """
    asked, work = Asked(inputs, "original_gravity", "present_gravity"), Working(settings)
    found = strength_by_table(
        work, asked.number("original_gravity"), asked.number("present_gravity")
    )
    digits = work.figure("duty_strength_digits")
    tenths = found.strength // (TENTHS_PER_GRAVITY // 10**digits)
    work.caution("strength_is_guidance")
    return work.done(
        {
            "fall_degrees": found.fall_tenths / 10,
            "factor": found.thousandths / 1000,
            "strength_pct": found.strength / TENTHS_PER_GRAVITY,
            "abv_tenths": tenths,
            "duty_strength_pct": tenths / 10**digits,
        }
    )


def expected_strength(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """ABV-2: strength to expect in the cask: after secondary, thinned by additions, with primings.

    Asked: original_gravity, expected_gravity after secondary; sugar_g_per_l of primings with
    sugar (solids_pct, fermentable_pct); additions_ml_per_l, all liquids that go in.
    """
    fields = ("original_gravity", "expected_gravity", "sugar_g_per_l", "additions_ml_per_l")
    asked, work = Asked(inputs, *fields, *SUGAR_FIELDS), Working(settings)
    original, expected = asked.number("original_gravity"), asked.number("expected_gravity")
    beer = strength_by_table(work, original, expected).strength / TENTHS_PER_GRAVITY
    additions = asked.number("additions_ml_per_l")
    thinned = beer * (1 - additions / 1000)
    work.step("Thinned = strength x (1 - additions / 1000)", thinned, "% vol", 3)
    sugar_g_per_l = asked.number("sugar_g_per_l")
    rise = 0.0
    if sugar_g_per_l > 0:
        rise = strength_rise_pct(work, asked_sugar(work, asked), sugar_g_per_l)
    total = work.step("Expected = thinned + rise", thinned + rise, "% vol", 3)
    digits = work.figure("duty_strength_digits")
    work.caution("strength_is_guidance")
    work.caution("duty_on_strength_when_drunk")
    return work.done(
        {
            "before_pct": half_up(beer, 3),
            "thinned_pct": half_up(thinned, 3),
            "rise_pct": half_up(rise, 3),
            "strength_pct": half_up(total, 3),
            "duty_strength_pct": cut(total, digits),
            "abv_tenths": half_up_whole(cut(total, digits) * 10),
        }
    )
