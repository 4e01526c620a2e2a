"""ROUND: against a published distance, and against every order there is of a few stops."""

import math
import random
from itertools import permutations
from typing import Any

import pytest

from cellarapp.domain.calculations import calculate
from cellarapp.domain.errors import NotAmong, OutOfRange
from cellarapp.domain.fleet.stops import MOST_STOPS, Place, Ways, great_circle_m, shortest

NASHVILLE = Place(36_120_000, -86_670_000)
LOS_ANGELES = Place(33_940_000, -118_400_000)


def at(latitude: float, longitude: float) -> dict[str, int]:
    return {"latitude_e6": round(latitude * 10**6), "longitude_e6": round(longitude * 10**6)}


def answer(*stops: dict[str, int], start: dict[str, int] | None = None) -> dict[str, Any]:
    return calculate("round_order", {"start": start, "stops": list(stops)})["result"]


def order(found: dict[str, Any]) -> list[int]:
    return [row["stop"] for row in found["order"]]


def test_the_way_from_nashville_to_los_angeles_is_as_published() -> None:
    """ROUND-1. Rosetta Code, Haversine formula: 2886.44444 km at a radius of 6371.0 km."""
    ours_km = great_circle_m(NASHVILLE, LOS_ANGELES) / 1000
    assert ours_km * 6371.0 / 6371.0088 == pytest.approx(2886.44444, abs=0.0006)
    assert great_circle_m(LOS_ANGELES, NASHVILLE) == great_circle_m(NASHVILLE, LOS_ANGELES)


@pytest.mark.parametrize(
    ("here", "there", "quarters"),
    [((0, 0), (0, 90), 1), ((90, 0), (-90, 0), 2), ((0, 179), (0, -1), 2), ((10, 20), (10, 20), 0)],
)
def test_quarters_of_the_globe(
    here: tuple[int, int], there: tuple[int, int], quarters: int
) -> None:
    """ROUND-1: a quarter of a great circle is a quarter of two pi radii."""
    one, other = (Place(lat * 10**6, long * 10**6) for lat, long in (here, there))
    assert great_circle_m(one, other) == round(quarters * math.pi / 2 * 6_371_008.8)


def test_stops_along_a_road_are_made_one_after_another() -> None:
    """ROUND-2: out and back again, however they were made up."""
    road = [at(54.0, longitude) for longitude in (-2.3, -2.0, -2.4, -2.1)]
    found = answer(*road, start=at(54.0, -1.9))
    assert sorted(order(found)) == [0, 1, 2, 3]
    assert found["total_m"] == sum(r["leg_m"] for r in found["order"]) + found["back_m"]
    assert found["total_m"] == pytest.approx(2 * great_circle_m(Place(54 * 10**6, -1_900_000),
                                             Place(54 * 10**6, -2_400_000)), rel=1e-4)  # fmt: skip


def test_without_a_place_of_the_brewery_the_ends_are_open() -> None:
    """ROUND-5: the way from the brewery and back to it is not counted."""
    found = answer(at(54, -2), at(54, -2.2), at(54, -2.1))
    assert order(found) in ([0, 2, 1], [1, 2, 0])
    assert found["order"][0]["leg_m"] is None
    assert found["back_m"] is None


def test_stops_with_no_place_come_last_in_their_own_order() -> None:
    """ROUND-5: nobody knows the way to them."""
    found = answer({}, at(54, -2.2), {}, at(54, -2.1), start=at(54, -2))
    assert order(found)[2:] == [0, 2]
    assert [row["leg_m"] for row in found["order"][2:]] == [None, None]
    assert found["unplaced"] == 2


def test_no_stop_is_no_way() -> None:
    assert answer(start=at(54, -2)) == {
        "order": [], "unplaced": 0, "back_m": None, "total_m": 0,
    }  # fmt: skip


def scattered(chance: random.Random, count: int) -> list[Place]:
    """Within a morning's drive of each other."""
    return [
        Place(chance.randrange(53_800_000, 54_400_000), chance.randrange(-2_900_000, -2_000_000))
        for _ in range(count)
    ]


def test_small_rounds_are_the_shortest_there_are() -> None:
    """ROUND-3, ROUND-4: every order of up to six stops tried; with and without the brewery."""
    chance = random.Random(11)
    rounds = 0
    for count in (1, 2, 3, 4, 5, 6):
        for start in (*scattered(chance, 10), None, None):
            ways = Ways(start, start, scattered(chance, count))
            best = min(ways.total_m(one) for one in permutations(range(count)))
            assert ways.total_m(shortest(ways, count)) == best
            rounds += 1
    assert rounds == 72


def test_what_is_left_of_a_round_is_next_to_the_shortest() -> None:
    """ROUND-3: it begins at one place and ends at another, so turning round finds less."""
    chance = random.Random(11)
    longer = []
    for count in (1, 2, 3, 4, 5, 6):
        for _ in range(10):
            van, home = scattered(chance, 2)
            ways = Ways(van, home, scattered(chance, count))
            best = min(ways.total_m(one) for one in permutations(range(count)))
            longer.append(ways.total_m(shortest(ways, count)) / best)
    assert max(longer) <= 1.1
    assert longer.count(1) >= 0.9 * len(longer)


def test_no_turning_round_makes_a_long_round_shorter() -> None:
    """ROUND-3: nor is it longer than always going to the nearest."""
    chance = random.Random(5)
    start = Place(54 * 10**6, -2 * 10**6)
    ways = Ways(start, start, scattered(chance, 25))
    found = shortest(ways, 25)
    total = ways.total_m(found)
    assert sorted(found) == list(range(25))
    assert all(total <= ways.total_m(ways.nearest_next(first)) for first in range(25))
    for i in range(25):
        for j in range(i + 1, 25):
            turned = [*found[:i], *reversed(found[i : j + 1]), *found[j + 1 :]]
            assert ways.total_m(turned) >= total


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"stops": [{"latitude_e6": 91_000_000, "longitude_e6": 0}]}, "stops[0].latitude_e6"),
        ({"stops": [{"latitude_e6": 54_000_000}]}, "stops[0].longitude_e6"),
        ({"stops": [], "start": {}}, "start.latitude_e6"),
        ({"stops": [], "van": {"latitude_e6": 0}}, "van.longitude_e6"),
        ({"stops": [{}] * (MOST_STOPS + 1)}, "stops"),
    ],
)
def test_a_place_that_is_none_is_refused_by_its_field(asked: dict[str, Any], field: str) -> None:
    with pytest.raises(OutOfRange) as refused:
        calculate("round_order", asked)
    assert refused.value.facts["field"] == field


def test_a_start_that_is_no_place_is_refused() -> None:
    with pytest.raises(NotAmong):
        calculate("round_order", {"stops": [], "start": "the yard"})
