"""Everything about storage holds on SQLite and on PostgreSQL alike."""

import pytest


@pytest.fixture
def database(either_database: str) -> str:
    return either_database
