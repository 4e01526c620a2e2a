"""What is left in a cask: by dip, lying and standing, and by weight; and what cannot be drunk."""

import math
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad  # type: ignore[import-untyped]

from cellarapp.domain.cellar.gauging import Inside
from cellarapp.domain.errors import NotAmong, OutOfRange

from .asking import ask, result, unhurried

FIRKIN = {"bung_diameter_mm": 392, "head_diameter_mm": 314, "length_mm": 385.0}
"""A model firkin: no maker's drawing is published."""
INCH_MM = 25.4
GALLON_ML = 4546.09
OLD_GALLON_IN3 = 277.274
"""Of 1824, as the old tables reckon; today's is 277.4194 cubic inches, 0.052 % more."""
BUTT = Inside(32 * INCH_MM, 24 * INCH_MM, 40 * INCH_MM)
"""The worked cask of the old gaugers: bung 32, head 24, length 40 inches."""

casks = st.builds(
    lambda bung, head, length: Inside(bung, bung * head, length),
    st.floats(100, 1000),
    st.floats(0.3, 1),
    st.floats(100, 2000),
)


def dip(wet_mm: float, **other: Any) -> dict[str, Any]:
    return result("left_by_dip", **{"wet_mm": wet_mm, "tilted": False, **FIRKIN, **other})


def spheroid_radius(cask: Inside, x: float) -> float:
    big, small = cask.bung_mm / 2, cask.head_mm / 2
    return math.sqrt(big**2 - (big**2 - small**2) * (2 * x / cask.length_mm) ** 2)


def integrated_ml(cask: Inside, wet_mm: float) -> float:
    """The volume by scipy, from the definition: segments of circles along the cask."""

    def segment(x: float) -> float:
        radius = spheroid_radius(cask, x)
        height = min(max(wet_mm - (cask.bung_mm / 2 - radius), 0.0), 2 * radius)
        to_axis = radius - height
        angle = math.acos(max(-1.0, min(1.0, to_axis / radius)))
        return radius**2 * angle - to_axis * math.sqrt(max(0.0, 2 * radius * height - height**2))

    volume, _ = quad(segment, 0, cask.length_mm / 2, limit=400, epsabs=1e-3, epsrel=1e-9)
    return float(2 * volume / 1000)


# The model firkin, worked out for this by integration; litres and pints as printed.
@pytest.mark.parametrize(
    ("wet_mm", "litres", "pints"),
    [(20, 0.39, 0.7), (40, 1.51, 2.7), (60, 3.19, 5.6), (100, 7.54, 13.3), (140, 12.67, 22.3),
     (196, 20.46, 36.0), (260, 29.32, 51.6), (320, 36.53, 64.3), (360, 39.94, 70.3),
     (392, 40.91, 72.0)],
)  # fmt: skip
def test_a_dip_of_the_model_firkin(wet_mm: float, litres: float, pints: float) -> None:
    """LEFT-2."""
    found = dip(wet_mm)
    assert found["left_ml"] / 1000 == pytest.approx(litres, abs=0.0051)
    assert found["left_pints"] == pints


@given(casks, st.floats(0, 1))
@unhurried
def test_a_dip_agrees_with_scipy_s_integral(cask: Inside, share: float) -> None:
    """GAUGE-2: to a millionth of the whole."""
    wet_mm = share * cask.bung_mm
    off = cask.lying_ml(wet_mm) - integrated_ml(cask, wet_mm)
    assert abs(off) <= 1e-6 * cask.full_ml()


@given(casks, st.floats(0, 1))
@unhurried
def test_a_standing_cask_agrees_with_scipy_s_integral(cask: Inside, share: float) -> None:
    """GAUGE-3: circles, from the head up."""
    top = share * cask.length_mm - cask.length_mm / 2
    volume, _ = quad(
        lambda x: math.pi * spheroid_radius(cask, x) ** 2 / 1000, -cask.length_mm / 2, top
    )
    assert cask.standing_ml(share * cask.length_mm) == pytest.approx(volume, abs=1e-6)


