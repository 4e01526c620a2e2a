"""BEER: the beer's own temperature, which follows the air with a lag, and when it suits serving."""

from typing import NamedTuple

from cellarapp.domain.cellar.cooling import hours_to, temp_after
from cellarapp.domain.cellar.temperatures import History, Piece
from cellarapp.domain.cellar.times import hours_between, hours_ms
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.working import Working


class Serving(NamedTuple):
    """The range in which beer is served, and how near to its cellar it counts as there."""

    low_c: float
    high_c: float
    near_c: float
    cellar_c: float

    def within(self, air_c: float) -> tuple[float, float]:
        """The range for beer that stands in that air.

        A cellar at the very edge of the range would never be reached, so near is enough there.
        """
        if not self.low_c <= air_c <= self.high_c:
            return self.low_c, self.high_c
        return min(self.low_c, air_c - self.near_c), max(self.high_c, air_c + self.near_c)

    def hours_from(self, beer_c: float, air_c: float, tau: float) -> float | None:
        """Hours until beer in that air is in the range; None where it never will be."""
        low, high = self.within(air_c)
        if low <= beer_c <= high:
            return 0.0
        to_c = high if beer_c > high else low
        if not (beer_c > to_c > air_c or beer_c < to_c < air_c):
            return None
        return hours_to(beer_c, air_c, to_c, tau)


class Course(NamedTuple):
    """The beer at the end of its history, its warmest, and since when it has been in range."""

    beer_c: float
    warmest_c: float
    in_range_since_ms: int | None


def asked_serving(work: Working) -> Serving:
    """The brewery's range. Raises: OutOfRange where its settings turn it round."""
    low_c, high_c = work.setting("cellar_low_c"), work.setting("cellar_high_c")
    if low_c > high_c:
        raise OutOfRange(
            field="cellar_low_c", given=low_c, low=None, high=high_c, unit="°C",
            why="The coolest for serving lies above the warmest.",
        )  # fmt: skip
    return Serving(low_c, high_c, work.setting("cellar_near_c"), work.setting("cellar_temp_c"))


def course(
    serving: Serving, history: History, air: list[Piece], fill_c: float | None, tau: float
) -> Course:
    """BEER-1: the beer through every piece of air, taken up anew at every reading of the beer.

    Racked at a temperature that nobody noted it is taken to be at its place's.
    """
    read_c = {r.at_ms: r.temp_c for r in history.readings if r.of == "beer"}
    beer_c = air[0].air_c if fill_c is None else fill_c
    warmest = beer_c
    since: int | None = None
    for start, end, air_c in _cut_at(sorted(read_c), air):
        beer_c = read_c.get(start, beer_c)
        low, high = serving.within(air_c)
        since = since if low <= beer_c <= high else None
        hours = serving.hours_from(beer_c, air_c, tau)
        if since is None and hours is not None and start + hours_ms(hours) <= end:
            since = start + hours_ms(hours)
        then_c = temp_after(beer_c, air_c, hours_between(start, end), tau)
        since = since if low <= then_c <= high else None
        warmest = max(warmest, beer_c, then_c)
        beer_c = then_c
    return Course(beer_c, warmest, since)


def _cut_at(times: list[int], air: list[Piece]) -> list[tuple[int, int, float]]:
    cut: list[tuple[int, int, float]] = []
    n = 0
    for piece in air:
        start = piece.from_ms
        while n < len(times) and times[n] < piece.until_ms:
            if times[n] > start:
                cut.append((start, times[n], piece.air_c))
                start = times[n]
            n += 1
        cut.append((start, piece.until_ms, piece.air_c))
    return cut
