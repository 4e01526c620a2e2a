"""Whether an entry is taken in as its author's, or held for an owner to decide.

What happened at the bench happened: an entry is never refused for want of a right.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from cellarapp.accounts.principal import Principal
from cellarapp.domain.entries import Entry
from cellarapp.domain.roles import Role, may_put_right, may_record
from cellarapp.ledger.problem import Problem
from cellarapp.storage.mapping import target_of
from cellarapp.storage.people import StoredPerson
from cellarapp.storage.work import Work

REVOKED = "The device was revoked. The entry is kept for an owner to decide."
NOT_THEIRS = "{name} has not signed on to the device. The entry is kept for an owner to decide."
NOT_THE_ROLES = "{name} may not record this. The entry is kept for an owner to decide."
NOT_THE_BRINGERS = "Nobody on the device that sent it may record this. An owner has to decide."


@dataclass(frozen=True, slots=True)
class Author:
    """A device that entries name as theirs, as the brewery knows it."""

    revoked: bool
    people: Sequence[StoredPerson]
    in_hand: StoredPerson | None


@dataclass(frozen=True, slots=True)
class RightsOf:
    """The rights of what one device hands over, its own entries and those of others.

    An entry of a device that is not known here counts as the bringer's own: a phone that has lost
    its storage begins anew under another id, and keeps its cookie.
    """

    bringer: str
    """Id of the device that hands over."""

    def __call__(self, work: Work, entries: Sequence[Entry]) -> list[Problem | None]:
        """For each entry why it is held, or None."""
        authors: dict[str, Author | None] = {}
        for device in {self.bringer, *(entry["device"] for entry in entries)}:
            authors[device] = _author(work, device)
        targets = _targets(work, entries)
        return [
            self._judge(entry, authors, targets.get(target_of(entry) or "")) for entry in entries
        ]

    def _judge(
        self, entry: Entry, authors: dict[str, Author | None], target: Entry | None
    ) -> Problem | None:
        bringer = authors[self.bringer]
        if bringer is None:  # it was held before there were people here
            return None
        author = authors[entry["device"]] or bringer
        if bringer.revoked or author.revoked:
            return Problem("revoked-device", REVOKED)
        name = entry["person"]
        person = author.in_hand
        if name:
            person = next((one for one in author.people if one.name == name), None)
        if person is None:
            return Problem("rights", NOT_THEIRS.format(name=name or "Nobody"))
        if not _may(person.role, person.name, entry, target):
            return Problem("rights", NOT_THE_ROLES.format(name=person.name))
        if not any(_may(one.role, person.name, entry, target) for one in bringer.people):
            return Problem("rights", NOT_THE_BRINGERS)
        return None


def _may(role: Role, author: str, entry: Entry, target: Entry | None) -> bool:
    """Whether an author's entry is one that this role may record."""
    if not may_record(role, entry["kind"]):
        return False
    if target_of(entry) is None:
        return True
    if target is None:  # it is not on record, so nobody can tell whose it is
        return may_put_right(role, entry["kind"], own=False)
    return may_put_right(role, target["kind"], own=_made_by(author, entry["device"], target))


def _targets(work: Work, entries: Sequence[Entry]) -> dict[str, Entry]:
    """What corrections among the entries are about, on record or handed over with them."""
    asked = {target for entry in entries if (target := target_of(entry)) is not None}
    found = {one.entry["id"]: one.entry for one in work.entries.by_id(asked)}
    return {entry["id"]: entry for entry in entries if entry["id"] in asked} | found


def _made_by(author: str, device: str, target: Entry) -> bool:
    """An entry with no name is of whoever has its device."""
    return target["person"] == author if target["person"] else target["device"] == device


def _author(work: Work, device_id: str) -> Author | None:
    device = work.devices.get(device_id)
    if device is None:
        return None
    people = work.devices.people([device_id])[device_id]
    in_hand = next((one for one in people if one.id == device.person), None)
    return Author(device.revoked_at is not None, people, in_hand)


def rights_of(who: Principal) -> RightsOf:
    """The rights of what a device hands over."""
    return RightsOf(who.device.id)
