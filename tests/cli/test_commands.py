"""The commands that look at the ledger and end."""

import json
from configparser import ConfigParser
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from cellarapp.app import opened
from cellarapp.cli import main
from cellarapp.cli.filling import fill
from cellarapp.config import DEMO_FILE, Config
from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.history import history
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import db

from ..conftest import config_in
from ..making import Phone, batch


@pytest.fixture(autouse=True)
def brewery(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Config:
    """The environment leads to a folder of the test's own; what a command sets there is undone."""
    for name in ("CELLAR_DATABASE", "CELLAR_DEMO", "CELLAR_HOST", "CELLAR_PORT", "CELLAR_WORKERS"):
        monkeypatch.setenv(name, "")
    monkeypatch.setenv("CELLAR_DATA", str(tmp_path))
    return config_in(tmp_path)


@pytest.fixture
def ledger(brewery: Config) -> Config:
    with opened(brewery):
        take_in(batch([Phone().filled("117")]))
    return brewery


def damage(config: Config, rows: str) -> None:
    with opened(config), db.engine.begin() as connection:
        connection.exec_driver_sql(f"UPDATE row SET doc = '{{}}' WHERE {rows}")


Printed = pytest.CaptureFixture[str]


def test_check_is_content_with_a_ledger_that_is_well(ledger: Config, capsys: Printed) -> None:
    """Status 0, in one sentence."""
    assert main(["check"]) == 0
    assert capsys.readouterr().out == "all rows are what the ledger says\n"


def test_check_prints_the_differences_and_ends_with_1(ledger: Config, capsys: Printed) -> None:
    """So that a nightly job notices."""
    damage(ledger, "id = '117'")
    assert main(["check"]) == 1
    told = capsys.readouterr().out.splitlines()
    assert told[0].startswith("container 117 differs in ")
    assert told[-1] == "1 differences"


def test_rebuild_puts_right_what_check_found(ledger: Config, capsys: Printed) -> None:
    """And says how much it was."""
    damage(ledger, "id = '117'")
    assert main(["rebuild"]) == 0
    assert capsys.readouterr().out == "1 rows were not what the ledger says; they are now\n"
    assert main(["check"]) == 0


def test_check_looks_at_the_database_that_is_named(
    ledger: Config, tmp_path: Path, capsys: Printed
) -> None:
    """And not at the one of the environment."""
    damage(ledger, "id = '117'")
    assert main(["check", "--database", str(tmp_path / "other.sqlite")]) == 0


def test_openapi_prints_the_document_and_makes_no_database(tmp_path: Path, capsys: Printed) -> None:
    """It can be run anywhere."""
    assert main(["openapi"]) == 0
    assert "/api/push" in json.loads(capsys.readouterr().out)["paths"]
    assert list(tmp_path.iterdir()) == []


def test_version_says_the_release(capsys: Printed) -> None:
    """By which rules it folds, and which client goes with it."""
    assert main(["version"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("cellarapp 0.")
    assert f", rules {RULES_VERSION}, client " in said


def test_unit_serves_the_data_that_it_was_made_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Printed
) -> None:
    """It is read by systemd's own rules: sections, and a value after the first equals sign."""
    monkeypatch.setattr("os.geteuid", lambda: 1000)
    assert main(["unit"]) == 0
    unit = read_unit(capsys.readouterr().out)
    assert unit["Service"]["ExecStart"].endswith(" serve")
    assert unit["Service"]["Environment"] == f'"CELLAR_DATA={tmp_path}"'
    assert unit["Service"]["ReadWritePaths"] == str(tmp_path)
    assert (unit["Service"]["ProtectSystem"], unit["Service"]["Restart"]) == (
        "strict",
        "on-failure",
    )
    assert unit["Install"]["WantedBy"] == "multi-user.target"


def test_unit_made_by_root_has_a_user_of_its_own(
    monkeypatch: pytest.MonkeyPatch, capsys: Printed
) -> None:
    """A service that the network reaches does not run as root."""
    monkeypatch.setattr("os.geteuid", lambda: 0)
    assert main(["unit"]) == 0
    service = read_unit(capsys.readouterr().out)["Service"]
    assert (service["DynamicUser"], service["ProtectHome"]) == ("yes", "yes")
    assert service["StateDirectory"] == "cellarapp"
    assert "User" not in service


def read_unit(text: str) -> ConfigParser:
    parser = ConfigParser(strict=False, delimiters="=", interpolation=None)
    parser.optionxform = str  # type: ignore[assignment, method-assign]
    parser.read_string(text)
    return parser


def test_demo_is_accepted_whole_and_only_once(brewery: Config, capsys: Printed) -> None:
    """Every entry of the made-up brewery is one that a phone could have sent."""
    now = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
    made_up = replace(brewery, database_url=f"sqlite:///{brewery.data / DEMO_FILE}", demo=True)
    assert fill(made_up, now=now, seed=1) == 0
    done, _, of = capsys.readouterr().out.split()[:3]
    assert done == of
    assert int(done) > 1000
    assert main(["check", "--demo"]) == 0
    with opened(made_up):
        position = current_head().position
    assert main(["demo"]) == 1
    with opened(made_up):
        assert current_head().position == position


def test_demo_leaves_the_brewerys_own_file_alone(ledger: Config) -> None:
    """A made-up cask must never stand among real ones."""
    assert main(["demo"]) == 0
    with opened(ledger):
        assert history("117") is not None
        assert history("12") is None


@pytest.mark.parametrize(
    ("variable", "value", "words"),
    [
        ("CELLAR_PORT", "eighty", "CELLAR_PORT is 'eighty'; it must be a whole number"),
        ("CELLAR_PORT", "70000", "CELLAR_PORT is '70000'; it must be a whole number"),
        ("CELLAR_LOG", "loud", "CELLAR_LOG is 'loud'; it must be plain or json."),
        ("CELLAR_WORKERS", "0", "CELLAR_WORKERS is '0'; it must be a whole number from 1 to 64."),
        ("CELLAR_WORKERS", "2", "CELLAR_WORKERS is 2; more than one process needs a PostgreSQL"),
        ("CELLAR_DATABASE", "oracle://x", "CELLAR_DATABASE begins with oracle://"),
        ("CELLAR_DATABASE", "sqlite://", "CELLAR_DATABASE must name a file by its full path"),
        ("CELLAR_DATABASE", "sqlite:///:memory:", "CELLAR_DATABASE must name a file"),
        ("CELLAR_CLIENT", "/nowhere", "CELLAR_CLIENT is '/nowhere', where no index.html is."),
    ],
)
def test_setting_that_cannot_be_used_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: Printed, variable: str, value: str, words: str
) -> None:
    """With what it should be; status 2, as for a command that is written wrongly."""
    monkeypatch.setenv(variable, value)
    assert main(["check"]) == 2
    assert capsys.readouterr().err.startswith(f"cellarapp: {words}")


def test_database_that_is_none_is_told_in_a_sentence(tmp_path: Path, capsys: Printed) -> None:
    """And not as a traceback."""
    (tmp_path / "cellarapp.sqlite").write_text("my shopping list, for the week" * 100)
    assert main(["check"]) == 1
    assert capsys.readouterr().err.startswith("cellarapp: The database cannot be used: ")
