"""Units that are exact by definition, and how they turn into one another."""

from cellarapp.domain.figures import figure

ATMOSPHERE_BAR = 1.01325
PSI_BAR = 0.0689475729316836
"""A pound of force on a square inch: 0.45359237 kg, 9.80665 m/s² and 25.4 mm, all exact."""
OUNCE_G = 28.349523125
PINTS_PER_GALLON = 8
GALLONS_PER_BARREL = 36


def fahrenheit(temp_c: float) -> float:
    """The same temperature in degrees Fahrenheit."""
    return temp_c * 9 / 5 + 32


def kelvin(temp_c: float) -> float:
    """The same temperature above absolute nought."""
    return temp_c + 273.15


def barrel_ml() -> float:
    """A barrel of 36 imperial gallons."""
    return float(GALLONS_PER_BARREL * figure("imperial_gallon_ml"))


def pint_ml() -> float:
    """An imperial pint."""
    return float(figure("imperial_gallon_ml") / PINTS_PER_GALLON)


def ml_per_l_from_pints(pints_per_barrel: float) -> float:
    """The trade's rate in millilitres for a litre: a barrel is 288 pints, so this is exact."""
    return pints_per_barrel * 1000 / (GALLONS_PER_BARREL * PINTS_PER_GALLON)
