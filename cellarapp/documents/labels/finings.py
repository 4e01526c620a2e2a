"""What finings put into a fill, as far as its label has to tell: isinglass, and sulphite."""

from collections.abc import Mapping
from typing import Any

from cellarapp.domain.bench.finings_conditions import sulphite
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import Settings
from cellarapp.domain.standing import Contents

Fields = Mapping[str, Any]
PRODUCTS = {
    "isinglass": "isinglass",
    "auxiliary_alginate": "auxiliary",
    "auxiliary_silica": "auxiliary",
}
"""What is added, as the rule of sulphite knows it."""


def is_fined(contents: Contents, beer: Fields) -> bool | None:
    """Whether isinglass is in it, or still to come; None where nobody has said."""
    if any(dose["what"] == "isinglass" for dose in contents["doses"]):
        return True
    if beer.get("vegan") is True:
        return False
    if contents["doses"]:
        return _awaits_isinglass(contents, beer)
    rate = beer.get("isinglass_ml_per_hl")
    return None if rate is None else rate > 0


def _awaits_isinglass(contents: Contents, beer: Fields) -> bool:
    """Alginate went in with the fill, so isinglass follows hours later."""
    alginate = any(dose["what"] == "auxiliary_alginate" for dose in contents["doses"])
    return alginate and (beer.get("isinglass_ml_per_hl") or 0) > 0


def _by_rate(beer: Fields, *products: str) -> list[dict[str, Any]]:
    rates = {name: beer.get(f"{name}_ml_per_hl") or 0 for name in products}
    return [{"product": name, "ml_per_l": rate / 100} for name, rate in rates.items() if rate > 0]


def _additions(
    contents: Contents, beer: Fields, lots: Mapping[str, Fields]
) -> list[dict[str, Any]]:
    """As noted with the fill, by their lots' sheets; where nothing was, by the beer's rates."""
    if not contents["doses"]:
        auxiliary = [] if beer.get("auxiliary") in (None, "none") else ["auxiliary"]
        isinglass = ["isinglass"] if is_fined(contents, beer) else []
        return _by_rate(beer, *auxiliary, *isinglass)
    additions: list[dict[str, Any]] = [
        {
            "product": PRODUCTS[dose["what"]],
            "ml_per_l": (dose["amount_ml"] or 0) * 1000 / contents["volume_ml"],
            "so2_mg_per_l": lots.get(dose["lot"] or "", {}).get("so2_mg_per_l"),
        }
        for dose in contents["doses"]
        if dose["what"] in PRODUCTS
    ]
    fined = any(one["product"] == "isinglass" for one in additions)
    awaited = not fined and is_fined(contents, beer)
    return additions + (_by_rate(beer, "isinglass") if awaited else [])


def sulphites_mg_per_l(
    contents: Contents,
    gyle: Fields,
    beer: Fields,
    lots: Mapping[str, Fields],
    settings: Settings,
) -> float | None:
    """Total SO2 for the label, the beer's own with what finings carry in; None while not known.

    Where the beer's own is not known and finings alone carry in what has to be declared, that.
    """
    own = gyle.get("sulphite_decimg_per_l")
    try:
        found = sulphite(
            {
                "beer_so2_mg_per_l": None if own is None else own / 10,
                "additions": _additions(contents, beer, lots),
            },
            settings,
        )["result"]
    except DomainError:
        return None  # a dose that cannot be: nothing is known by it
    total: float | None = found["total_mg_per_l"]
    if total is None and found["declare"]:
        total = found["carried_in_mg_per_l"]
    return total
