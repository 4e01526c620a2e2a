"""Signing in again, switching to another person, giving the passphrase once more, signing out."""

from datetime import datetime

from cellarapp.accounts.audit import note, note_alone
from cellarapp.accounts.pairing import STEP_UP_LASTS, Asking, LetIn, let_in
from cellarapp.accounts.principal import Principal, with_people
from cellarapp.accounts.refusal import Refusal
from cellarapp.accounts.secret import passphrase_fits, pin_fits
from cellarapp.domain.calendar import write_instant
from cellarapp.storage.people import StoredPerson
from cellarapp.storage.work import Work, reading, writing


def sign_in(name: str, passphrase: str, asking: Asking, now: datetime) -> LetIn:
    """Let a device in by name and passphrase, months later. Raises: Refusal."""
    person = _named(name)
    if not passphrase_fits(person.passphrase if person else None, passphrase) or person is None:
        note_alone(None, now, "passphrase was wrong", name)
        raise Refusal("wrong-passphrase")
    with writing() as work:
        device = work.devices.get(asking.id)
        if device is not None and device.revoked_at is not None:
            raise Refusal("revoked")
        return let_in(work, asking, person, now, "signed in", passphrase_given=True)


def switch(who: Principal, name: str, pin: str, now: datetime) -> Principal:
    """Somebody takes the device in hand. Raises: Refusal."""
    person = _named(name)
    if not pin_fits(person.pin if person else None, pin) or person is None:
        note_alone(who, now, "PIN was wrong", name)
        raise Refusal("wrong-pin")
    with writing() as work:
        work.devices.proved(who.device.id, person.id, write_instant(now))
        if person.id != who.person.id:
            work.devices.change(who.device.id, person=person.id, stepped_up_until=None)
            note(work, who, now, "handed over", person.name)
        return _as_it_is(work, who)


def give_passphrase(who: Principal, passphrase: str, now: datetime) -> Principal:
    """Whoever has the device in hand proves it once more, for a short while. Raises: Refusal."""
    if not passphrase_fits(who.person.passphrase, passphrase):
        note_alone(who, now, "passphrase was wrong", who.person.name)
        raise Refusal("wrong-passphrase")
    with writing() as work:
        until = write_instant(now + STEP_UP_LASTS)
        work.devices.change(who.device.id, stepped_up_until=until)
        note(work, who, now, "passphrase given")
        return _as_it_is(work, who)


def sign_out(who: Principal, now: datetime) -> None:
    """The device's cookie is nobody's from now on."""
    with writing() as work:
        work.devices.not_proved(who.device.id)
        note(work, who, now, "signed out", who.device.name)
        work.devices.change(who.device.id, secret=None, stepped_up_until=None)


def _as_it_is(work: Work, who: Principal) -> Principal:
    """The device as it is now. Raises: Refusal when it was shut out meanwhile."""
    device = work.devices.get(who.device.id)
    found = None if device is None else with_people(work, device)
    if found is None:
        raise Refusal("not-paired")
    return found


def _named(name: str) -> StoredPerson | None:
    with reading() as work:
        person = work.people.named(name)
    return None if person is None or person.retired_at is not None else person
