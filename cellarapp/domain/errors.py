"""What the rules refuse.

DomainError
├── NotANumber      the text cannot be a container's number
├── NotADate        the text is not a calendar date
├── NotATime        the text is not an instant in UTC
├── NotAnAssetNumber  the text is no GRAI, or there can be none
├── OutOfRange      a quantity is missing, no number, or beyond what a rule works with
└── NotAmong        an answer is none of those that a rule knows

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


class NotAnAssetNumber(DomainError):
    """Not a GRAI with the right check digit, or a company prefix that leaves no room for one."""

    slug = "not-an-asset-number"


class OutOfRange(DomainError):
    """A quantity is missing, is no number, or lies beyond what the rule works with.

    Facts: field, given, low, high, unit, why.
    """

    slug = "out-of-range"


class NotAmong(DomainError):
    """An answer is none of those that the rule knows. Facts: field, given, choices, why."""

    slug = "not-among"
