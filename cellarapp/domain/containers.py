"""The kinds of container: pin, firkin, kilderkin, barrel, kegs (figures.json, container_kinds)."""

from typing import Literal, TypedDict

from cellarapp.domain.figures import figure


class ContainerKind(TypedDict):
    """A kind of container: nominal size in whole mL, none for one of no usual size."""

    name: str
    shape: Literal["cask", "keg"]
    gallons: float | None
    capacity_ml: int | None


CONTAINER_KINDS: dict[str, ContainerKind] = figure("container_kinds")
LARGEST_ML = max(kind["capacity_ml"] or 0 for kind in CONTAINER_KINDS.values())


def most_that_fits_ml(capacity_ml: int | None) -> int:
    """The largest volume that is believed of a container, mL.

    A container is never filled by more than a twentieth over what it holds: a larger figure is a
    slip of the finger. Of a container not yet registered, the largest kind there is decides.
    """
    capacity = LARGEST_ML if capacity_ml is None else capacity_ml
    return capacity + capacity * int(figure("fill_above_capacity_permille")) // 1000
