"""Devices and the people who have proved themselves on them."""

from collections import defaultdict
from collections.abc import Collection
from dataclasses import asdict, dataclass
from typing import Any

from sqlalchemy import Connection, delete, insert, select, update

from cellarapp.storage.account_models import Device, DevicePerson, Person
from cellarapp.storage.batches import batches
from cellarapp.storage.people import COLUMNS as OF_PERSON
from cellarapp.storage.people import StoredPerson, person_from


@dataclass(frozen=True, slots=True)
class StoredDevice:
    """One device. `secret` is a hash, `person` the id of who has it in hand."""

    id: str
    name: str
    secret: str | None
    person: str
    paired_at: str
    last_seen_at: str
    waiting: int
    oldest_waiting_at: str | None
    app: str
    stepped_up_until: str | None
    revoked_at: str | None


COLUMNS = (
    Device.id, Device.name, Device.secret, Device.person, Device.paired_at, Device.last_seen_at,
    Device.waiting, Device.oldest_waiting_at, Device.app, Device.stepped_up_until,
    Device.revoked_at,
)  # fmt: skip


class DeviceStore:
    """Reads, adds and changes devices."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, device_id: str) -> StoredDevice | None:
        """The device of this id."""
        return self._first(Device.id == device_id)

    def of_secret(self, secret: str) -> StoredDevice | None:
        """The device whose secret has this hash."""
        return self._first(Device.secret == secret)

    def all(self) -> list[StoredDevice]:
        """Every device, the last seen first."""
        asked = select(*COLUMNS).order_by(Device.last_seen_at.desc(), Device.id)
        return [StoredDevice(*row) for row in self._connection.execute(asked)]

    def sign_out_of(self, person: str) -> None:
        """Take the secret of every device that somebody has in hand."""
        theirs = update(Device).where(Device.person == person)
        self._connection.execute(theirs.values(secret=None, stepped_up_until=None))

    def put(self, device: StoredDevice) -> None:
        """Add a device, or replace what is kept of it."""
        changed = update(Device).where(Device.id == device.id).values(asdict(device))
        if self._connection.execute(changed).rowcount == 0:
            self._connection.execute(insert(Device), [asdict(device)])

    def change(self, device_id: str, **columns: str | int | None) -> None:
        """Change single columns, so that nothing is undone that another one changed meanwhile."""
        self._connection.execute(update(Device).where(Device.id == device_id).values(columns))

    def people(self, devices: Collection[str]) -> dict[str, list[StoredPerson]]:
        """Who has proved themselves on each of the devices and is not retired."""
        found: dict[str, list[StoredPerson]] = defaultdict(list)
        for some in batches(sorted(devices)):
            asked = (
                select(DevicePerson.device, *OF_PERSON)
                .join(Person, Person.id == DevicePerson.person)
                .where(DevicePerson.device.in_(some), Person.retired_at.is_(None))
                .order_by(DevicePerson.proved_at, Person.id)
            )
            for device, *person in self._connection.execute(asked):
                found[device].append(person_from(person))
        return found

    def proved(self, device: str, person: str, at: str) -> None:
        """Note that somebody has proved themselves on a device."""
        self.not_proved(device, person)
        values = {"device": device, "person": person, "proved_at": at}
        self._connection.execute(insert(DevicePerson), [values])

    def not_proved(self, device: str, person: str | None = None) -> None:
        """Forget that somebody did, or everybody."""
        gone = delete(DevicePerson).where(DevicePerson.device == device)
        if person is not None:
            gone = gone.where(DevicePerson.person == person)
        self._connection.execute(gone)

    def proved_nowhere(self, person: str) -> None:
        """Forget that somebody did, on all devices."""
        self._connection.execute(delete(DevicePerson).where(DevicePerson.person == person))

    def _first(self, condition: Any) -> StoredDevice | None:
        row = self._connection.execute(select(*COLUMNS).where(condition)).first()
        return None if row is None else StoredDevice(*row)
