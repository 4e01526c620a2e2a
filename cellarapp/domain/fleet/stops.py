"""ROUND: in what order the van makes its stops, by the way from one to the next.

The way is the great circle: roads are longer, and much the same share longer everywhere. Ways are
whole metres, so that phone and server never disagree about which of two is shorter.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from cellarapp.domain.figures import Settings, figure
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up_whole
from cellarapp.domain.working import Worked, Working

MOST_STOPS = 60
METRES = 1000
MILLIONTHS = 1_000_000


class Place(NamedTuple):
    """A place on the map, in millionths of a degree."""

    latitude_e6: int
    longitude_e6: int


def great_circle_m(here: Place, there: Place) -> int:
    """ROUND-1: the way over the sphere in whole metres, by the haversine formula.

    A sphere is up to 0.3 % off the true shape of the earth.
    """
    one, other = (math.radians(p.latitude_e6 / MILLIONTHS) for p in (here, there))
    round_by = math.radians((there.longitude_e6 - here.longitude_e6) / MILLIONTHS)
    a = (
        math.sin((other - one) / 2) ** 2
        + math.cos(one) * math.cos(other) * math.sin(round_by / 2) ** 2
    )
    radius_m: float = figure("earth_radius_km") * METRES
    return half_up_whole(2 * radius_m * math.asin(min(1.0, math.sqrt(a))))


class Ways:
    """The ways between stops, to the first from where the van is, and home from the last.

    With no place to come from or to go home to, there is no way from or to it.
    """

    def __init__(self, van: Place | None, home: Place | None, stops: Sequence[Place]) -> None:
        self._between = [[great_circle_m(here, there) for there in stops] for here in stops]
        self._out, self._home = (
            [0 if end is None else great_circle_m(end, stop) for stop in stops]
            for end in (van, home)
        )

    def leg_m(self, here: int | None, there: int | None) -> int:
        """From a stop to another. None is where the van is, or where it goes home to."""
        if here is None:
            return 0 if there is None else self._out[there]
        return self._home[here] if there is None else self._between[here][there]

    def total_m(self, order: Sequence[int]) -> int:
        """From where the van is through all stops and home."""
        ends = [None, *order, None]
        return sum(self.leg_m(here, there) for here, there in pairwise(ends))

    def nearest_next(self, first: int) -> list[int]:
        """ROUND-2: from the first stop on always to the nearest that is left."""
        order, left = [first], [n for n in range(len(self._home)) if n != first]
        while left:
            nearest = min(left, key=lambda n: self._between[order[-1]][n])
            left.remove(nearest)
            order.append(nearest)
        return order

    def uncrossed(self, order: list[int]) -> list[int]:
        """ROUND-3: turned round between two stops wherever that is shorter, until nowhere is."""
        found, shorter = list(order), True
        while shorter:
            shorter = False
            for i in range(len(found) - 1):
                for j in range(i + 1, len(found)):
                    before = found[i - 1] if i else None
                    after = found[j + 1] if j + 1 < len(found) else None
                    now = self.leg_m(before, found[i]) + self.leg_m(found[j], after)
                    turned = self.leg_m(before, found[j]) + self.leg_m(found[i], after)
                    if turned < now:
                        found[i : j + 1] = reversed(found[i : j + 1])
                        shorter = True
        return found


def shortest(ways: Ways, count: int) -> list[int]:
    """ROUND-4: the shortest of those found with each stop in turn as the first."""
    return min(
        (ways.uncrossed(ways.nearest_next(first)) for first in range(count)),
        key=ways.total_m,
        default=[],
    )


def _place(asked: Asked) -> Place:
    return Place(asked.whole("latitude_e6"), asked.whole("longitude_e6"))


def round_order(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """ROUND-5: the order of stops; those with no place on the map come last, in their own order.

    Asked: start (latitude_e6, longitude_e6) if the brewery has a place: then the round begins and
    ends there; van, the same two, where it is on its way already: then what is left of the round
    begins there; stops, each with the two or neither. A stop goes by its number in that list.
    Twin: static/src/domain/fleet/stops.ts.
    """
    asked, work = Asked(inputs, "start", "van", "stops"), Working(settings)
    names = ("latitude_e6", "longitude_e6")
    start, van = (
        _place(Asked(asked.inputs.get(name), *names, at=f"{name}.")) if asked.has(name) else None
        for name in ("start", "van")
    )
    begins_at = start if van is None else van
    placed: list[int] = []
    places: list[Place] = []
    unplaced: list[int] = []
    for n, part in enumerate(asked.parts("stops", MOST_STOPS, "stops")):
        one = Asked(part, *names, at=f"stops[{n}].")
        if one.has("latitude_e6") or one.has("longitude_e6"):
            placed.append(n)
            places.append(_place(one))
        else:
            unplaced.append(n)
    work.figure("earth_radius_km")
    ways = Ways(begins_at, start, places)
    order = shortest(ways, len(places))
    total = ways.total_m(order)
    rows: list[dict[str, Any]] = []
    for at, stop in enumerate(order):
        begins = at == 0 and begins_at is None
        leg = None if begins else ways.leg_m(order[at - 1] if at else None, stop)
        rows.append({"stop": placed[stop], "leg_m": leg})
    rows += [{"stop": n, "leg_m": None} for n in unplaced]
    work.step("Stops on the map", len(placed), "stops", 0)
    work.step("The whole way, as the crow flies", total / METRES, "km", 1)
    back = ways.leg_m(order[-1], None) if order and start is not None else None
    return work.done({"order": rows, "unplaced": len(unplaced), "back_m": back, "total_m": total})
