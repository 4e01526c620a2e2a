"""The head row: how far the ledger has come, and where positions come from."""

from dataclasses import dataclass

from sqlalchemy import Connection, insert, select, update

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

    def read(self) -> HeadState:
        """The head as it is. In a unit of work that writes, nobody else moves it."""
        found = self.find()
        if found is None:
            raise LookupError("the ledger has no head; it is made when the application starts")
        return found

    def find(self) -> HeadState | None:
        """The head, or None before the first start."""
        statement = select(Head.position, Head.epoch, Head.checksum, Head.rules)
        row = self._connection.execute(statement).first()
        return None if row is None else HeadState(*row)

    def make(self, *, epoch: str, rules: int) -> None:
        """The head of a new ledger."""
        values = {"id": 1, "position": 0, "epoch": epoch, "checksum": 0, "rules": rules}
        self._connection.execute(insert(Head), values)

    def touch(self) -> None:
        """Write the head as it is, to see that it can be written."""
        self._connection.execute(update(Head).values(position=Head.position))

    def write(
        self,
        *,
        position: int | None = None,
        checksum: int | None = None,
        rules: int | None = None,
        epoch: str | None = None,
    ) -> None:
        """What is given, and what is not given stays.

        Units of work that write come one at a time, so no other one gives a position before those
        of this one are visible: they become visible in order, and no reader can pass one by.
        """
        given = {"position": position, "checksum": checksum, "rules": rules, "epoch": epoch}
        values = {name: value for name, value in given.items() if value is not None}
        self._connection.execute(update(Head).values(values))
