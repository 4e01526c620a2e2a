"""An application that many examples of one property share."""

from collections.abc import Iterator

import pytest
from flask import Flask

from cellarapp import create_app
from cellarapp.storage.db import close_connections

from ..conftest import config_in


@pytest.fixture(scope="module")
def shared_app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """Each example empties its ledger first; see looking.begin_again."""
    made = create_app(config_in(tmp_path_factory.mktemp("shared")))
    yield made
    with made.app_context():
        close_connections()
