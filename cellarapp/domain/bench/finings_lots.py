"""Finings on the shelf, and beer that has been fined: life left, moves left, vegan or not."""

from cellarapp.domain.calendar import add_days, days_between
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, day_of
from cellarapp.domain.rounding import half_up_whole
from cellarapp.domain.working import Worked, Working

LOTS = ("isinglass", "auxiliary")


def life_days(work: Working, product: str, warmest_c: float) -> int:
    """Days that finings last from receipt, by the warmest that they have been kept at."""
    if product == "auxiliary":
        return half_up_whole(work.setting("auxiliary_life_days"))
    if warmest_c < 0:
        work.caution("finings_frozen")
    for step in work.figure("isinglass_life"):
        if warmest_c <= step["up_to_c"]:
            return int(step["days"])
    return 0


def finings_life(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-6: how long a lot of finings still lasts.

    Asked: product, received_on, storage_temp_c (the warmest it was kept at), today.
    """
    asked = Asked(inputs, "product", "received_on", "storage_temp_c", "today")
    work = Working(settings)
    product = asked.choice("product", LOTS, "Isinglass, or auxiliary finings.")
    received = day_of("received_on", asked.inputs.get("received_on"))
    today = day_of("today", asked.inputs.get("today"))
    days = life_days(work, product, asked.number("storage_temp_c"))
    work.step("Life from receipt, by the warmest storage", days, "days", 0)
    use_by = add_days(received, days)
    left = days_between(today, use_by)
    work.step("Life left = use by - today", left, "days", 0)
    work.caution("product_sheet_first")
    if left < 0:
        work.caution("finings_past")
    return work.done({"use_by": use_by, "days_left": left, "past": left < 0})


def moves_after_fining(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-7: how often a fined cask may still be moved.

    Asked: moves since fining; resettles_most of this beer, from its trial, else the brewery's.
    """
    asked, work = Asked(inputs, "moves", "resettles_most"), Working(settings)
    moves = asked.whole("moves")
    if asked.has("resettles_most"):
        most = asked.whole("resettles_most")
    else:
        most = half_up_whole(work.setting("resettles_most"))
    left = most - moves
    work.step("Moves left = resettles of this beer - moves since fining", left, "moves", 0)
    if left < 0:
        work.caution("moved_too_often")
    elif left == 0:
        work.caution("no_more_moves")
    return work.done({"moves_left": max(0, left), "too_many": left < 0})


def vegan(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-8: whether beer may be called vegan: nothing of animals in the recipe, no isinglass.

    Asked: recipe_vegan, isinglass_used.
    """
    asked, work = Asked(inputs, "recipe_vegan", "isinglass_used"), Working(settings)
    recipe = asked.flag("recipe_vegan", "Whether nothing in the recipe comes from animals.")
    fined = asked.flag("isinglass_used", "Whether isinglass went in.")
    if fined:
        work.caution("isinglass_not_vegan")
    return work.done({"vegan": recipe and not fined})
