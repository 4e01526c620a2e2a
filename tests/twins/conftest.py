"""One twin for the whole run: starting Node for every question would take the day."""

from collections.abc import Iterator

import pytest

from .twin import Twin, start


@pytest.fixture(scope="session")
def twin() -> Iterator[Twin]:
    running = start()
    yield running
    running.close()
