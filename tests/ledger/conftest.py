"""Everything about the ledger holds on SQLite and on PostgreSQL alike."""

from collections.abc import Iterator

import pytest
from flask import Flask

from cellarapp import create_app
from cellarapp.storage.db import close_connections

from ..conftest import DATABASES, config_in, database_on


@pytest.fixture
def database(either_database: str) -> str:
    return either_database


@pytest.fixture(scope="module", params=DATABASES)
def shared_app(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Flask]:
    """An application that many examples of one property share.

    Each example empties its ledger first; see looking.begin_again.
    """
    with database_on(request.param, request) as address:
        made = create_app(config_in(tmp_path_factory.mktemp("shared"), address))
        yield made
        with made.app_context():
            close_connections()
