"""Solutions for washing, from the strength and density on the product's own sheet."""

from typing import Any

from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, number_in
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

SHEET_FIELDS = ("strength_pct_w_w", "density_g_per_ml", "contact_min", "rinse")
OF_WHAT = ("product_v_v", "naoh_w_v")
OF_WHAT_WHY = "2 % of what: of the product by volume, or of caustic soda by weight."
METALS = ("stainless", "aluminium", "plastic", "wood")


def active_mg_per_ml(work: Working, asked: Asked) -> float:
    """Active substance in a millilitre of the product, from its sheet; none is assumed."""
    strength, density = asked.number("strength_pct_w_w"), asked.number("density_g_per_ml")
    says = "Active in the product = 10 w d, w in % by weight, d its density"
    return work.step(says, 10 * strength * density, "mg/mL", 2)


def recipe(work: Working, asked: Asked, ml_per_l: float) -> dict[str, Any]:
    """Product and water for the batch, which is made up to its volume; contact as on the sheet.

    The product's sheet may ask for a rinse; this rule only hands on what it says.
    """
    why = "More than the solution itself: the product is too weak for that."
    ml_per_l = number_in("product", ml_per_l, 0, 1000, "mL/L", why)
    work.step("Product in a litre = wanted / active in the product", ml_per_l, "mL/L", 3)
    batch_ml = asked.number("solution_ml")
    product_ml = work.step("Product = mL/L x litres", ml_per_l * batch_ml / 1000, "mL", 1)
    work.caution("product_sheet_first")
    work.caution("chemical_into_water")
    return {
        "product_ml_per_l": half_up(ml_per_l, 2),
        "product_ml": half_up(product_ml, 1),
        "water_ml": half_up(batch_ml - product_ml, 1),
        "contact_min": half_up(asked.number("contact_min"), 1),
        "rinse": asked.flag("rinse", "Whether the product's sheet asks for a rinse."),
    }


def peracetic_dilution(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """WASH-1: peracetic acid for a batch of so many mg/L (ppm).

    Asked: target_mg_per_l, solution_ml, solution_temp_c, and from the sheet strength_pct_w_w,
    density_g_per_ml, contact_min, rinse.
    """
    fields = ("target_mg_per_l", "solution_ml", "solution_temp_c", *SHEET_FIELDS)
    asked, work = Asked(inputs, *fields), Working(settings)
    target = asked.number("target_mg_per_l")
    active = active_mg_per_ml(work, asked)
    if asked.number("solution_temp_c") > work.figure("paa_works_up_to_c"):
        work.caution("peracetic_too_warm")
    result = recipe(work, asked, target / active)
    work.caution("peracetic_needs_clean_metal")
    work.caution("peracetic_hazards")
    one_percent = work.step("1 % of the product by volume would be", active * 10, "mg/L", 0)
    return work.done({**result, "one_percent_v_v_mg_per_l": half_up(one_percent, 0)})


def caustic_dilution(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """WASH-2: caustic for a batch, with its % of the product and of caustic soda both said.

    Asked: target_pct with of_what, solution_ml, metal, and from the sheet strength_pct_w_w,
    density_g_per_ml, contact_min, rinse.
    """
    fields = ("target_pct", "of_what", "solution_ml", "metal", *SHEET_FIELDS)
    asked, work = Asked(inputs, *fields), Working(settings)
    target, of_what = asked.number("target_pct"), asked.choice("of_what", OF_WHAT, OF_WHAT_WHY)
    metal = asked.choice("metal", METALS, "What the containers are made of.")
    active = active_mg_per_ml(work, asked)
    ml_per_l = target * 10 if of_what == "product_v_v" else target * 10_000 / active
    result = recipe(work, asked, ml_per_l)
    grams = work.step("Caustic soda = mL/L x active / 1000", ml_per_l * active / 1000, "g/L", 2)
    usual = work.figure("caustic_wash_naoh_pct")
    if not usual["low"] <= half_up(grams / 10, 6) <= usual["high"]:
        work.caution("caustic_strength_unusual")
    if metal == "aluminium":
        work.caution("no_caustic_on_aluminium")
    work.caution("caustic_and_co2")
    work.caution("caustic_hazards")
    return work.done(
        {
            **result,
            "product_pct_v_v": half_up(ml_per_l / 10, 3),
            "naoh_g_per_l": half_up(grams, 2),
            "naoh_pct_w_v": half_up(grams / 10, 3),
            "allowed": metal != "aluminium",
        }
    )
