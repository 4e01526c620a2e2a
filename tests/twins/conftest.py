"""One twin for the whole run: starting Node for every question would take the day."""

from collections.abc import Iterator

import pytest

from .twin import ROOT, Twin, bundle


@pytest.fixture(scope="session")
def twin(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Twin]:
    running = Twin(bundle(ROOT, tmp_path_factory.mktemp("twin")))
    yield running
    running.close()
