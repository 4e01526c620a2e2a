"""CO2 in the beer, held to published values and to outside libraries."""

import math

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st
from iapws._iapws import _Henry

from cellarapp.domain.bench.co2 import from_extract_vol, residual_vol
from cellarapp.domain.bench.gravity import extract_g_per_l, plato, water_g_per_ml
from cellarapp.domain.figures import figure
from cellarapp.domain.working import Working

from .asking import ask, result, unhurried

CO2_G, WATER_G = 44.0095, 18.0153

# Hall's polynomial (Zymurgy, Summer 1995), worked out by hand for the temperatures of the table.
HALL_VOL = {
    0: 1.7077, 5: 1.4316, 8: 1.2866, 10: 1.1986, 12: 1.1174, 13: 1.0794, 14: 1.0431, 15: 1.0085,
    16: 0.9757, 18: 0.9151, 20: 0.8615, 22: 0.8147, 25: 0.7575,
}  # fmt: skip


@pytest.mark.parametrize(("temp_c", "vol"), HALL_VOL.items())
def test_residual_follows_the_published_curve(temp_c: float, vol: float) -> None:
    """CO2-1: to the four digits that the curve gives by hand."""
    assert residual_vol(Working(), temp_c) == pytest.approx(vol, abs=0.00005)


def iapws_vol(temp_c: float) -> float:
    """CO2 in water under one atmosphere of wet gas, by IAPWS Guideline G7-04."""
    kelvin = temp_c + 273.15
    water_pa = PropsSI("P", "T", kelvin, "Q", 0, "Water")
    share = (101_325 - water_pa) / (_Henry(kelvin, "CO2") * 1e6)
    density = PropsSI("D", "T", kelvin, "P", 101_325, "Water")
    return share / (1 - share) * CO2_G / WATER_G * density / figure("co2_g_per_l_per_vol")


@pytest.mark.parametrize("temp_c", range(8, 26))
def test_residual_lies_within_5_percent_of_henrys_law(temp_c: int) -> None:
    """Source: IAPWS G7-04, in the library iapws; and never by more than 0.06 vol."""
    ours, outside = residual_vol(Working(), temp_c), iapws_vol(temp_c)
    assert ours == pytest.approx(outside, rel=0.05)
    assert ours == pytest.approx(outside, abs=0.06)


@pytest.mark.parametrize(
    ("kelvin", "ln_gpa"), [(300, -1.7508), (400, -0.5450), (500, -0.6524), (600, -1.3489)]
)
def test_the_outside_library_is_the_one_meant(kelvin: float, ln_gpa: float) -> None:
    """Check values of the guideline: the outside reference is itself checked."""
    assert math.log(_Henry(kelvin, "CO2") / 1000) == pytest.approx(ln_gpa, abs=0.0001)


# T. Hibberd, A Primer on Priming (1995): the table that brewers used before the curve. Disagrees
# by up to 0.02 vol from 8 °C up; the curve is followed, as it has no steps.
@pytest.mark.parametrize(
    ("temp_c", "vol"),
    [(8, 1.3), (10, 1.2), (12, 1.12), (14, 1.05), (16, 0.99), (18, 0.93), (20, 0.88), (22, 0.83)],
)
def test_residual_agrees_with_the_older_table(temp_c: float, vol: float) -> None:
    """Within 0.02 vol, from 8 to 22 °C."""
    assert residual_vol(Working(), temp_c) == pytest.approx(vol, abs=0.021)


def test_a_volume_weighs_what_the_gas_weighs() -> None:
    """Source: Span-Wagner equation of state, in the library CoolProp: 1.9768 g/L."""
    grams = PropsSI("D", "T", 273.15, "P", 101_325, "CO2")
    assert figure("co2_g_per_l_per_vol") == pytest.approx(grams, abs=0.00005)


def test_a_measured_value_takes_the_place_of_the_estimate() -> None:
    """CO2-1: beer held under pressure keeps what a meter says."""
    worked = ask("co2_in_beer", highest_temp_c=20, measured_vol=1.6)
    assert worked["result"]["residual_vol"] == 1.6
    assert "residual_is_estimate" not in worked["cautions"]


