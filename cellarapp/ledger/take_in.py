"""The one write path: takes a batch of entries into the ledger, all in one transaction."""

from cellarapp.ledger.book import Book
from cellarapp.ledger.canonical import document
from cellarapp.ledger.counting import count
from cellarapp.ledger.erasing import blank_erased, forget_finders
from cellarapp.ledger.judge import Judged, hold, judge
from cellarapp.ledger.problem import incident
from cellarapp.ledger.project import project
from cellarapp.ledger.sorting import sort_out
from cellarapp.ledger.verdicts import Batch, Outcome
from cellarapp.storage.errors import StorageError
from cellarapp.storage.mapping import to_columns
from cellarapp.storage.work import Work, writing


def take_in(batch: Batch) -> Outcome:
    """Take in a batch; the same batch again changes nothing (ORD-2).

    Raises: StorageError when the database cannot do it; then nothing was taken in.
    """
    return _halving(batch, [judge(element, batch) for element in batch.elements])


def _halving(batch: Batch, judged: list[Judged]) -> Outcome:
    """All at once; if a fault of ours strikes, in halves, until the one it comes from is held."""
    try:
        return _take(batch, judged)
    except StorageError:
        raise
    except Exception as fault:
        if not any(one.entry for one in judged):
            raise
        if len(judged) == 1:
            hold(judged[0], incident(fault))
            return _take(batch, judged)
    middle = len(judged) // 2
    first, last = _halving(batch, judged[:middle]), _halving(batch, judged[middle:])
    return Outcome(last.epoch, last.head, first.verdicts + last.verdicts)


def _take(batch: Batch, judged: list[Judged]) -> Outcome:
    with writing() as work:
        return _write(work, batch, judged)


def _write(work: Work, batch: Batch, judged: list[Judged]) -> Outcome:
    head = work.head.read()
    book = Book(work)
    sorted_out = sort_out(work, book, batch, judged)
    fresh = list(sorted_out.fresh.values())
    blank_erased(work, fresh)
    blanked = forget_finders(work, fresh)
    recounts = count(work, fresh)
    project(work, book, fresh, recounts, blanked)
    changes = book.changes()
    facts = [document(one.entry["facts"]) for one in fresh]
    taken = len(fresh) + len(changes)
    work.held.add(sorted_out.to_hold)
    work.held.release(sorted_out.to_release)
    if taken:
        for position, one in enumerate(fresh, start=head.position + 1):
            one.entry["position"] = position
        work.entries.add([to_columns(one, text) for one, text in zip(fresh, facts, strict=True)])
        work.entries.recount([one for one, _ in recounts])
        checksum = changes.write(work, head.position + 1 + len(fresh), head.checksum)
        work.head.write(position=head.position + taken, checksum=checksum)
    verdicts = [sorted_out.verdict(one) for one in judged]
    return Outcome(head.epoch, head.position + taken, verdicts)
