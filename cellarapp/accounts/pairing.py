"""Letting a device in: the link that makes an owner, and the link that pairs a device."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import uuid4

from cellarapp.accounts.audit import COMMAND_LINE, note
from cellarapp.accounts.principal import Principal, principal_of, with_people
from cellarapp.accounts.refusal import Refusal
from cellarapp.accounts.secret import digest, new_secret, passphrase_hash
from cellarapp.domain.calendar import write_instant
from cellarapp.storage.devices import StoredDevice
from cellarapp.storage.invites import StoredInvite
from cellarapp.storage.people import StoredPerson
from cellarapp.storage.work import Work, reading, writing

PAIRING_LASTS = timedelta(minutes=10)
BEGINNING_LASTS = timedelta(hours=24)
STEP_UP_LASTS = timedelta(minutes=15)


@dataclass(frozen=True, slots=True)
class Asking:
    """The device that asks to be let in, and the cookie that it holds already, if any."""

    id: str
    name: str
    cookie: str


@dataclass(frozen=True, slots=True)
class LetIn:
    """A device that was let in, and the secret for its cookie."""

    secret: str
    principal: Principal


@dataclass(frozen=True, slots=True)
class Link:
    """What goes into a link, and until when it works."""

    token: str
    expires_at: str


def is_set_up() -> bool:
    """Whether there is an owner."""
    with reading() as work:
        return work.people.owners() > 0


def link_to_begin(now: datetime) -> Link:
    """For an owner: the first, a further one, or one who has forgotten the passphrase.

    Whoever can run commands on the server is trusted with that. An earlier link works no more.
    """
    with writing() as work:
        work.invites.forget(before=write_instant(now), making_owners=True)
        note(work, COMMAND_LINE, now, "link to begin")
        return _link(work, None, now + BEGINNING_LASTS)


def link_to_pair(who: Principal, person_name: str, now: datetime) -> Link:
    """For a device of somebody, who will have it in hand. Raises: Refusal."""
    with writing() as work:
        work.invites.forget(before=write_instant(now))
        person = work.people.named(person_name)
        if person is None or person.retired_at is not None:
            raise Refusal("not-found", "Nobody of this name records here.", field="person")
        note(work, who, now, "link to pair", person.name)
        return _link(work, person.id, now + PAIRING_LASTS)


def begin(token: str, name: str, passphrase: str, asking: Asking, now: datetime) -> LetIn:
    """Make an owner, or give one a new passphrase, and let their device in. Raises: Refusal."""
    hashed = passphrase_hash(passphrase, name)
    with writing() as work:
        _spend(work, token, now, for_owner=True)
        owner = work.people.named(name)
        if owner is None:
            owner = StoredPerson(
                str(uuid4()), name, "owner", hashed, None, write_instant(now), None
            )
            work.people.add(owner)
        elif owner.role == "owner" and owner.retired_at is None:
            work.people.change(owner.id, passphrase=hashed)
        else:
            raise Refusal("name-taken", field="name")
        return let_in(work, asking, owner, now, "began", passphrase_given=True)


def pair(token: str, asking: Asking, now: datetime) -> LetIn:
    """Let a device in by a link that an owner made. Raises: Refusal."""
    with writing() as work:
        invite = _spend(work, token, now, for_owner=False)
        person = work.people.get(invite.person or "")
        if person is None or person.retired_at is not None:
            raise Refusal("link-spent")
        return let_in(work, asking, person, now, "paired", passphrase_given=False)


def let_in(
    work: Work,
    asking: Asking,
    person: StoredPerson,
    now: datetime,
    what: str,
    *,
    passphrase_given: bool,
) -> LetIn:
    """Give a device a new secret, with this person in hand.

    Whoever holds the cookie of the device goes on with its people. Without it anybody might give a
    device's id, which is no secret, so nobody else has proved themselves then.
    """
    at, secret = write_instant(now), new_secret()
    held = principal_of(work, asking.cookie)
    before = work.devices.get(asking.id)
    if held is not None and held.device.id != asking.id:
        work.devices.change(held.device.id, secret=None)
    if held is None or held.device.id != asking.id:
        work.devices.not_proved(asking.id)
    device = StoredDevice(
        id=asking.id,
        name=asking.name,
        secret=digest(secret),
        person=person.id,
        paired_at=at,
        last_seen_at=at,
        waiting=0 if before is None else before.waiting,
        oldest_waiting_at=None if before is None else before.oldest_waiting_at,
        app="" if before is None else before.app,
        stepped_up_until=write_instant(now + STEP_UP_LASTS) if passphrase_given else None,
        revoked_at=None,
    )
    work.devices.put(device)
    work.devices.proved(device.id, person.id, at)
    principal = with_people(work, device)
    if principal is None:
        raise LookupError("somebody was let in who is retired")
    note(work, principal, now, what, device.name)
    return LetIn(secret, principal)


def _link(work: Work, person: str | None, expires: datetime) -> Link:
    token = new_secret()
    work.invites.add(StoredInvite(digest(token), person, write_instant(expires)))
    return Link(token, write_instant(expires))


def _spend(work: Work, token: str, now: datetime, *, for_owner: bool) -> StoredInvite:
    """The link of this token, which works no more. Raises: Refusal."""
    invite = work.invites.spend(digest(token))
    if invite is None or (invite.person is None) is not for_owner:
        raise Refusal("link-spent")
    if invite.expires_at <= write_instant(now):
        raise Refusal("link-spent")
    return invite
