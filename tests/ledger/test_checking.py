"""check finds every kind of damage, and rebuild puts it right."""

import pytest

from cellarapp.accounts.rights import RightsOf
from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.check import check
from cellarapp.ledger.opening import open_ledger
from cellarapp.ledger.pulling import pull
from cellarapp.ledger.rebuild import rebuild
from cellarapp.storage.db import db
from cellarapp.storage.work import reading

from ..making import Phone, made_id
from .looking import docs, words

pytestmark = pytest.mark.usefixtures("ledger")


@pytest.fixture
def ledger(app: object) -> None:
    """Fills, one of them void, and one that counts for another container."""
    phone = Phone()
    gone, moved = phone.filled("117"), phone.filled("118")
    words(
        phone.registered("117"), gone, moved,
        phone.entry("voided", "117", target=gone["id"]),
        phone.entry("renumbered", "118", target=moved["id"], to="119"),
        phone.entry("beer", made_id("beer"), name="Bitter"),
    )  # fmt: skip


def run(statement: str) -> None:
    with db.engine.begin() as connection:
        connection.exec_driver_sql(statement)


DAMAGE = [
    ("UPDATE row SET doc = replace(doc, '\"fills\":1', '\"fills\":7') WHERE id = '119'",
     ["container 119 differs in fills"]),
    ("UPDATE row SET doc = 'x' WHERE id = '119'",
     ["container 119 differs in the whole document, which cannot be read"]),
    ("UPDATE row SET doc = doc || ' ' WHERE id = '119'",
     ["container 119 differs in the way it is written"]),
    ("DELETE FROM row WHERE id = '119'", ["container 119 has no row", "the checksum is"]),
    ("INSERT INTO row VALUES ('place', 'x', 3, '{}')",
     ["place x has a row, but no entry speaks of it", "the checksum is"]),
    ("UPDATE row SET position = 1000 WHERE id = '119'",
     ["the checksum is", "position 1000 is in use, but the head is only at"]),
    ("UPDATE entry SET counts_for = subject, dropped_by = NULL WHERE counts_for IS NULL",
     ["entry "]),
    ("UPDATE entry SET counts_for = 'K9' WHERE kind = 'registered'", ["entry "]),
    ("UPDATE head SET checksum = checksum + 1", ["the checksum is"]),
    ("UPDATE head SET position = 1", ["position "]),
    ("UPDATE head SET rules = 0", ["rows were folded by version 0 of the rules, not"]),
]  # fmt: skip


def test_ledger_that_was_left_alone_has_no_differences() -> None:
    """The cases below begin from here."""
    assert check() == []


@pytest.mark.parametrize(("statement", "words_"), DAMAGE)
def test_damage_is_found(statement: str, words_: list[str]) -> None:
    """Each difference is one sentence, and there is no other."""
    run(statement)
    found = check()
    assert len(found) == len(words_)
    for said, expected in zip(found, words_, strict=True):
        assert said.startswith(expected)


@pytest.mark.parametrize("statement", [statement for statement, _ in DAMAGE])
def test_rebuild_puts_right(statement: str) -> None:
    """Whatever it was."""
    before = docs()
    run(statement)
    rebuild()
    assert check() == []
    assert docs() == before


def test_phones_fetch_the_rows_that_a_rebuild_changed_and_no_others() -> None:
    """A row that is right keeps its position."""
    with reading() as work:
        head = work.head.read()
    run("UPDATE row SET doc = '{}' WHERE id = '119'")
    assert rebuild() == 1
    assert [row.id for row in pull(head.epoch, head.position, 10).rows] == ["119"]


def test_rows_folded_by_older_rules_are_folded_anew_at_the_start() -> None:
    """A release with other rules needs no hand to bring its rows up to date."""
    run("UPDATE row SET doc = '{}' WHERE id = '119'")
    run("UPDATE head SET rules = 0")
    open_ledger(RightsOf)
    assert check() == []
    with reading() as work:
        assert work.head.read().rules == RULES_VERSION


def test_opening_again_keeps_the_epoch() -> None:
    """A restart is not another ledger."""
    with reading() as work:
        before = work.head.read()
    open_ledger(RightsOf)
    with reading() as work:
        assert work.head.read() == before
