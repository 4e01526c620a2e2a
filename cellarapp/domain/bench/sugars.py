"""Sugars for priming: what a gram of each gives in CO2, in alcohol, and in extract."""

from typing import NamedTuple

from cellarapp.domain.inputs import Asked
from cellarapp.domain.working import Working

SUGAR_FIELDS = ("sugar", "solids_pct", "fermentable_pct")
YIELDS = ("full", "balling")
YIELD_WHY = "Full conversion, or Balling, which counts what the yeast grows on."
CO2_PER_HEXOSE = 2


class Sugar(NamedTuple):
    """Of one gram as weighed: dry extract, and fermentable sugar counted as hexose, in grams."""

    name: str
    dry_g: float
    hexose_g: float


def asked_sugar(work: Working, asked: Asked) -> Sugar:
    """The sugar asked for; syrups need what their own sheet says of them."""
    table = work.figure("priming_sugars")
    name = asked.choice("sugar", list(table), "The sugars that can be reckoned with.")
    known = table[name]
    dry = (known["molar_mass_g"] - known["water_g"]) / known["molar_mass_g"]
    fermentable = 1.0
    if name in ("invert_syrup", "glucose_syrup"):
        dry = asked.number("solids_pct") / 100
    if name == "glucose_syrup":
        fermentable = asked.number("fermentable_pct") / 100
    if name == "malt_extract":
        work.caution("malt_extract_is_estimate")
        dry = 1 - work.setting("malt_extract_moisture_pct") / 100
        fermentable = work.setting("malt_extract_fermentable_pct") / 100
    anhydrous_g = known["molar_mass_g"] - known["water_g"]
    hexose = work.figure("molar_masses_g")["hexose"]
    per_dry = known["hexoses"] * hexose / anhydrous_g
    return Sugar(name, dry, dry * fermentable * per_dry)


def co2_per_gram(work: Working, sugar: Sugar, conversion: str) -> float:
    """Grams of CO2 from one gram of the sugar as weighed.

    Malt extract is counted by Balling whatever was asked: its solids are extract, not sugar.
    """
    if conversion == "balling" or sugar.name == "malt_extract":
        balling = work.figure("balling")
        grams = sugar.hexose_g * balling["co2_g"] / balling["extract_g"]
        says = "CO2 from 1 g of sugar = hexose x k, k of Balling's balance"
    else:
        masses = work.figure("molar_masses_g")
        grams = sugar.hexose_g * CO2_PER_HEXOSE * masses["co2"] / masses["hexose"]
        says = "CO2 from 1 g of sugar = hexose x 2 M(CO2) / M(hexose), full conversion"
    return work.step(says, grams, "g", 4)


def strength_rise_pct(work: Working, sugar: Sugar, sugar_g_per_l: float) -> float:
    """Strength that so much sugar in a litre adds, by Balling."""
    alcohol_g = sugar_g_per_l * sugar.hexose_g / work.figure("balling")["extract_g"]
    rise = alcohol_g / work.setting("ethanol_g_per_ml") / 10
    return work.step("Rise in strength = hexose / b / d(ethanol) / 10", rise, "% vol", 3)
