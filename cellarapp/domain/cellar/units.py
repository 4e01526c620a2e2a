"""Units of time and temperature that are exact by definition."""

from datetime import UTC, datetime

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
MINUTE_MS = 60_000
HOUR_MS = 60 * MINUTE_MS
DAY_HOURS = 24
HALF_DAY_HOURS = 12
DAY_MINUTES = 60 * DAY_HOURS
WEEK_DAYS = 7
WEEK_MINUTES = WEEK_DAYS * DAY_MINUTES
YEAR_MONTHS = 12
THIS_CENTURY = 2000


def celsius(temp_f: float) -> float:
    """The same temperature in degrees Celsius."""
    return (temp_f - 32) / 1.8
