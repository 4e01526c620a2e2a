"""Who did what, only ever added to."""

from dataclasses import dataclass

from sqlalchemy import Connection, insert, select

from cellarapp.storage.account_models import Audit


@dataclass(frozen=True, slots=True)
class StoredAudit:
    """One line."""

    id: int
    at: str
    person: str | None
    device: str | None
    what: str
    about: str


class AuditStore:
    """Adds lines and reads them."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(
        self, *, at: str, person: str | None, device: str | None, what: str, about: str
    ) -> None:
        """Add a line."""
        values = {"at": at, "person": person, "device": device, "what": what, "about": about}
        self._connection.execute(insert(Audit), [values])

    def before(self, line: int | None, limit: int) -> list[StoredAudit]:
        """The last `limit` lines before a line, or of all, newest first."""
        columns = (Audit.id, Audit.at, Audit.person, Audit.device, Audit.what, Audit.about)
        asked = select(*columns).order_by(Audit.id.desc()).limit(limit)
        if line is not None:
            asked = asked.where(Audit.id < line)
        return [StoredAudit(*row) for row in self._connection.execute(asked)]
