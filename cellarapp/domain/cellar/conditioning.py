"""COND: from when a container has conditioned: so many days from racking, each beer its own."""

from cellarapp.domain.cellar.ageing import speed
from cellarapp.domain.cellar.days import after_days
from cellarapp.domain.cellar.temperatures import History, air_at, pieces
from cellarapp.domain.cellar.times import at_ms, hours_between, hours_ms, ms_of
from cellarapp.domain.cellar.units import DAY_HOURS
from cellarapp.domain.working import Working

BY_THE_DAYS = 1
"""The Q10 with which temperature does not count."""


def conditioned_at(
    work: Working, filled_at: str, days: int, history: History, now: str
) -> tuple[str, str]:
    """COND-3: the time, and how it was reckoned: "days", or "temperature" where that counts.

    By days it is the same time on a London clock. A brewery that sets a Q10 lets warm days count
    for more and cold ones for less; after now the air is taken to stay as it is.
    """
    q10 = work.setting("conditioning_q10")
    if q10 == BY_THE_DAYS:
        return after_days(filled_at, days), "days"
    work.caution("conditioning_rate_is_guess")
    reference_c = work.setting("conditioning_reference_c")
    coldest, warmest = work.setting_list("conditioning_counts_between_c")

    def rate(air_c: float) -> float:
        return speed(q10, min(max(air_c, coldest), warmest), reference_c)

    left = float(days * DAY_HOURS)
    start = ms_of(filled_at)
    for piece in pieces(work, history, start, max(start, ms_of(now))):
        hours = hours_between(piece.from_ms, piece.until_ms)
        if left <= hours * rate(piece.air_c):
            return at_ms(piece.from_ms + hours_ms(left / rate(piece.air_c))), "temperature"
        left -= hours * rate(piece.air_c)
    last = max(start, ms_of(now))
    air_c, _ = air_at(work, history, last)
    return at_ms(last + hours_ms(left / rate(air_c))), "temperature"
