"""Plants a fault in a copy of the phone's rules, and looks whether a comparison finds it."""

import shutil
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from .twin import ROOT, Twin, bundle

COPIED = ("static/src/domain", "cellarapp/domain", "tests/twins")
LOOK = settings(
    max_examples=1500,
    database=None,
    phases=[Phase.generate],  # finding the fault is enough; making it small takes long
    suppress_health_check=list(HealthCheck),
)


def assert_found(
    folder: Path,
    file: str,
    right: str,
    wrong: str,
    compare: Callable[[Twin, st.DataObject], None],
) -> None:
    """The comparison fails once `wrong` stands for `right` in a copy of the file."""
    for part in COPIED:
        shutil.copytree(ROOT / part, folder / part)
    faulty = folder / "static/src/domain" / file
    text = faulty.read_text()
    assert right in text, "the planted fault no longer fits the rule: plant another"
    faulty.write_text(text.replace(right, wrong))
    with closing(Twin(bundle(folder, folder))) as twin:

        @LOOK
        @given(data=st.data())
        def look(data: st.DataObject) -> None:
            compare(twin, data)

        with pytest.raises(AssertionError):
            look()
