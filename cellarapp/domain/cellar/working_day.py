"""DAY: jobs fall inside the working day, never later than they must be done."""

from typing import NamedTuple

from cellarapp.domain.calendar import add_days, london_date, london_instant, london_minute
from cellarapp.domain.cellar.times import at_ms, ms_of
from cellarapp.domain.working import Working


class WorkingDay(NamedTuple):
    """Minutes after midnight at which work begins and ends, on a London clock."""

    begins: int
    ends: int

    def back_into(self, time: int) -> int:
        """The time itself, or the last end of work before it."""
        day, minute = london_date(at_ms(time)), london_minute(at_ms(time))
        if self.begins <= minute <= self.ends:
            return time
        return ms_of(london_instant(day if minute > self.ends else add_days(day, -1), self.ends))

    def on_into(self, time: int) -> int:
        """The time itself, or the next beginning of work after it."""
        day, minute = london_date(at_ms(time)), london_minute(at_ms(time))
        if self.begins <= minute <= self.ends:
            return time
        return ms_of(london_instant(day if minute < self.begins else add_days(day, 1), self.begins))

    def do_at(self, earliest: int, by: int) -> int:
        """DAY-1: the last working time that is early enough; failing that, between the two."""
        last = self.back_into(by)
        if last >= earliest:
            return last
        first = self.on_into(earliest)
        return first if first <= by else earliest


def asked_working_day(work: Working) -> WorkingDay:
    """The brewery's hours."""
    begins, ends = work.setting("working_day_starts_hour"), work.setting("working_day_ends_hour")
    return WorkingDay(int(begins * 60), int(ends * 60))
