"""People, by name and by id."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, TypedDict

from sqlalchemy import Connection, func, insert, select, update

from cellarapp.domain.roles import Role
from cellarapp.storage.account_models import Person


class PinCheck(TypedDict):
    """What it takes to know a PIN again. `salt` and `hash` are base64."""

    salt: str
    iterations: int
    hash: str


@dataclass(frozen=True, slots=True)
class StoredPerson:
    """One person. `passphrase` is an argon2id hash."""

    id: str
    name: str
    role: Role
    passphrase: str | None
    pin: PinCheck | None
    created_at: str
    retired_at: str | None


COLUMNS = (
    Person.id, Person.name, Person.role, Person.passphrase, Person.pin, Person.created_at,
    Person.retired_at,
)  # fmt: skip


class PersonStore:
    """Reads, adds and changes people."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, person_id: str) -> StoredPerson | None:
        """The person of this id."""
        return self._first(Person.id == person_id)

    def named(self, name: str) -> StoredPerson | None:
        """The person of this name, whatever its case."""
        return self._first(Person.name_key == name_key(name))

    def all(self) -> list[StoredPerson]:
        """Everybody, in the order in which they came."""
        asked = select(*COLUMNS).order_by(Person.created_at, Person.id)
        return [person_from(row) for row in self._connection.execute(asked)]

    def owners(self) -> int:
        """How many owners there are who are not retired."""
        asked = select(func.count()).where(Person.role == "owner", Person.retired_at.is_(None))
        return self._connection.execute(asked).scalar_one()

    def add(self, person: StoredPerson) -> None:
        """Add somebody. The name must be free."""
        self._connection.execute(insert(Person), [_values(person)])

    def change(self, person_id: str, **columns: Any) -> None:
        """Change single columns of somebody: role, passphrase, pin or retired_at."""
        if "pin" in columns:
            columns["pin"] = _pin_text(columns["pin"])
        self._connection.execute(update(Person).where(Person.id == person_id).values(columns))

    def _first(self, condition: Any) -> StoredPerson | None:
        row = self._connection.execute(select(*COLUMNS).where(condition)).first()
        return None if row is None else person_from(row)


def name_key(name: str) -> str:
    """A name as it is compared."""
    return name.casefold()


def person_from(row: Iterable[Any]) -> StoredPerson:
    """A person of these columns."""
    person_id, name, role, passphrase, pin, created_at, retired_at = row
    check = None if pin is None else json.loads(pin)
    return StoredPerson(person_id, name, role, passphrase, check, created_at, retired_at)


def _values(person: StoredPerson) -> dict[str, Any]:
    return {
        "id": person.id,
        "name": person.name,
        "name_key": name_key(person.name),
        "role": person.role,
        "passphrase": person.passphrase,
        "pin": _pin_text(person.pin),
        "created_at": person.created_at,
        "retired_at": person.retired_at,
    }


def _pin_text(pin: PinCheck | None) -> str | None:
    return None if pin is None else json.dumps(pin)