# Table "Capacities of casks whose bung diameter and length are 1", first variety, in gallons of
# 277.274 cubic inches (Builder & Mechanic; American Mechanic), by the share of head to bung.
@pytest.mark.parametrize(
    ("share", "gallons"), [(0.5, 0.0021244), (0.75, 0.0024195), (0.8, 0.0024927), (0.9, 0.0026532)]
)
def test_whole_contents_of_the_old_table(share: float, gallons: float) -> None:
    """GAUGE-1: seven printed decimals. 0.75 is printed one in the last place low."""
    cubic_inches = Inside(INCH_MM, share * INCH_MM, INCH_MM).full_ml() / (INCH_MM / 10) ** 3
    assert cubic_inches / OLD_GALLON_IN3 == pytest.approx(gallons, abs=1.6e-7)


# Bung 32, head 24, length 40 inches: published 97.3 ale and 119.1 wine gallons by slide rule; the
# formula gives 97.44 and 118.95, which are followed. Modern imperial: 99.05 gallons, 450.3 L.
def test_whole_contents_of_the_gaugers_cask() -> None:
    """GAUGE-1."""
    cubic_inches = BUTT.full_ml() / (INCH_MM / 10) ** 3
    assert cubic_inches == pytest.approx(27478.46, abs=0.01)
    assert cubic_inches / 282 == pytest.approx(97.44, abs=0.005)
    assert cubic_inches / 282 == pytest.approx(97.3, rel=0.002)
    assert cubic_inches / 231 == pytest.approx(118.95, abs=0.005)
    assert cubic_inches / 231 == pytest.approx(119.1, rel=0.002)
    assert BUTT.full_ml() / GALLON_ML == pytest.approx(99.05, abs=0.005)
    assert BUTT.full_ml() / 1000 == pytest.approx(450.3, abs=0.05)


# The same cask with 118.80 gallons, ullaged: "How to ullage" (Builder & Mechanic) prints 54.759375
# for 15 inches wet; its rule of thumb is wrong low down and beyond, so the integral is followed.
@pytest.mark.parametrize(("wet_in", "gallons"), [(8, 20.73), (15, 54.31)])
def test_the_gaugers_cask_ullaged(wet_in: float, gallons: float) -> None:
    """GAUGE-2."""
    share = BUTT.lying_ml(wet_in * INCH_MM) / BUTT.full_ml()
    assert share * 118.80 == pytest.approx(gallons, abs=0.005)


def rule_of_thumb(h: float, by: float) -> float:
    return h - (0.5 - h) / by if h < 0.5 else h + (h - 0.5) / by


@pytest.mark.parametrize("h", [0.3, 0.4, 0.45, 0.5, 0.55, 0.6, 0.7])
def test_the_rule_of_thumb_is_near_where_it_may_be_used(h: float) -> None:
    """GAUGE-2: within three hundredths of the whole; at a tenth it says that nothing is left."""
    assert rule_of_thumb(15 / 32, 4) * 118.80 == pytest.approx(54.759375, abs=1e-9)
    share = BUTT.lying_ml(h * BUTT.bung_mm) / BUTT.full_ml()
    assert share == pytest.approx(rule_of_thumb(h, 4), abs=0.03)
    assert rule_of_thumb(0.1, 4) == pytest.approx(0)
    assert BUTT.lying_ml(0.1 * BUTT.bung_mm) > 0.03 * BUTT.full_ml()


@pytest.mark.parametrize("h", [0.2, 0.4, 0.5, 0.7, 0.8])
def test_the_rule_of_thumb_for_a_standing_cask_is_near(h: float) -> None:
    """GAUGE-3. Builder & Mechanic, the same with a tenth; within two hundredths."""
    share = BUTT.standing_ml(h * BUTT.length_mm) / BUTT.full_ml()
    assert share == pytest.approx(rule_of_thumb(h, 10), abs=0.02)


