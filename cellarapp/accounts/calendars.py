"""The secret address at which somebody's calendar program reads the jobs due.

Calendar programs cannot sign in, so the address itself is the key: 256 random bits of which the
server keeps the hash. It is shown once, when it is made; making another ends it, and so does
retiring whoever has it, or a role that has nothing to do with the cellar.
"""

import hmac
from datetime import datetime

from cellarapp.accounts.audit import note
from cellarapp.accounts.doors import IN_THE_CELLAR
from cellarapp.accounts.principal import MOST_SECRET, Principal
from cellarapp.accounts.secret import digest, new_secret
from cellarapp.domain.calendar import write_instant
from cellarapp.storage.calendars import StoredCalendar
from cellarapp.storage.work import reading, writing


def made_at(who: Principal) -> str | None:
    """When the address of whoever has the device in hand was made; None when there is none."""
    with reading() as work:
        found = work.calendars.of_person(who.person.id)
    return None if found is None else found.made_at


def new_address(who: Principal, now: datetime) -> str:
    """The secret of a new address; the one before works no more."""
    secret = new_secret()
    with writing() as work:
        work.calendars.put(StoredCalendar(who.person.id, digest(secret), write_instant(now)))
        note(work, who, now, "calendar address made", who.person.name)
    return secret


def end_address(who: Principal, now: datetime) -> None:
    """The address works no more."""
    with writing() as work:
        if work.calendars.forget(who.person.id):
            note(work, who, now, "calendar address ended", who.person.name)


def is_somebodys(secret: str) -> bool:
    """Whether this is the address of somebody who still works in the cellar."""
    if not 0 < len(secret) <= MOST_SECRET:
        return False
    hashed = digest(secret)
    with reading() as work:
        found = work.calendars.of_secret(hashed)
        person = None if found is None else work.people.get(found.person)
    if found is None or person is None or not hmac.compare_digest(found.secret, hashed):
        return False
    return person.retired_at is None and person.role in IN_THE_CELLAR
