"""What phones ask for: rows that changed, and the whole of the rows in pages."""

from dataclasses import dataclass

from cellarapp.ledger.canonical import document
from cellarapp.storage.heads import HeadState
from cellarapp.storage.rows import Key, StoredRow
from cellarapp.storage.work import reading

ROWS_A_PAGE = 1000


class AnotherLedger(Exception):
    """What the phone holds is not from this ledger, or from a later state of it."""

    def __init__(self, head: HeadState) -> None:
        super().__init__(head.epoch)
        self.head = head


@dataclass(frozen=True, slots=True)
class Pulled:
    """Rows that changed after a position, as far as one page holds them."""

    head: HeadState
    since: int
    next: int
    more: bool
    rows: list[StoredRow]


@dataclass(frozen=True, slots=True)
class Page:
    """Rows of a snapshot; `next` is the key to go on from, none at the end."""

    rows: list[StoredRow]
    next: Key | None


def pull(epoch: str | None, since: int, limit: int) -> Pulled:
    """The rows that changed after `since`.

    Args:
        epoch: the ledger that the phone knows; none on its first contact.
        since: where its last pull ended.
        limit: at most so many rows.
    Raises: AnotherLedger.
    """
    with reading() as work:
        head = work.head.read()
        if (epoch and epoch != head.epoch) or since > head.position:
            raise AnotherLedger(head)
        rows = work.rows.changed_since(since, limit + 1)
    more = len(rows) > limit
    rows = rows[:limit]
    return Pulled(head, since, rows[-1].position if more else head.position, more, rows)


def head_and_count() -> tuple[HeadState, int]:
    """How far the ledger is and how many rows it has."""
    with reading() as work:
        return work.head.read(), work.rows.count()


def current_head() -> HeadState:
    """How far the ledger is."""
    with reading() as work:
        return work.head.read()


def page(after: Key | None, limit: int) -> Page:
    """The rows after a key in the order of keys."""
    with reading() as work:
        rows = work.rows.page(after, limit + 1)
    more = len(rows) > limit
    rows = rows[:limit]
    return Page(rows, rows[-1].key if more else None)


def rows_text(rows: list[StoredRow]) -> str:
    """Rows as a JSON array. Documents are JSON already and are not read for it."""
    return f"[{','.join(row_text(row) for row in rows)}]"


def row_text(row: StoredRow) -> str:
    """A row as a JSON object."""
    return (
        f'{{"type":"{row.type}","id":{document(row.id)},"position":{row.position},"doc":{row.doc}}}'
    )