def test_one_point_above_the_limit_gives_half_a_volume() -> None:
    """0.2542 °P x 0.81 (MEBAK B-590.80.530) x 0.4629 (Balling): 0.961 g/L, 0.486 vol.

    Cider makers and Milk The Funk, Packaging, say about half a volume a point.
    """
    vol = from_extract_vol(Working(), 1.010, 1.009)
    assert vol == pytest.approx(0.486, abs=0.0006)
    assert vol * 1.9768 == pytest.approx(0.961, abs=0.001)


def test_beer_below_its_limit_has_nothing_to_come() -> None:
    """And the limit is put in doubt."""
    worked = ask("co2_in_beer", highest_temp_c=20, present_gravity=1.008, limit_gravity=1.010)
    assert worked["result"]["from_extract_vol"] == 0
    assert "below_limit" in worked["cautions"]


# The usual cubic, worked out by hand.
@pytest.mark.parametrize(
    ("gravity", "degrees"),
    [(1.010, 2.561), (1.040, 9.994), (1.048, 11.912), (1.060, 14.741), (1.080, 19.331),
     (1.150, 34.243)],
)  # fmt: skip
def test_extract_by_the_usual_cubic(gravity: float, degrees: float) -> None:
    assert plato(Working(), gravity) == pytest.approx(degrees, abs=0.0005)


# Fit to the NBS sugar table (encyclopaedia article Brix), good to SG 1.179, and Buhl's formula
# (OSF preprint 9wfym), within 0.02 °P of the ASBC table. They part at syrup strength, where the
# cubic and the sugar table agree and Buhl lies 0.3 °P lower: the cubic is followed.
@pytest.mark.parametrize(
    ("gravity", "brix"), [(1.010, 2.560), (1.048, 11.912), (1.080, 19.331), (1.150, 34.293)]
)
def test_extract_agrees_with_the_sugar_table(gravity: float, brix: float) -> None:
    assert plato(Working(), gravity) == pytest.approx(brix, abs=0.051)


@pytest.mark.parametrize(("gravity", "degrees"), [(1.010, 2.578), (1.040, 10.015), (1.06, 14.740)])
def test_extract_agrees_with_buhl(gravity: float, degrees: float) -> None:
    assert plato(Working(), gravity) == pytest.approx(degrees, abs=0.022)


def test_syrup_at_1150_holds_393_g_in_a_litre() -> None:
    """34.24 °P x 1.150 x 0.9982: 393.1 g/L."""
    assert extract_g_per_l(Working(), 1.150) == pytest.approx(393.1, abs=0.05)


# Tanaka et al., Metrologia 38 (2001), the CIPM table.
@pytest.mark.parametrize(
    ("temp_c", "kg_per_m3"),
    [(0, 999.8428), (4, 999.9749), (10, 999.7027), (12, 999.5005), (15, 999.1026),
     (20, 998.2067), (25, 997.0470)],
)  # fmt: skip
def test_water_weighs_what_the_published_table_says(temp_c: float, kg_per_m3: float) -> None:
    assert water_g_per_ml(Working(), temp_c) * 1000 == pytest.approx(kg_per_m3, abs=0.00006)


@pytest.mark.parametrize("temp_c", range(1, 41, 3))
def test_water_weighs_what_coolprop_says(temp_c: int) -> None:
    """Within 5 g in a tonne, of the equation of state in CoolProp."""
    outside = PropsSI("D", "T", temp_c + 273.15, "P", 101_325, "Water")
    assert water_g_per_ml(Working(), temp_c) * 1000 == pytest.approx(outside, abs=0.005)


@unhurried
@given(st.floats(0, 29.9), st.floats(0.01, 0.1))
def test_warmer_beer_keeps_less(temp_c: float, more: float) -> None:
    """CO2-1: over the whole range in which the curve is used."""
    assert residual_vol(Working(), temp_c + more) < residual_vol(Working(), temp_c)


def test_nothing_is_counted_twice() -> None:
    """The total is what is there and what will come."""
    found = result("co2_in_beer", highest_temp_c=18, present_gravity=1.012, limit_gravity=1.009)
    total = found["residual_vol"] + found["from_extract_vol"]
    assert found["total_vol"] == pytest.approx(total, abs=0.0011)
