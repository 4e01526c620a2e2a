"""Which finings may go in now: order, interval, vessel, and who must not be given any."""

from typing import NamedTuple

from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up
from cellarapp.domain.working import Worked, Working

PRODUCTS = ("isinglass", "auxiliary_alginate", "auxiliary_silica")
PRODUCT_WHY = "Isinglass, or auxiliary finings by what they are made of."
VEGAN_WHY = "Whether the beer is sold as vegan."
MOST_EARLIER = 50


class Added(NamedTuple):
    """Finings that went in earlier."""

    product: str
    minutes_ago: float


def asked_earlier(asked: Asked) -> list[Added]:
    """What went into this beer before, in any order."""
    earlier = []
    for index, row in enumerate(asked.parts("earlier", MOST_EARLIER, "additions")):
        part = Asked(row, "product", "minutes_ago", at=f"earlier[{index}].")
        product = part.choice("product", PRODUCTS, PRODUCT_WHY)
        earlier.append(Added(product, part.number("minutes_ago")))
    return earlier


def wait_min(work: Working, product: str, earlier: list[Added]) -> float:
    """Minutes until isinglass may follow alginate auxiliary; none for anything else."""
    since = [added.minutes_ago for added in earlier if added.product == "auxiliary_alginate"]
    if product != "isinglass" or not since:
        return 0.0
    interval = work.figure("alginate_interval_h") * 60
    says = "Wait = interval after alginate auxiliary - minutes since"
    return work.step(says, max(0.0, interval - min(since)), "min", 0)


def against(asked: Asked, product: str, earlier: list[Added], wait: float) -> list[str]:
    """Every reason why this product must not go in now."""
    reasons = []
    if product == "isinglass" and asked.flag("vegan", VEGAN_WHY):
        reasons.append("vegan_beer")
    if asked.has("mixed_with"):
        other = asked.choice("mixed_with", PRODUCTS, PRODUCT_WHY)
        if (other == "isinglass") != (product == "isinglass"):
            reasons.append("one_vessel")
    fined = any(added.product == "isinglass" for added in earlier)
    if product == "auxiliary_alginate" and fined:
        reasons.append("auxiliary_after_isinglass")
    if wait > 0:
        reasons.append("too_soon_after_alginate")
    return reasons


def finings_order(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """FINE-3: whether this product may go in now, and if not why, and how long to wait.

    Auxiliary before isinglass; alginate so many hours before it; silica on either side; never the
    two mixed in one vessel; none of fish in a vegan beer. Asked: product, vegan, earlier,
    mixed_with (the finings already in the dosing vessel, if any).
    """
    asked = Asked(inputs, "product", "vegan", "earlier", "mixed_with")
    work = Working(settings)
    product = asked.choice("product", PRODUCTS, PRODUCT_WHY)
    vegan = asked.flag("vegan", VEGAN_WHY)
    earlier = asked_earlier(asked)
    wait = wait_min(work, product, earlier)
    reasons = against(asked, product, earlier, wait)
    work.caution("never_fine_fermenting")
    work.caution("two_vessels")
    fined = any(added.product == "isinglass" for added in earlier)
    if product == "isinglass" and fined:
        work.caution("refining_at_half")
    if product == "auxiliary_silica":
        work.caution("silica_by_trial")
    return work.done(
        {
            "allowed": not reasons,
            "because": reasons,
            "wait_min": half_up(wait, 0),
            "still_vegan": vegan and not fined and product != "isinglass",
        }
    )
