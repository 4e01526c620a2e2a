"""What is held: kept raw until a person or a later release has seen it."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass

from sqlalchemy import Connection, delete, insert, select, update

from cellarapp.storage.batches import batches
from cellarapp.storage.models import Decision, Held


@dataclass(frozen=True, slots=True)
class HeldEntry:
    """One entry that is held; `raw` is the JSON that was sent."""

    content_hash: str
    entry_id: str
    raw: str
    reason: str
    incident: str | None
    device: str
    received_at: str
    offset_ms: int
    decision: Decision | None = None


COLUMNS = (
    Held.content_hash, Held.entry_id, Held.raw, Held.reason, Held.incident, Held.device,
    Held.received_at, Held.offset_ms, Held.decision,
)  # fmt: skip


class HeldStore:
    """Reads, adds and releases what is held."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def among(self, hashes: Iterable[str]) -> dict[str, Decision | None]:
        """Those of the content hashes that are held, and what is decided of each."""
        found: dict[str, Decision | None] = {}
        for some in batches(sorted(hashes)):
            asked = select(Held.content_hash, Held.decision).where(Held.content_hash.in_(some))
            found |= {row[0]: row[1] for row in self._connection.execute(asked)}
        return found

    def add(self, held: Sequence[HeldEntry]) -> None:
        """Keep these."""
        if held:
            self._connection.execute(insert(Held), [asdict(one) for one in held])

    def release(self, hashes: Iterable[str]) -> None:
        """Forget these; they are in the ledger now."""
        for some in batches(sorted(hashes)):
            self._connection.execute(delete(Held).where(Held.content_hash.in_(some)))

    def find(self, content_hash: str) -> HeldEntry | None:
        """One of them."""
        asked = select(*COLUMNS).where(Held.content_hash == content_hash)
        row = self._connection.execute(asked).first()
        return None if row is None else HeldEntry(*row)

    def decide(self, content_hash: str, decision: Decision | None) -> None:
        """Note what an owner has decided about one of them."""
        decided = update(Held).where(Held.content_hash == content_hash)
        self._connection.execute(decided.values(decision=decision))

    def all(self) -> list[HeldEntry]:
        """Everything that is held, in the order it came."""
        asked = select(*COLUMNS).order_by(Held.received_at, Held.content_hash)
        return [HeldEntry(*row) for row in self._connection.execute(asked)]
