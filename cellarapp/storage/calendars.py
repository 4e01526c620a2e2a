"""Secret addresses at which calendars are read."""

from dataclasses import asdict, dataclass

from sqlalchemy import Connection, delete, insert, select

from cellarapp.storage.account_models import CalendarAddress


@dataclass(frozen=True, slots=True)
class StoredCalendar:
    """One address. `secret` is a hash."""

    person: str
    secret: str
    made_at: str


COLUMNS = (CalendarAddress.person, CalendarAddress.secret, CalendarAddress.made_at)


class CalendarStore:
    """Keeps one address for each person."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def put(self, calendar: StoredCalendar) -> None:
        """Keep an address in place of the one that the person had."""
        self.forget(calendar.person)
        self._connection.execute(insert(CalendarAddress), [asdict(calendar)])

    def forget(self, person: str) -> bool:
        """Take a person's address away; whether there was one."""
        gone = delete(CalendarAddress).where(CalendarAddress.person == person)
        return self._connection.execute(gone).rowcount > 0

    def of_person(self, person: str) -> StoredCalendar | None:
        """The address of a person."""
        asked = select(*COLUMNS).where(CalendarAddress.person == person)
        row = self._connection.execute(asked).first()
        return None if row is None else StoredCalendar(*row)

    def of_secret(self, secret: str) -> StoredCalendar | None:
        """The address with the hash of a secret."""
        asked = select(*COLUMNS).where(CalendarAddress.secret == secret)
        row = self._connection.execute(asked).first()
        return None if row is None else StoredCalendar(*row)
