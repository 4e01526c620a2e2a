"""The owner adds people, gives them a role, a passphrase and a PIN, and retires them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from uuid import uuid4

from cellarapp.accounts.audit import note
from cellarapp.accounts.principal import Principal
from cellarapp.accounts.refusal import Refusal
from cellarapp.accounts.secret import passphrase_hash, pin_check
from cellarapp.domain.calendar import write_instant
from cellarapp.domain.roles import Role
from cellarapp.storage.people import PinCheck, StoredPerson
from cellarapp.storage.work import Work, reading, writing


@dataclass(frozen=True, slots=True)
class Given:
    """What the owner says of somebody; none of it has to be said."""

    role: Role | None = None
    passphrase: str | None = None
    pin: str | None = None
    retired: bool | None = None


def everybody() -> list[StoredPerson]:
    """All people, retired ones too."""
    with reading() as work:
        return work.people.all()


def make_up(people: Mapping[str, Role], now: datetime) -> None:
    """People of the made-up brewery, who need prove nothing; those who are there already stay."""
    with writing() as work:
        for name, role in people.items():
            if work.people.named(name) is None:
                at = write_instant(now)
                work.people.add(StoredPerson(str(uuid4()), name, role, None, None, at, None))


def add(who: Principal, name: str, role: Role, given: Given, now: datetime) -> StoredPerson:
    """Somebody new. Raises: Refusal."""
    person = StoredPerson(
        id=str(uuid4()),
        name=name,
        role=role,
        passphrase=_passphrase(given.passphrase, name),
        pin=_pin(given.pin),
        created_at=write_instant(now),
        retired_at=None,
    )
    _owner_has_passphrase(person.role, person.passphrase)
    with writing() as work:
        if work.people.named(name) is not None:
            raise Refusal("name-taken", field="name")
        work.people.add(person)
        note(work, who, now, "person added", f"{name}, {role}")
    return person


def change(who: Principal, person_id: str, given: Given, now: datetime) -> StoredPerson:
    """Change what is said of somebody. Raises: Refusal."""
    with reading() as work:
        before = _there(work, person_id)
    passphrase, pin = _passphrase(given.passphrase, before.name), _pin(given.pin)
    with writing() as work:
        before = _there(work, person_id)
        role = given.role or before.role
        _owner_has_passphrase(role, passphrase or before.passphrase)
        if passphrase is not None:
            work.people.change(person_id, passphrase=passphrase)
            note(work, who, now, "passphrase set", before.name)
        if pin is not None:
            work.people.change(person_id, pin=pin)
            note(work, who, now, "PIN set", before.name)
        if role != before.role:
            work.people.change(person_id, role=role)
            note(work, who, now, "role changed", f"{before.name}, {before.role} to {role}")
        if given.retired is not None and given.retired is not (before.retired_at is not None):
            _retire(work, before, write_instant(now) if given.retired else None)
            note(work, who, now, "retired" if given.retired else "taken back", before.name)
        if work.people.owners() == 0:
            raise Refusal("last-owner")
        return _there(work, person_id)


def _retire(work: Work, person: StoredPerson, at: str | None) -> None:
    """Devices that somebody has in hand who retires are signed out: nobody else was told."""
    work.people.change(person.id, retired_at=at)
    if at is not None:
        work.devices.proved_nowhere(person.id)
        work.devices.sign_out_of(person.id)


def _there(work: Work, person_id: str) -> StoredPerson:
    person = work.people.get(person_id)
    if person is None:
        raise Refusal("not-found", "There is nobody of this id.")
    return person


def _owner_has_passphrase(role: Role, passphrase: str | None) -> None:
    if role == "owner" and passphrase is None:
        raise Refusal("malformed-request", "An owner needs a passphrase.", field="passphrase")


def _passphrase(given: str | None, name: str) -> str | None:
    return None if given is None else passphrase_hash(given, name)


def _pin(given: str | None) -> PinCheck | None:
    return None if given is None else pin_check(given)
