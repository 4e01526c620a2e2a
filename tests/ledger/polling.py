"""A phone's rows, as far as it has pulled them."""

from cellarapp.ledger.checksum import MODULUS, share
from cellarapp.ledger.pulling import pull
from cellarapp.storage.rows import Key


class Held:
    """A phone's rows: what it has pulled so far."""

    def __init__(self) -> None:
        self.cursor = 0
        self.rows: dict[Key, tuple[int, str]] = {}
        self.checksum: int | None = None

    def pull(self, limit: int) -> bool:
        """One page; whether there is more."""
        found = pull(None, self.cursor, limit)
        for row in found.rows:
            assert row.position > self.cursor
            self.rows[row.key] = (row.position, row.doc)
        self.cursor = found.next
        self.checksum = None if found.more else found.head.checksum
        return found.more

    def sum(self) -> int:
        """The checksum as a phone counts it."""
        return sum(share(*key, position) for key, (position, _) in self.rows.items()) % MODULUS

    def docs(self) -> dict[Key, str]:
        return {key: doc for key, (_, doc) in self.rows.items()}
