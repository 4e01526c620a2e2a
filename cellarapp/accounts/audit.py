"""Notes who did what, within the transaction that does it."""

from datetime import datetime

from cellarapp.accounts.principal import Principal
from cellarapp.domain.calendar import write_instant
from cellarapp.storage.audit import StoredAudit
from cellarapp.storage.work import Work, reading, writing

LINES_A_PAGE = 100
COMMAND_LINE = None
"""In place of a principal, for what the command line does."""


def note(work: Work, who: Principal | None, now: datetime, what: str, about: str = "") -> None:
    """Add a line. `about` never holds a secret."""
    work.audit.add(
        at=write_instant(now),
        person=None if who is None else who.person.name,
        device=None if who is None else who.device.id,
        what=what,
        about=about,
    )


def note_alone(who: Principal | None, now: datetime, what: str, about: str = "") -> None:
    """Add a line about something that changed nothing, such as a wrong passphrase."""
    with writing() as work:
        note(work, who, now, what, about)


def lines(before: int | None) -> list[StoredAudit]:
    """A page of lines, newest first."""
    with reading() as work:
        return work.audit.before(before, LINES_A_PAGE)
