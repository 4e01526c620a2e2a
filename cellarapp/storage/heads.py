"""The head row: how far the ledger has come, and where positions come from."""

from dataclasses import dataclass

from sqlalchemy import Connection, insert, select, update

from cellarapp.storage.errors import Overtaken
from cellarapp.storage.models import Head


@dataclass(frozen=True, slots=True)
class HeadState:
    """What the head row says."""

    position: int
    epoch: str
    checksum: int
    rules: int


class HeadStore:
    """Reads and moves the head."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def read(self, *, lock: bool = False) -> HeadState:
        """The head as it is; with `lock`, nobody else moves it until we are done.

        SQLite has no need of the lock, since its writes come one at a time anyway.
        """
        found = self.find(lock=lock)
        if found is None:
            raise LookupError("the ledger has no head; it is made when the application starts")
        return found

    def find(self, *, lock: bool = False) -> HeadState | None:
        """The head, or None before the first start."""
        statement = select(Head.position, Head.epoch, Head.checksum, Head.rules)
        row = self._connection.execute(statement.with_for_update() if lock else statement).first()
        return None if row is None else HeadState(*row)

    def make(self, *, epoch: str, rules: int) -> None:
        """The head of a new ledger."""
        values = {"id": 1, "position": 0, "epoch": epoch, "checksum": 0, "rules": rules}
        self._connection.execute(insert(Head), values)

    def take(self, count: int, *, seen: HeadState) -> int:
        """The first of `count` new positions.

        To be called when everything is ready to be written, and committed at once: from here on
        no other transaction gets a position before this one is visible, so positions become
        visible in order and no reader can pass one by.

        Raises: Overtaken when the head is not where it was `seen`.
        """
        moved = update(Head).where(Head.position == seen.position)
        done = self._connection.execute(moved.values(position=seen.position + count))
        if done.rowcount != 1:
            raise Overtaken
        return seen.position + 1

    def touch(self) -> None:
        """Write the head as it is, to see that it can be written."""
        self._connection.execute(update(Head).values(position=Head.position))

    def write(
        self, *, checksum: int | None = None, rules: int | None = None, epoch: str | None = None
    ) -> None:
        """What is given, and what is not given stays: the checksum of the rows, and so on."""
        given = {"checksum": checksum, "rules": rules, "epoch": epoch}
        values = {name: value for name, value in given.items() if value is not None}
        self._connection.execute(update(Head).values(values))
