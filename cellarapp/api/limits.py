"""How often something may be tried, so that nothing can be guessed.

Counted in the memory of one process: several of them together allow as many times more, and a
restart begins anew.
"""

import math
import time

from flask import current_app, request
from limits import RateLimitItem, parse_many
from limits.storage import MemoryStorage
from limits.strategies import MovingWindowRateLimiter

from cellarapp.api.problems import ProblemError

AT_THE_DOOR = parse_many("10 per minute; 60 per hour")
"""Begin, pair and sign in, from one address."""
OF_ONE_NAME = parse_many("5 per minute; 30 per hour")
"""Sign in under one name, wherever from."""
ON_ONE_DEVICE = parse_many("5 per minute; 30 per hour")
"""PINs and passphrases."""
OF_ONE_REVOKED = parse_many("60 per minute")
"""Pushes of a device that was revoked, all of which would be held."""
OF_ONE_VISITOR = parse_many("60 per minute; 600 per hour")
"""Pages that need no sign-in, from one address. A customer takes two for each word it says."""
REPORTS_FROM_ONE = parse_many("5 per minute; 20 per hour")
"""Finders' reports from one address."""
REPORTS_OF_ALL = parse_many("200 per hour")
"""Finders' reports from everywhere: a person has to look at each."""
BY_ONE_LINK = parse_many("60 per minute; 200 per hour")
"""What a customer says of containers, by any of its links."""
OF_CALENDARS = parse_many("20 per minute; 200 per hour")
"""Calendars read from one address: a program asks a few times an hour."""


class Limits:
    """The counts of one application."""

    def __init__(self) -> None:
        self._limiter = MovingWindowRateLimiter(MemoryStorage())

    def count(self, limits: list[RateLimitItem], what: str, whose: str) -> None:
        """Count one more try. Raises: ProblemError when it is one too many."""
        for limit in limits:
            if not self._limiter.hit(limit, what, whose):
                resets_at = self._limiter.get_window_stats(limit, what, whose).reset_time
                raise ProblemError(
                    "too-many-tries",
                    "This was tried too often. Wait a little, then try again.",
                    retry_after_s=max(1, math.ceil(resets_at - time.time())),
                )


def count_try(limits: list[RateLimitItem], what: str, whose: str) -> None:
    """Count one more try of this application. Raises: ProblemError when it is one too many."""
    counts: Limits = current_app.extensions["cellarapp-limits"]
    counts.count(limits, what, whose)


def count_at_the_door() -> None:
    """Count one more try to be let in from this address. Raises: ProblemError."""
    count_from_here(AT_THE_DOOR, "door")


def count_from_here(limits: list[RateLimitItem], what: str) -> None:
    """Count one more try from the address that asks. Raises: ProblemError."""
    count_try(limits, what, request.remote_addr or "")