# A cylinder's segment, the upper bound low down: [acos(1-2h) - 2(1-2h) sqrt(h-h²)] / pi.
@pytest.mark.parametrize(
    ("h", "share"),
    [(0.05, 0.018693), (0.1, 0.052044), (0.2, 0.142378), (0.25, 0.195501), (0.3, 0.252316),
     (0.4, 0.373530), (0.5, 0.5), (0.75, 0.804499)],
)  # fmt: skip
def test_a_straight_cask_is_a_cylinder(h: float, share: float) -> None:
    """GAUGE-2."""
    drum = Inside(400, 400, 500)
    assert drum.lying_ml(h * 400) / drum.full_ml() == pytest.approx(share, abs=6e-7)


@given(casks, st.floats(0, 1))
def test_a_dip_and_its_counterpart_make_the_whole(cask: Inside, share: float) -> None:
    """GAUGE-2, GAUGE-3: V(w) + V(D - w) = V(full), lying and standing."""
    wet = share * cask.bung_mm
    both = cask.lying_ml(wet) + cask.lying_ml(cask.bung_mm - wet)
    assert both == pytest.approx(cask.full_ml(), rel=1e-9)
    wet = share * cask.length_mm
    both = cask.standing_ml(wet) + cask.standing_ml(cask.length_mm - wet)
    assert both == pytest.approx(cask.full_ml(), rel=1e-9)


@given(casks, st.floats(0, 1), st.floats(0, 1))
def test_a_deeper_dip_never_means_less(cask: Inside, one: float, other: float) -> None:
    """GAUGE-2, GAUGE-3."""
    low, high = sorted((one, other))
    hair = 1e-9 * cask.full_ml()
    assert cask.lying_ml(low * cask.bung_mm) <= cask.lying_ml(high * cask.bung_mm) + hair
    assert cask.standing_ml(low * cask.length_mm) <= cask.standing_ml(high * cask.length_mm) + hair


@given(casks)
def test_half_a_dip_is_half_the_cask_whatever_its_shape(cask: Inside) -> None:
    """GAUGE-2."""
    assert cask.lying_ml(cask.bung_mm / 2) == pytest.approx(cask.full_ml() / 2, rel=1e-9)


@given(casks, st.floats(0.01, 0.5))
def test_a_belly_holds_less_low_down_than_a_drum(cask: Inside, share: float) -> None:
    """GAUGE-2: the cylinder is the upper bound below the middle."""
    assume(cask.head_mm < cask.bung_mm)
    drum = Inside(cask.bung_mm, cask.bung_mm, cask.length_mm)
    wet = share * cask.bung_mm
    hair = 1e-9
    assert cask.lying_ml(wet) / cask.full_ml() <= drum.lying_ml(wet) / drum.full_ml() + hair


def test_a_tilted_cask_is_refused() -> None:
    """LEFT-2. What's Brewing, May 2016: casks are stooped later, and then the dip maps no more."""
    with pytest.raises(NotAmong) as refused:
        dip(100, tilted=True)
    assert refused.value.facts["field"] == "tilted"
    assert "level" in str(refused.value.facts["why"])


def test_a_cask_that_was_not_measured_takes_the_model_of_its_size() -> None:
    """LEFT-2: and says so. Half of 36 pints is 18."""
    pin = ask("left_by_dip", wet_mm=392 / 2 * 0.5 ** (1 / 3), tilted=False, holds_ml=20457)
    assert pin["result"]["left_pints"] == 18.0
    assert pin["result"]["full_ml"] == 20457
    assert "model_cask_used" in pin["cautions"]


def test_measures_are_calibrated_to_what_the_cask_holds() -> None:
    """LEFT-2."""
    assert dip(196, holds_ml=41_500)["left_ml"] == 20_750
    assert dip(196, holds_ml=41_500)["full_ml"] == 41_500


def test_measures_that_do_not_fit_the_cask_are_refused() -> None:
    """LEFT-2: one of them is mistaken."""
    with pytest.raises(OutOfRange) as refused:
        dip(100, holds_ml=20_457)
    assert (refused.value.facts["low"], refused.value.facts["high"]) == (38_869, 42_959)


