"""The tables of the ledger: head, entry, held, row.

JSON is kept as canonical text: what is compared, hashed and sent is byte for byte what is stored,
on every database. Times are text in the one form in which they sort.
"""

from typing import Any, Literal

from sqlalchemy import BigInteger, CheckConstraint, Index, Integer, String, Text, text
from sqlalchemy.orm import Mapped, mapped_column

from cellarapp.storage.db import Base

Decision = Literal["take", "put_aside"]


def text_up_to(length: int) -> String:
    """Text that sorts by its code points, whatever the language of the database."""
    return String(length).with_variant(String(length, collation="C"), "postgresql")


INSTANT = text_up_to(24)
ID = text_up_to(36)


def where_given(column: str) -> Any:
    """An index on a column that most rows leave empty: it holds the others only."""
    given = text(f"{column} IS NOT NULL")
    return Index(f"entry_{column}", column, sqlite_where=given, postgresql_where=given)


class Head(Base):
    """The one row that says how far the ledger has come."""

    __tablename__ = "head"
    __table_args__ = (CheckConstraint("id = 1", name="only_one"),)

    id: Mapped[int] = mapped_column(Integer, primary_key=True, autoincrement=False)
    position: Mapped[int] = mapped_column(BigInteger)
    """The last position given; the next is one more. Gaps are allowed, reuse is not."""
    epoch: Mapped[str] = mapped_column(ID)
    """Names this life of the ledger; another one after a restore."""
    checksum: Mapped[int] = mapped_column(BigInteger)
    """Sum over all rows, see ledger/checksum.py."""
    rules: Mapped[int] = mapped_column(Integer)
    """Version of the rules that the rows were folded by."""


class Entry(Base):
    """One entry, only ever added. What changes is `counts_for`, which corrections decide."""

    __tablename__ = "entry"
    __table_args__ = (
        Index("entry_in_order", "counts_for", "order_key"),
        Index("entry_about", "subject", "order_key"),
        where_given("target"),
        where_given("query"),
        where_given("gyle"),
    )

    id: Mapped[str] = mapped_column(ID, primary_key=True)
    position: Mapped[int] = mapped_column(BigInteger, unique=True)
    device: Mapped[str] = mapped_column(ID)
    seq: Mapped[int] = mapped_column(BigInteger)
    kind: Mapped[str] = mapped_column(text_up_to(20))
    subject: Mapped[str] = mapped_column(ID)
    counts_for: Mapped[str | None] = mapped_column(ID)
    """Whose standing it is part of; none when a correction took it out."""
    dropped_by: Mapped[str | None] = mapped_column(ID)
    """The correction that took it out."""
    target: Mapped[str | None] = mapped_column(ID)
    """The entry that a correction takes out or moves."""
    query: Mapped[str | None] = mapped_column(text_up_to(400))
    """The query that a settlement settles."""
    gyle: Mapped[str | None] = mapped_column(ID)
    """The gyle that a fill drew from."""
    happened_at: Mapped[str] = mapped_column(INSTANT)
    effective_at: Mapped[str] = mapped_column(INSTANT)
    received_at: Mapped[str] = mapped_column(INSTANT)
    order_key: Mapped[str] = mapped_column(text_up_to(110))
    clock: Mapped[str] = mapped_column(text_up_to(10))
    person: Mapped[str] = mapped_column(text_up_to(60))
    facts: Mapped[str] = mapped_column(Text)
    rules: Mapped[int] = mapped_column(Integer)
    content_hash: Mapped[str] = mapped_column(text_up_to(64))
    """SHA-256 of the entry as it was sent, hexadecimal."""


class Held(Base):
    """What could not be taken in and is kept raw until a person or a later release has seen it."""

    __tablename__ = "held"

    content_hash: Mapped[str] = mapped_column(text_up_to(64), primary_key=True)
    entry_id: Mapped[str] = mapped_column(ID)
    raw: Mapped[str] = mapped_column(Text)
    reason: Mapped[str] = mapped_column(text_up_to(40))
    """Slug of the problem that says why."""
    incident: Mapped[str | None] = mapped_column(ID)
    """Names the lines in the log, when it was a fault of ours."""
    device: Mapped[str] = mapped_column(ID)
    """The device that sent it."""
    received_at: Mapped[str] = mapped_column(INSTANT)
    offset_ms: Mapped[int] = mapped_column(BigInteger)
    """What the device's clock was behind by when it was sent, ms."""
    decision: Mapped[Decision | None] = mapped_column(String(10))
    """What an owner has decided: "take" or "put_aside"; none while it waits."""


class Row(Base):
    """What is known now of one thing: a container, beer, gyle, place or customer."""

    __tablename__ = "row"

    type: Mapped[str] = mapped_column(text_up_to(10), primary_key=True)
    id: Mapped[str] = mapped_column(ID, primary_key=True)
    position: Mapped[int] = mapped_column(BigInteger, unique=True)
    """Of its own: no two rows share one, so that a page can end after any row."""
    doc: Mapped[str] = mapped_column(Text)
