"""AIR: the air around a container since it was filled, from readings and from where it stood.

A reading by hand or from a logger stands until the next one, until it grows old, or until the
container is moved; otherwise the place's usual temperature is taken, or the cellar's.
"""

from itertools import pairwise
from typing import NamedTuple

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.times import at_ms, hours_ms, ms_of
from cellarapp.domain.working import Working

MOST_READINGS = 20_000
MOST_STAYS = 500
HISTORY_FIELDS = ("stays", "readings")
OF = ("air", "beer")
OF_WHY = "A reading is of the air around the container or of the beer in it."
IN_ORDER = "Not before the one above it."


class Stay(NamedTuple):
    """Where it stood from a time on; None for a place without a temperature of its own."""

    since_ms: int
    temp_c: float | None


class Reading(NamedTuple):
    """What a thermometer showed."""

    at_ms: int
    temp_c: float
    of: str


class Piece(NamedTuple):
    """The air's temperature from one time to another, and how it is known."""

    from_ms: int
    until_ms: int
    air_c: float
    how: str


class History(NamedTuple):
    """Stays and readings, each in the order of time."""

    stays: list[Stay]
    readings: list[Reading]


def asked_history(asked: CellarAsked) -> History:
    """The stays and readings that a rule was given; none where there are none."""
    stays: list[Stay] = []
    readings: list[Reading] = []
    given = asked.parts("stays", MOST_STAYS, "stays") if asked.has("stays") else []
    for n, part in enumerate(given):
        stay = CellarAsked(part, "since_at", "place_temp_c", at=f"{asked.at}stays[{n}].")
        since_ms = _in_order(stay, "since_at", stays[-1].since_ms if stays else None)
        stays.append(Stay(since_ms, stay.maybe_number("place_temp_c")))
    given = asked.parts("readings", MOST_READINGS, "readings") if asked.has("readings") else []
    for n, part in enumerate(given):
        at = f"{asked.at}readings[{n}]."
        reading = CellarAsked(part, "at", "reading_temp_c", "of", at=at)
        time = _in_order(reading, "at", readings[-1].at_ms if readings else None)
        of = reading.choice("of", OF, OF_WHY) if reading.has("of") else "air"
        readings.append(Reading(time, reading.number("reading_temp_c"), of))
    return History(stays, readings)


def _in_order(asked: CellarAsked, field: str, before_ms: int | None) -> int:
    if before_ms is None:
        return ms_of(asked.instant(field))
    return ms_of(asked.instant(field, at_ms(before_ms), IN_ORDER))


def pieces(work: Working, history: History, from_ms: int, until_ms: int) -> list[Piece]:
    """AIR-1: the air from one time to another, cut wherever it changes."""
    stands_ms = hours_ms(work.setting("reading_stands_hours"))
    default_c = work.setting("cellar_temp_c")
    air = [reading for reading in history.readings if reading.of == "air"]
    cuts = {from_ms, until_ms}
    cuts.update(stay.since_ms for stay in history.stays)
    cuts.update(reading.at_ms for reading in air)
    cuts.update(reading.at_ms + stands_ms for reading in air)
    times = sorted(cut for cut in cuts if from_ms <= cut <= until_ms)
    found: list[Piece] = []
    next_stay = next_reading = 0
    for start, end in pairwise(times):
        while next_stay < len(history.stays) and history.stays[next_stay].since_ms <= start:
            next_stay += 1
        while next_reading < len(air) and air[next_reading].at_ms <= start:
            next_reading += 1
        stay = history.stays[next_stay - 1] if next_stay else None
        reading = air[next_reading - 1] if next_reading else None
        found.append(Piece(start, end, *_air(stay, reading, start, stands_ms, default_c)))
    return found


def air_at(work: Working, history: History, time_ms: int) -> tuple[float, str]:
    """AIR-2: the air at one time, which is how it is taken to stay until more is known."""
    [last] = pieces(work, history, time_ms, time_ms + 1)
    return last.air_c, last.how


def _air(
    stay: Stay | None, reading: Reading | None, time_ms: int, stands_ms: int, default_c: float
) -> tuple[float, str]:
    here_since = stay.since_ms if stay else None
    if (
        reading is not None
        and time_ms < reading.at_ms + stands_ms
        and (here_since is None or reading.at_ms >= here_since)
    ):
        return reading.temp_c, "reading"
    if stay is not None and stay.temp_c is not None:
        return stay.temp_c, "place"
    return default_c, "cellar"
