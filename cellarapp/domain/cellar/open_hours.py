"""OPEN: the hours at which the bar draws beer. Where none are set, every hour counts."""

from collections.abc import Iterator
from typing import NamedTuple

from cellarapp.domain.calendar import add_days, days_between, london_date, london_instant
from cellarapp.domain.cellar.times import A_MONDAY, at_ms, ms_of
from cellarapp.domain.cellar.units import DAY_HOURS, HOUR_MS, WEEK_DAYS, WEEK_MINUTES
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.working import Working

IN_PAIRS = "Each hour of opening has its hour of closing."
CLOSES_LATER = "It closes after it opens, and before it opens again."


class OpenHours(NamedTuple):
    """Opening and closing in minutes after Monday's midnight on a London clock, in their order.

    Past the last midnight of the week they run on.
    """

    spans: list[tuple[int, int]]

    def _from(self, time: int) -> Iterator[tuple[int, int]]:
        """From that time on, when it is open: from and until, without end."""
        day = london_date(at_ms(time))
        monday = add_days(day, -(days_between(A_MONDAY, day) % WEEK_DAYS) - WEEK_DAYS)
        until = time
        while True:
            for opens, closes in self.spans:
                # On the night when an hour is leapt over a later time may come first.
                begins = max(until, ms_of(london_instant(monday, opens)))
                ends = ms_of(london_instant(monday, closes))
                if begins < ends:
                    yield begins, ends
                    until = ends
            monday = add_days(monday, WEEK_DAYS)

    def between_ms(self, first: int, last: int) -> int:
        """OPEN-1: how long it was open between two times."""
        if not self.spans:
            return last - first
        open_ms = 0
        for begins, ends in self._from(first):
            if begins >= last:
                break
            open_ms += min(ends, last) - begins
        return open_ms

    def after_ms(self, time: int, open_ms: int) -> int:
        """OPEN-2: when it has been open for so long since a time."""
        if not self.spans or open_ms == 0:
            return time + open_ms
        spans = self._from(time)
        begins, ends = next(spans)
        while open_ms > ends - begins:
            open_ms -= ends - begins
            begins, ends = next(spans)
        return begins + open_ms

    def next_open(self, time: int) -> int:
        """OPEN-3: the time itself, or when it opens next."""
        return next(self._from(time))[0] if self.spans else time

    def a_day(self) -> float:
        """Hours that it is open, on average over the week."""
        minutes = sum(closes - opens for opens, closes in self.spans)
        return minutes / (60 * WEEK_DAYS) if self.spans else DAY_HOURS

    def hours_between(self, first: int, last: int) -> float:
        """The same as between_ms, in hours."""
        return self.between_ms(first, last) / HOUR_MS


def asked_open_hours(work: Working) -> OpenHours:
    """The brewery's own. Raises: OutOfRange for times that are no pairs, or run into each other."""
    times = [int(one) for one in work.setting_list("bar_hours")]
    if len(times) % 2 == 1:
        raise _refused(len(times), len(times) - 1, len(times) + 1, IN_PAIRS)
    spans = list(zip(times[::2], times[1::2], strict=True))
    again = [*times[2::2], *(one + WEEK_MINUTES for one in times[:1])]
    for (opens, closes), next_opens in zip(spans, again, strict=True):
        if not opens < closes <= next_opens:
            raise _refused(closes, opens + 1, next_opens, CLOSES_LATER)
    if not spans:
        work.caution("every_hour_counts")
    return OpenHours(spans)


def _refused(given: int, low: int, high: int, why: str) -> OutOfRange:
    unit = "minutes after Monday's midnight" if why == CLOSES_LATER else "values"
    return OutOfRange(field="bar_hours", given=given, low=low, high=high, unit=unit, why=why)
