"""What the server's rules of the trade answer, in the form in which the twin answers."""

import json
import math
from typing import Any

from cellarapp.domain.bench import co2, gravity, pressure, sugars
from cellarapp.domain.calculations import calculate
from cellarapp.domain.cellar import cooling
from cellarapp.domain.cellar.gauging import Inside
from cellarapp.domain.errors import DomainError
from cellarapp.domain.rounding import cut, half_up
from cellarapp.domain.working import Working


def worked(name: str, inputs: Any, settings: Any) -> dict[str, Any]:
    """A rule's whole answer: result, steps, cautions and figures, or the refusal with its facts."""
    try:
        answer: dict[str, Any] = {"worked": calculate(name, inputs, settings)}
    except DomainError as refusal:
        answer = {"refused": refusal.slug, "facts": refusal.facts}
    read: dict[str, Any] = json.loads(json.dumps(answer, allow_nan=False))
    return read


def for_the_wire(value: Any) -> Any:
    """JSON knows no NaN and no infinity: they travel as {"$": "NaN"}."""
    if isinstance(value, float) and not math.isfinite(value):
        return {"$": str(value).replace("inf", "Infinity").replace("nan", "NaN")}
    if isinstance(value, dict):
        return {name: for_the_wire(one) for name, one in value.items()}
    if isinstance(value, list):
        return [for_the_wire(one) for one in value]
    return value


def sugar(hexose_g: float) -> sugars.Sugar:
    return sugars.Sugar("sucrose", 1, hexose_g)


UNROUNDED = {
    "half_up": half_up,
    "cut": cut,
    "plato": lambda sg: gravity.plato(Working(), sg),
    "water_g_per_ml": lambda temp_c: gravity.water_g_per_ml(Working(), temp_c),
    "extract_g_per_l": lambda sg: gravity.extract_g_per_l(Working(), sg),
    "residual_vol": lambda temp_c: co2.residual_vol(Working(), temp_c),
    "from_extract_vol": lambda now, limit: co2.from_extract_vol(Working(), now, limit),
    "sealed_bar": lambda vol, temp_c: pressure.sealed_bar(Working(), vol, temp_c, ""),
    "keg_bar": lambda temp_c, vol: pressure.keg_bar(Working(), temp_c, vol),
    "co2_per_gram": lambda hexose_g: sugars.co2_per_gram(Working(), sugar(hexose_g), "full"),
    "strength_rise_pct": lambda hexose_g, g_per_l: sugars.strength_rise_pct(
        Working(), sugar(hexose_g), g_per_l
    ),
    "hours_to": lambda way, air, share: cooling.hours_to(air + way, air, air + way * share, 19.67),
    "temp_after": lambda from_c, air_c, hours: cooling.temp_after(from_c, air_c, hours, 19.67),
    "full_ml": lambda bung, head, length: Inside(bung, bung * head, length).full_ml(),
    "lying_ml": lambda bung, head, length, wet: Inside(bung, bung * head, length).lying_ml(
        wet * bung
    ),
    "standing_ml": lambda bung, head, length, wet: Inside(bung, bung * head, length).standing_ml(
        wet * length
    ),
}
"""What stands behind the rounded figures, as it is before rounding."""
