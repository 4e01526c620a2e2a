"""The kinds of container: pin, firkin, kilderkin, barrel, kegs (figures.json, container_kinds)."""

import math
from typing import Literal, TypedDict

from cellarapp.domain.figures import FIGURES, Settings, figure, setting


class ContainerKind(TypedDict):
    """A kind of container: nominal size in whole mL, none for one of no usual size."""

    name: str
    shape: Literal["cask", "keg"]
    gallons: float | None
    capacity_ml: int | None


CONTAINER_KINDS: dict[str, ContainerKind] = figure("container_kinds")
LARGEST_ML = max(kind["capacity_ml"] or 0 for kind in CONTAINER_KINDS.values())


ABOVE = "fill_above_capacity_permille"
ANY_BREWERY: Settings = {ABOVE: FIGURES[ABOVE]["high"]}
"""With the most that any brewery may set: what goes beyond is refused wherever it comes from."""


def most_that_fits_ml(capacity_ml: int | None, settings: Settings | None = None) -> int:
    """The largest volume that is believed of a container, mL.

    A container is never filled by more than a twentieth over what it holds, or what the brewery
    sets: a larger figure is a slip of the finger. Of a container not yet registered, the largest
    kind there is decides.
    """
    capacity = LARGEST_ML if capacity_ml is None else capacity_ml
    return capacity + math.floor(capacity * setting(ABOVE, settings) / 1000)
