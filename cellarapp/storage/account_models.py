"""The tables of people and devices, and of what else somebody is let in by.

person, device, device_person, invite, calendar_address, audit. Secrets are kept as hashes only;
whoever reads the database cannot sign in with what is in it.
"""

from sqlalchemy import BigInteger, ForeignKey, Integer, String, Text
from sqlalchemy.orm import Mapped, mapped_column

from cellarapp.storage.db import Base
from cellarapp.storage.models import ID, INSTANT

HASH = String(64)
"""SHA-256, hexadecimal."""
NAME = String(60)


class Person(Base):
    """Somebody who records. Entries carry the name: it is never changed or given again."""

    __tablename__ = "person"

    id: Mapped[str] = mapped_column(ID, primary_key=True)
    name: Mapped[str] = mapped_column(NAME, unique=True)
    name_key: Mapped[str] = mapped_column(String(180), unique=True)
    """The name without regard to case: two that look alike are one."""
    role: Mapped[str] = mapped_column(String(10))
    passphrase: Mapped[str | None] = mapped_column(String(200))
    """Argon2id, in its usual text form."""
    pin: Mapped[str | None] = mapped_column(Text)
    """Salt, iterations and PBKDF2 hash as JSON: what a device needs to know a PIN again."""
    created_at: Mapped[str] = mapped_column(INSTANT)
    retired_at: Mapped[str | None] = mapped_column(INSTANT)


class Device(Base):
    """A phone or tablet that was paired."""

    __tablename__ = "device"

    id: Mapped[str] = mapped_column(ID, primary_key=True)
    """Made on the device; entries carry it."""
    name: Mapped[str] = mapped_column(NAME)
    secret: Mapped[str | None] = mapped_column(HASH, unique=True)
    """Hash of what its cookie holds; none once it has signed out."""
    person: Mapped[str] = mapped_column(ForeignKey("person.id", name="device_person_in_hand"))
    """Who has it in hand, as far as the brewery was told."""
    paired_at: Mapped[str] = mapped_column(INSTANT)
    last_seen_at: Mapped[str] = mapped_column(INSTANT)
    waiting: Mapped[int] = mapped_column(Integer)
    """How many entries were left on it after its last push."""
    oldest_waiting_at: Mapped[str | None] = mapped_column(INSTANT)
    app: Mapped[str] = mapped_column(NAME)
    """The build of the app that it last pushed with."""
    stepped_up_until: Mapped[str | None] = mapped_column(INSTANT)
    """Until when a passphrase given on it holds for the owner's doings."""
    revoked_at: Mapped[str | None] = mapped_column(INSTANT)


class DevicePerson(Base):
    """Somebody who has proved on a device who they are."""

    __tablename__ = "device_person"

    device: Mapped[str] = mapped_column(
        ForeignKey("device.id", name="device_person_on"), primary_key=True
    )
    person: Mapped[str] = mapped_column(
        ForeignKey("person.id", name="device_person_who"), primary_key=True
    )
    proved_at: Mapped[str] = mapped_column(INSTANT)


class Invite(Base):
    """A link that lets somebody in once."""

    __tablename__ = "invite"

    token: Mapped[str] = mapped_column(HASH, primary_key=True)
    """Hash of what the link holds."""
    person: Mapped[str | None] = mapped_column(ForeignKey("person.id", name="invite_for"))
    """Whom it pairs a device for; none where it makes an owner."""
    expires_at: Mapped[str] = mapped_column(INSTANT)


class CalendarAddress(Base):
    """The secret address at which somebody's calendar program reads the jobs due."""

    __tablename__ = "calendar_address"

    person: Mapped[str] = mapped_column(
        ForeignKey("person.id", name="calendar_address_of"), primary_key=True
    )
    secret: Mapped[str] = mapped_column(HASH, unique=True)
    """Hash of what the address holds."""
    made_at: Mapped[str] = mapped_column(INSTANT)


class Audit(Base):
    """Who did what, only ever added to."""

    __tablename__ = "audit"

    id: Mapped[int] = mapped_column(
        BigInteger().with_variant(Integer, "sqlite"), primary_key=True, autoincrement=True
    )
    at: Mapped[str] = mapped_column(INSTANT)
    person: Mapped[str | None] = mapped_column(NAME)
    """By name; none for what the command line did, or somebody who was not let in."""
    device: Mapped[str | None] = mapped_column(ID)
    what: Mapped[str] = mapped_column(String(40))
    about: Mapped[str] = mapped_column(String(200))
