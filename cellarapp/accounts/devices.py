"""The owner sees, names and revokes devices; a device says how much waits on it."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from cellarapp.accounts.audit import note
from cellarapp.accounts.principal import Principal
from cellarapp.accounts.refusal import Refusal
from cellarapp.domain.calendar import parse_instant, write_instant
from cellarapp.storage.devices import StoredDevice
from cellarapp.storage.people import StoredPerson
from cellarapp.storage.work import Work, reading, writing

SEEN_AGAIN = timedelta(minutes=1)
"""A device that asks more often is noted only so often: every note is a write."""


@dataclass(frozen=True, slots=True)
class Known:
    """A device and who has proved themselves on it."""

    device: StoredDevice
    people: list[StoredPerson]


@dataclass(frozen=True, slots=True)
class Waiting:
    """What a device says of itself with a push."""

    app: str
    waiting: int | None
    oldest_waiting_at: str | None


def all_devices() -> list[Known]:
    """Every device that was ever paired, the last seen first."""
    with reading() as work:
        devices = work.devices.all()
        people = work.devices.people([one.id for one in devices])
    return [Known(one, people[one.id]) for one in devices]


def rename(who: Principal, device_id: str, name: str, now: datetime) -> Known:
    """Give a device another name. Raises: Refusal."""
    with writing() as work:
        before = _there(work, device_id)
        work.devices.change(device_id, name=name)
        note(work, who, now, "device named", f"{before.name} to {name}")
        return _known(work, device_id)


def revoke(who: Principal, device_id: str, now: datetime) -> Known:
    """Shut a device out. What it still sends is held. Raises: Refusal."""
    with writing() as work:
        device = _there(work, device_id)
        if device.revoked_at is None:
            work.devices.change(device_id, revoked_at=write_instant(now), stepped_up_until=None)
            note(work, who, now, "device revoked", device.name)
        return _known(work, device_id)


def is_due(who: Principal, now: datetime) -> bool:
    """Whether it is time to note again that a device was seen."""
    seen = who.device.last_seen_at
    return seen != "" and not abs(now - parse_instant(seen)) < SEEN_AGAIN


def note_seen(who: Principal, now: datetime, said: Waiting | None = None) -> None:
    """Note that a device was seen, and what it said of itself."""
    columns: dict[str, str | int | None] = {"last_seen_at": write_instant(now)}
    if said is not None:
        columns["app"] = said.app
        if said.waiting is not None:
            columns |= {"waiting": said.waiting, "oldest_waiting_at": said.oldest_waiting_at}
    with writing() as work:
        work.devices.change(who.device.id, **columns)


def says_something_new(who: Principal, said: Waiting) -> bool:
    """Whether a device says another thing of itself than the last time."""
    device = who.device
    if said.app != device.app:
        return True
    return said.waiting is not None and (said.waiting, said.oldest_waiting_at) != (
        device.waiting,
        device.oldest_waiting_at,
    )


def _there(work: Work, device_id: str) -> StoredDevice:
    device = work.devices.get(device_id)
    if device is None:
        raise Refusal("not-found", "There is no device of this id.")
    return device


def _known(work: Work, device_id: str) -> Known:
    return Known(_there(work, device_id), work.devices.people([device_id])[device_id])
