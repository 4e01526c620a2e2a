"""What the rules refuse.

DomainError
├── NotANumber      the text cannot be a container's number
├── NotADate        the text is not a calendar date
└── NotATime        the text is not an instant in UTC

Each carries a slug and the facts; what status and words it gets over HTTP is decided in api/.
"""


class DomainError(Exception):
    """Something a rule cannot work with; `facts` says what it was given."""

    slug = "not-possible"

    def __init__(self, **facts: object) -> None:
        super().__init__(f"{self.slug}: {facts}")
        self.facts = facts


class NotANumber(DomainError):
    """A number is one to eight letters and digits, at least one of them a digit."""

    slug = "not-a-number"


class NotADate(DomainError):
    """A date is written year-month-day, as 2026-11-25."""

    slug = "not-a-date"


class NotATime(DomainError):
    """A time is written as 2026-11-25T09:40:00.000Z."""

    slug = "not-a-time"
