"""Specific gravity, extract and density: what a hydrometer reading stands for."""

from cellarapp.domain.working import Working


def plato(work: Working, gravity: float) -> float:
    """Extract in °P, % of the weight, of a specific gravity at 20/20 °C.

    Twin: static/src/domain/bench/gravity.ts#plato.
    """
    one, first, second, third = work.figure("plato_curve")
    return float(one + gravity * (first + gravity * (second + gravity * third)))


def water_g_per_ml(work: Working, temp_c: float) -> float:
    """Density of water, 0 to 40 °C."""
    k = work.figure("water_density")
    low, high = (temp_c + k["a1"]) ** 2 * (temp_c + k["a2"]), k["a3"] * (temp_c + k["a4"])
    return float(k["a5"] * (1 - low / high) / 1000)


def beer_g_per_ml(work: Working, gravity: float, temp_c: float) -> float:
    """Density of beer, which swells with warmth as water does."""
    return gravity * water_g_per_ml(work, temp_c)


def extract_g_per_l(work: Working, gravity: float) -> float:
    """Grams of extract, taken as sugar, in a litre of that gravity at 20 °C."""
    weight_g = 1000 * beer_g_per_ml(work, gravity, work.figure("gravity_reference_c"))
    return weight_g * plato(work, gravity) / 100
