"""LIFE-23: when an entry takes effect, decided once at its receipt."""

from datetime import UTC, datetime, timedelta

import pytest

from cellarapp.ledger.clock import take_effect, write_any

RECEIVED = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
S = timedelta(seconds=1)


@pytest.mark.parametrize(
    ("happened_at", "offset", "effective_at", "clock"),
    [
        (RECEIVED - 3600 * S, 0 * S, RECEIVED - 3600 * S, "ok"),
        (RECEIVED - 3600 * S, 120 * S, RECEIVED - 3600 * S, "ok"),
        (RECEIVED - 3600 * S, 121 * S, RECEIVED - 3479 * S, "corrected"),
        (RECEIVED + 7200 * S, -10_800 * S, RECEIVED - 3600 * S, "corrected"),
        (RECEIVED + 300 * S, 0 * S, RECEIVED, "ok"),
        (RECEIVED + 301 * S, 0 * S, RECEIVED, "impossible"),
        (datetime(2000, 1, 1, tzinfo=UTC), 0 * S, datetime(2000, 1, 1, tzinfo=UTC), "ok"),
        (datetime(1999, 12, 31, 23, 59, 59, tzinfo=UTC), 0 * S, RECEIVED, "impossible"),
        (datetime(9999, 12, 31, tzinfo=UTC), timedelta(days=9), RECEIVED, "impossible"),
        (datetime(1, 1, 1, tzinfo=UTC), timedelta(days=-9), RECEIVED, "impossible"),
        (RECEIVED - 5 * S, timedelta(days=740_000), RECEIVED, "impossible"),
    ],
)
def test_effect_is(
    happened_at: datetime, offset: timedelta, effective_at: datetime, clock: str
) -> None:
    """A small residual is the network; a large one corrects; what cannot be is the receipt."""
    effect = take_effect(happened_at, offset=offset, received_at=RECEIVED)
    assert effect == (effective_at, clock)


def test_nothing_takes_effect_after_its_receipt() -> None:
    """Whatever the device says."""
    for ahead in range(-400, 401, 10):
        for offset in (-500, -100, 0, 100, 500):
            effect = take_effect(RECEIVED + ahead * S, offset=offset * S, received_at=RECEIVED)
            assert effect.effective_at <= RECEIVED


def test_first_years_are_written_with_four_digits() -> None:
    """All times sort as text, also those of a device whose clock began at nothing."""
    assert write_any(datetime(1, 2, 3, tzinfo=UTC)) == "0001-02-03T00:00:00.000Z"
