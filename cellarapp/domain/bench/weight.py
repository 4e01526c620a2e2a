"""What a container holds by its weight, against nominal, the excise and the packer's rules."""

import math
from typing import Any

from cellarapp.domain.bench.gravity import beer_g_per_ml
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, number_in
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

METHODS = ("weighed", "metered", "by_eye")


def overfill_ml(work: Working, capacity_ml: int, method: str) -> float | None:
    """Overfill that the excise allows of a large pack; none stated for any other container."""
    rule = work.figure("excise_overfill")
    if not rule["large_pack_above_ml"] < capacity_ml <= rule["large_pack_up_to_ml"]:
        return None
    if method == "by_eye":
        return float(next(s["ml"] for s in rule["by_eye"] if capacity_ml <= s["up_to_ml"]))
    measured = rule["measured"]
    if capacity_ml > measured["above_ml"]:
        return float(capacity_ml * measured["permille"] / 1000)
    return float(measured["ml"])


def least_ml(work: Working, capacity_ml: int) -> float | None:
    """The least that a sealed pack may hold: nominal less twice the tolerable error."""
    rule = work.figure("packaged_goods_tne")
    if capacity_ml > rule["up_to_ml"]:
        return None
    for step in rule["steps"]:
        if capacity_ml > step["above_ml"]:
            error = step["ml"] + math.ceil(capacity_ml * step["permille"] / 100) / 10
            work.step("Tolerable negative error", error, "mL", 1)
            return float(capacity_ml - 2 * error)
    return None


def lifting(work: Working, gross_g: float) -> None:
    """Nobody lifts a full cask alone: above the filter weights it is said."""
    filters = work.figure("lifting_filter_kg")
    if gross_g > filters["men"] * 1000:
        work.caution("lifting_beyond_filter")
    elif gross_g > filters["women"] * 1000:
        work.caution("lifting_near_filter")


def fill_by_weight(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FILL-1: litres from gross weight, tare, gravity and temperature, and whether that will do.

    The tare is that container's own. Asked: gross_g, tare_g, present_gravity, beer_temp_c,
    capacity_ml (nominal), method.
    """
    fields = ("gross_g", "tare_g", "present_gravity", "beer_temp_c", "capacity_ml", "method")
    asked, work = Asked(inputs, *fields), Working(settings)
    gross_g = asked.number("gross_g")
    why = "A container weighs no more than it does full."
    tare_g = number_in("tare_g", asked.number("tare_g"), 0, gross_g, "g", why)
    gravity, temp_c = asked.number("present_gravity"), asked.number("beer_temp_c")
    capacity_ml = asked.whole("capacity_ml")
    method = asked.choice("method", METHODS, "How fills are measured at this brewery.")
    density = beer_g_per_ml(work, gravity, temp_c)
    work.step("Density of beer = gravity x density of water", density, "g/mL", 5)
    volume = work.step("Volume = (gross - tare) / density", (gross_g - tare_g) / density, "mL", 0)
    over = volume - capacity_ml
    result: dict[str, Any] = {
        "volume_ml": half_up_whole(volume),
        "over_ml": half_up_whole(over),
        "allowed_over_ml": None,
        "excise": "no_rule",
        "least_ml": None,
        "packer": "no_rule",
    }
    allowed, least = overfill_ml(work, capacity_ml, method), least_ml(work, capacity_ml)
    if allowed is not None:
        beyond = half_up(over - allowed, 3) > 0
        result |= {"allowed_over_ml": half_up(allowed, 1), "excise": "over" if beyond else "within"}
        if beyond:
            work.caution("excise_overfilled")
        elif over > 0:
            work.caution("steady_overfill")
    if least is not None:
        under = half_up(least - volume, 3) > 0
        result |= {"least_ml": half_up(least, 1), "packer": "under" if under else "within"}
        if under:
            work.caution("pack_underfilled")
    lifting(work, gross_g)
    work.caution("weighed_in_air")
    return work.done(result)