@pytest.mark.parametrize(
    ("other", "field"),
    [({"wet_mm": 393}, "wet_mm"), ({"head_diameter_mm": 400}, "head_diameter_mm"),
     ({"wet_mm": 386, "laid": "standing"}, "wet_mm"), ({"length_mm": None}, "length_mm")],
)  # fmt: skip
def test_measures_that_cannot_be_are_refused(other: dict[str, Any], field: str) -> None:
    """LEFT-2."""
    with pytest.raises(OutOfRange) as refused:
        dip(**{"wet_mm": 100, **other})
    assert refused.value.facts["field"] == field


def test_sediment_is_not_drunk() -> None:
    """LEFT-1."""
    found = dip(100, sediment_ml=1700)
    assert found["drinkable_ml"] == found["left_ml"] - 1700
    assert dip(20, sediment_ml=1700)["drinkable_ml"] == 0


# Gross 51.0, tare 9.6 kg, gravity 1.010 at 12 °C: 41.01 L, a tenth over a firkin.
def test_left_by_weight() -> None:
    """LEFT-3."""
    asked = {"gross_g": 51_000, "tare_g": 9_600, "present_gravity": 1.010, "beer_temp_c": 12}
    found = result("left_by_weight", **asked)
    assert found["left_ml"] / 1000 == pytest.approx(41.01, abs=0.0051)
    assert result("left_by_weight", **{**asked, "gross_g": 9_600})["left_ml"] == 0
    with pytest.raises(OutOfRange):
        result("left_by_weight", **{**asked, "gross_g": 9_000})


@given(st.floats(9_600, 60_000), st.floats(1, 5_000))
def test_heavier_never_holds_less(gross_g: float, more_g: float) -> None:
    """LEFT-3: a pint weighs 0.574 kg."""

    def left(gross: float) -> int:
        asked = {"tare_g": 9_600, "present_gravity": 1.010, "beer_temp_c": 12}
        return int(result("left_by_weight", gross_g=gross, **asked)["left_ml"])

    assert left(gross_g + more_g) >= left(gross_g)
    assert abs(left(gross_g + 574) - left(gross_g) - 568) <= 2


# St Austell Brewery with HM Revenue & Customs, End product duty: pin 0.85, firkin 1.7, kilderkin
# 3.4 L; a firkin of 40.91 L leaves 39.21 L, 69.0 pints, and 3.0 pints of sediment.
@pytest.mark.parametrize(
    ("kind", "sediment_ml", "saleable_pints"),
    [("pin", 850, 34.5), ("firkin", 1700, 69.0), ("kilderkin", 3400, 138.0)],
)
def test_published_sediment(kind: str, sediment_ml: int, saleable_pints: float) -> None:
    """SED-1."""
    found = result("sediment", kind=kind)
    assert (found["sediment_ml"], found["saleable_pints"]) == (sediment_ml, saleable_pints)


def test_a_firkin_s_sediment_is_three_pints() -> None:
    """SED-2. Sold in three days it takes 23 pints a day."""
    found = result("sediment", kind="firkin")
    assert found["sediment_pints"] == 3.0
    assert found["saleable_ml"] / 1000 == pytest.approx(39.21, abs=0.0051)
    assert found["saleable_pints"] / 3 == 23


def test_other_sizes_take_the_same_share_and_say_so() -> None:
    """SED-1: 1.7 L on nine gallons is 1.889 on ten."""
    found = ask("sediment", kind="ten")
    assert found["result"]["sediment_ml"] == 1889
    assert "sediment_by_proportion" in found["cautions"]
    assert ask("sediment", kind="other_cask", holds_ml=81_830)["result"]["sediment_ml"] == 3400


def test_a_beer_s_own_sediment_comes_first_and_a_keg_has_none() -> None:
    """SED-1."""
    assert result("sediment", kind="firkin", sediment_ml=900)["sediment_ml"] == 900
    assert result("sediment", kind="keg_30")["sediment_ml"] == 0
    assert result("sediment", kind="keg_30")["saleable_pints"] == 52.8


def test_a_cask_of_no_usual_size_says_what_it_holds() -> None:
    """SED-2."""
    with pytest.raises(OutOfRange) as refused:
        result("sediment", kind="other_cask")
    assert refused.value.facts["field"] == "holds_ml"
