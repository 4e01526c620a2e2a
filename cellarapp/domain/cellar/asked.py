"""Days, times and words in what a rule is asked, looked at as the numbers are in domain/inputs."""

import re
from collections.abc import Mapping

from cellarapp.domain.calendar import parse_day, parse_instant
from cellarapp.domain.errors import NotADate, NotAmong, NotATime
from cellarapp.domain.inputs import Asked, shown

FIRST_DAY, LAST_DAY = "2000-01-01", "2100-12-31"
FIRST_AT, LAST_AT = f"{FIRST_DAY}T00:00:00.000Z", f"{LAST_DAY}T23:59:59.999Z"
SHAPES = ("cask", "keg")
SHAPE_WHY = "Casks and kegs keep and are served in their own ways."


class CellarAsked(Asked):
    """What a rule of the cellar was asked."""

    def __init__(self, inputs: object, *names: str, at: str = "") -> None:
        super().__init__(inputs, *names, at=at)
        self.given: Mapping[str, object] = self.inputs

    def day(self, field: str, low: str = FIRST_DAY, why: str = "A day.") -> str:
        """A day, not before the lowest. Raises: NotADate with field, range and reason."""
        value = self.given.get(field)
        try:
            if isinstance(value, str) and low <= value <= LAST_DAY:
                parse_day(value)
                return value
        except NotADate:
            pass
        raise NotADate(field=self.at + field, given=shown(value), low=low, high=LAST_DAY, why=why)

    def instant(self, field: str, low: str = FIRST_AT, why: str = "A time in UTC.") -> str:
        """A time, not before the earliest. Raises: NotATime with field, range and reason."""
        value = self.given.get(field)
        try:
            if isinstance(value, str) and low <= value <= LAST_AT:
                parse_instant(value)
                return value
        except NotATime:
            pass
        raise NotATime(field=self.at + field, given=shown(value), low=low, high=LAST_AT, why=why)

    def shape(self) -> str:
        """Cask or keg."""
        return self.choice("shape", SHAPES, SHAPE_WHY)

    def words(self, field: str, form: re.Pattern[str], why: str) -> str:
        """Text of a form. Raises: NotAmong, whose choices name the form."""
        value = self.given.get(field)
        if not isinstance(value, str) or not form.fullmatch(value):
            choices = [form.pattern]
            raise NotAmong(field=self.at + field, given=shown(value), choices=choices, why=why)
        return value

    def yes(self, field: str, why: str, *, default: bool) -> bool:
        """Yes or no, or the default where it was not answered."""
        return self.flag(field, why) if self.has(field) else default

    def maybe_number(self, field: str) -> float | None:
        """A number, or None where it was not answered."""
        return self.number(field) if self.has(field) else None

    def maybe_whole(self, field: str) -> int | None:
        """A whole number, or None where it was not answered."""
        return self.whole(field) if self.has(field) else None

    def maybe_day(self, field: str) -> str | None:
        """A day, or None where it was not answered."""
        return self.day(field) if self.has(field) else None

    def maybe_instant(self, field: str, low: str = FIRST_AT, why: str = "A time.") -> str | None:
        """A time, or None where it was not answered."""
        return self.instant(field, low, why) if self.has(field) else None
