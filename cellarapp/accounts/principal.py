"""Who asks: a device, the person who has it in hand, and all who have proved themselves on it."""

import hmac
import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from cellarapp.accounts.refusal import Refusal
from cellarapp.accounts.secret import digest
from cellarapp.domain.calendar import write_instant
from cellarapp.ledger.canonical import document
from cellarapp.storage.devices import StoredDevice
from cellarapp.storage.people import StoredPerson
from cellarapp.storage.work import Work, reading

NOBODYS_ID = "00000000-0000-0000-0000-000000000000"
"""Of the device that looks at the demo."""
MOST_SECRET = 100
"""Characters of a cookie that are looked at; ours has 43."""


@dataclass(frozen=True, slots=True)
class Principal:
    """A device that was let in."""

    device: StoredDevice
    person: StoredPerson
    people: Sequence[StoredPerson]

    def stepped_up(self, now: datetime) -> bool:
        """Whether a passphrase was given on it a short while ago."""
        until = self.device.stepped_up_until
        return until is not None and write_instant(now) < until

    def me(self) -> dict[str, Any]:
        """What the device is told about itself."""
        told = self._lasting()
        return told | {
            "stepped_up_until": self.device.stepped_up_until,
            "version": self.version,
        }

    @property
    def version(self) -> int:
        """Another number when `me` says something else, but for the time of stepping up."""
        return zlib.crc32(document(self._lasting()).encode())

    def _lasting(self) -> dict[str, Any]:
        return {
            "device": {"id": self.device.id, "name": self.device.name},
            "person": {"name": self.person.name, "role": self.person.role},
            "people": [
                {"name": one.name, "role": one.role, "pin_check": one.pin} for one in self.people
            ],
        }


def find_principal(secret: str) -> Principal:
    """The device that holds this secret; it may be revoked.

    Raises: Refusal when nobody does.
    """
    with reading() as work:
        found = principal_of(work, secret)
        if found is not None:
            return found
        if work.people.owners() == 0:
            raise Refusal("not-set-up")
    raise Refusal("not-paired")


def principal_of(work: Work, secret: str) -> Principal | None:
    """The device that holds this secret, or None."""
    if not 0 < len(secret) <= MOST_SECRET:
        return None
    hashed = digest(secret)
    device = work.devices.of_secret(hashed)
    if device is None or not hmac.compare_digest(device.secret or "", hashed):
        return None
    return with_people(work, device)


def with_people(work: Work, device: StoredDevice) -> Principal | None:
    """A device with its people; None when nobody has it in hand who may."""
    people = work.devices.people([device.id])[device.id]
    in_hand = next((one for one in people if one.id == device.person), None)
    return None if in_hand is None else Principal(device, in_hand, people)


def demo_principal() -> Principal:
    """Whoever looks at the demo is its owner."""
    with reading() as work:
        people = [one for one in work.people.all() if one.retired_at is None]
    owner = next((one for one in people if one.role == "owner"), None)
    if owner is None:
        owner = StoredPerson(NOBODYS_ID, "Owner", "owner", None, None, "", None)
        people = [owner]
    device = StoredDevice(
        id=NOBODYS_ID,
        name="This browser",
        secret=None,
        person=owner.id,
        paired_at="",
        last_seen_at="",
        waiting=0,
        oldest_waiting_at=None,
        app="",
        stepped_up_until="9999-12-31T23:59:59.999Z",
        revoked_at=None,
    )
    return Principal(device, owner, people)
