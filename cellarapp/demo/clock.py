"""The brewery's week, laid so that today is a day to rack, and times of day by a London clock."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta

from cellarapp.domain.calendar import LONDON

WEEKS = 62
"""How long the history is: a little over fourteen months."""
DAY = timedelta(days=1)


def at(day: date, hour: int, minute: float = 0) -> datetime:
    """The instant at which a London clock shows this time; minutes may run over the hour."""
    seconds = round(minute * 60)
    wall = datetime.combine(day, time(hour), LONDON) + timedelta(seconds=seconds)
    return wall.astimezone(UTC)


@dataclass(frozen=True)
class Week:
    """Which weekday is for what; Monday is 0.

    Racking is on today's weekday, or on Monday if today is at a weekend, so that whoever opens the
    demo finds casks washed and a gyle waiting.
    """

    today: date

    @property
    def first_day(self) -> date:
        return self.today - timedelta(weeks=WEEKS)

    @property
    def racking(self) -> int:
        weekday = self.today.weekday()
        return weekday if weekday < 5 else 0

    @property
    def kegging(self) -> int:
        """The rest of a gyle goes into kegs two working days after."""
        return (self.racking + 2) % 5

    @property
    def washing(self) -> int:
        return (self.racking - 1) % 5

    @property
    def deliveries(self) -> list[int]:
        """Two days for the van."""
        return sorted({0, 1, 2, 3, 4} - {self.racking, self.washing, self.kegging})

    @property
    def calling(self) -> int:
        """The day after the first delivery the office rings those who are late."""
        return (self.deliveries[0] + 1) % 5

    def brewed_on(self, racked_on: date) -> date:
        """Eight days before racking, or the Friday before where that is at a weekend."""
        day = racked_on - 8 * DAY
        return day - max(0, day.weekday() - 4) * DAY

    def closed(self, day: date) -> bool:
        """Christmas and New Year, unless that would spoil what is to be seen today."""
        feast = (day.month, day.day) in {(12, 25), (12, 26), (1, 1)}
        return feast and self.today - day > 60 * DAY
