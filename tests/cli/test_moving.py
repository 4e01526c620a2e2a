"""`cellarapp move`: a ledger goes from a SQLite file into PostgreSQL whole, or not at all."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import psycopg
import pytest

from cellarapp.app import opened
from cellarapp.cli import main
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.heads import HeadState
from cellarapp.storage.work import reading

from ..conftest import config_in
from ..making import Phone, batch
from ..postgres import Cluster

Printed = pytest.CaptureFixture[str]


@pytest.fixture
def target(postgres: Cluster) -> Iterator[str]:
    """A new, empty database."""
    address = postgres.database()
    yield address
    postgres.drop(address)


@pytest.fixture
def ledger(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Config:
    """Fills, one that counts for nothing, one that is held, and more rows than go at once."""
    for name in ("CELLAR_DATABASE", "CELLAR_DEMO"):
        monkeypatch.setenv(name, "")
    monkeypatch.setenv("CELLAR_DATA", str(tmp_path))
    config = config_in(tmp_path)
    phone = Phone()
    gone = phone.filled("117", volume_ml=39_000)
    with opened(config):
        take_in(batch([gone, phone.entry("voided", "117", target=gone["id"])]))
        take_in(batch([phone.entry("blessed", "118", by="the vicar of Söderåkra 🍺")]))
        for start in range(0, 1200, 400):
            take_in(batch([phone.entry("tapped", f"F{n}") for n in range(start, start + 400)]))
    return config


def everything(config: Config) -> dict[str, Any]:
    """All that a ledger holds."""
    with opened(config), reading() as work:
        return {
            "head": work.head.read(),
            "entries": list(work.entries.all_by_subject()),
            "rows": list(work.rows.all()),
            "held": work.held.all(),
        }


def head(config: Config) -> HeadState:
    with opened(config), reading() as work:
        return work.head.read()


def run_on(address: str, statement: str) -> list[tuple[Any, ...]]:
    with psycopg.connect(address.replace("+psycopg", ""), autocommit=True) as connection:
        done = connection.execute(statement)  # type: ignore[call-overload]
        return done.fetchall() if done.description else []


def is_empty(address: str) -> bool:
    tables = run_on(address, "SELECT tablename FROM pg_tables WHERE schemaname = 'public'")
    names = {name for (name,) in tables} - {"alembic_version"}
    return not any(run_on(address, f"SELECT 1 FROM {name} LIMIT 1") for name in names)


def test_everything_is_there_and_the_ledger_goes_on(
    ledger: Config, target: str, capsys: Printed
) -> None:
    """The same entries, rows and held ones, under the same epoch, so that phones go on too."""
    before = everything(ledger)
    assert main(["move", target]) == 0
    said = capsys.readouterr().out
    assert "1202 of entry" in said
    assert "1 of held" in said
    moved = config_in(ledger.data, target)
    assert everything(moved) == before
    with opened(moved):
        assert take_in(batch([Phone("other").filled("200")])).verdicts[0].position == (
            before["head"].position + 1
        )
        assert check() == []


def test_file_that_was_moved_is_another_ledger_from_then_on(ledger: Config, target: str) -> None:
    """A phone that meets it by mistake notices, and sends to the right one what it sent there."""
    before = head(ledger)
    assert main(["move", target]) == 0
    assert head(ledger).epoch != before.epoch
    assert head(config_in(ledger.data, target)).epoch == before.epoch


def test_nothing_is_moved_into_a_database_that_is_not_empty(
    ledger: Config, target: str, capsys: Printed
) -> None:
    """Two ledgers never mix."""
    other = config_in(ledger.data, target)
    with opened(other):
        take_in(batch([Phone("other").filled("9")]))
    before = everything(other)
    assert main(["move", target]) == 1
    assert "it is not empty" in capsys.readouterr().err
    assert everything(other) == before


def test_ledger_that_is_in_use_is_not_moved(ledger: Config, target: str, capsys: Printed) -> None:
    """What is written meanwhile would be left behind."""
    with opened(ledger), reading() as work:
        work.head.read()
        assert main(["move", target]) == 1
    assert "Stop cellarapp" in capsys.readouterr().err
    assert is_empty(target)


def damage(config: Config, statement: str) -> None:
    assert config.database_file is not None
    with closing(sqlite3.connect(config.database_file)) as connection:
        connection.execute(statement)
        connection.commit()


@pytest.mark.parametrize(
    ("statement", "words"),
    [
        ("UPDATE row SET doc = '{}' WHERE id = 'F7'", "1 rows are not what the ledger says"),
        (
            "UPDATE entry SET person = 'a' || char(0)",
            "entry holds what PostgreSQL cannot",
        ),
    ],
)
def test_ledger_that_is_not_sound_leaves_nothing_behind(
    ledger: Config, target: str, capsys: Printed, statement: str, words: str
) -> None:
    """Neither what was copied before the fault was found, nor another epoch."""
    before = head(ledger)
    damage(ledger, statement)
    assert main(["move", target]) == 1
    assert words in capsys.readouterr().err
    assert is_empty(target)
    assert head(ledger) == before


def test_copy_that_is_not_the_same_is_found_and_not_kept(
    ledger: Config, target: str, capsys: Printed
) -> None:
    """Every row is read again from where it was written; here the server changes what it keeps."""
    with opened(config_in(ledger.data, target)):
        pass
    run_on(target, "DELETE FROM head")
    run_on(
        target,
        "CREATE FUNCTION spoil() RETURNS trigger LANGUAGE plpgsql AS"
        " $$ BEGIN NEW.person := NEW.person || '!'; RETURN NEW; END $$",
    )
    run_on(
        target,
        "CREATE TRIGGER spoil BEFORE INSERT ON entry FOR EACH ROW"
        " WHEN (NEW.subject = 'F9') EXECUTE FUNCTION spoil()",
    )
    assert main(["move", target]) == 1
    assert "copy of the table entry is not what it was made from" in capsys.readouterr().err
    assert is_empty(target)
    run_on(target, "DROP TRIGGER spoil ON entry")
    assert main(["move", target]) == 0


def test_it_moves_to_postgresql_only(ledger: Config, tmp_path: Path, capsys: Printed) -> None:
    """Another file is what a backup is for."""
    assert main(["move", str(tmp_path / "other.sqlite")]) == 2
    assert "begins with postgresql+psycopg://" in capsys.readouterr().err
