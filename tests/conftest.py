"""A real application on a real database of its own, for each test that asks for one."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import settings

from cellarapp import create_app
from cellarapp.config import Config, read_config
from cellarapp.storage.db import close_connections

# A busy machine is slow at times; how fast something is has its place in bench/.
settings.register_profile("patient", parent=settings.default, deadline=None)
settings.load_profile("patient")


def config_in(folder: Path) -> Config:
    """Settings for a database in this folder."""
    return read_config({"CELLAR_DATA": str(folder)})


@pytest.fixture
def config(tmp_path: Path) -> Config:
    return config_in(tmp_path)


@pytest.fixture
def app(config: Config) -> Iterator[Flask]:
    """An application with an empty ledger, within its context."""
    made = create_app(config)
    with made.app_context():
        yield made
        close_connections()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    return app.test_client()
