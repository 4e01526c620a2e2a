"""A real application on a real database of its own, for each test that asks for one."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import settings

from cellarapp import create_app
from cellarapp.app import opened
from cellarapp.config import Config, read_config
from cellarapp.storage.db import close_connections

from .postgres import Cluster, cluster
from .signed_in import signed_in

# A busy machine is slow at times; how fast something is has its place in bench/.
settings.register_profile("patient", parent=settings.default, deadline=None)
settings.load_profile("patient")


DATABASES = ["sqlite", "postgresql"]


def config_in(folder: Path, database: str = "") -> Config:
    """Settings for a database in this folder, unless the address of another one is given."""
    return read_config({"CELLAR_DATA": str(folder), "CELLAR_DATABASE": database})


@pytest.fixture(scope="session")
def postgres() -> Iterator[Cluster]:
    """A PostgreSQL server for the whole run, started when a test first asks for it."""
    with cluster() as running:
        yield running


@pytest.fixture(scope="session")
def empty_ledger(postgres: Cluster, tmp_path_factory: pytest.TempPathFactory) -> str:
    """A database that is copied for every test, so that each need not make the tables anew."""
    address = postgres.database()
    with opened(config_in(tmp_path_factory.mktemp("postgres"), address)):
        return address


@contextmanager
def database_on(kind: str, request: pytest.FixtureRequest) -> Iterator[str]:
    """What CELLAR_DATABASE is for an empty ledger; nothing for a file in the folder for data."""
    if kind == "sqlite":
        yield ""
        return
    postgres: Cluster = request.getfixturevalue("postgres")
    address = postgres.database(like=request.getfixturevalue("empty_ledger"))
    yield address
    postgres.drop(address)


@pytest.fixture(params=DATABASES)
def either_database(request: pytest.FixtureRequest) -> Iterator[str]:
    """The test runs on SQLite and on PostgreSQL. See `database`."""
    with database_on(request.param, request) as address:
        yield address


@pytest.fixture
def database() -> str:
    """Where a test's ledger is: in a SQLite file. A folder whose tests run on either says so."""
    return ""


@pytest.fixture
def config(tmp_path: Path, database: str) -> Config:
    return config_in(tmp_path, database)


@pytest.fixture
def app(config: Config) -> Iterator[Flask]:
    """An application with an empty ledger, within its context."""
    made = create_app(config)
    with made.app_context():
        yield made
        close_connections()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client that is signed in as the owner."""
    return signed_in(app)


@pytest.fixture
def stranger(app: Flask) -> FlaskClient:
    """A client that is not signed in."""
    return app.test_client()
