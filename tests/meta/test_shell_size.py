"""The first screen is small enough for one bar of signal."""

import shutil
import subprocess

from .sources import ROOT

FIRST_SCREEN_GZ_BYTES = 60_000


def test_first_screen_fits_into_60_kb() -> None:
    """Script and style that the first screen waits for, gzipped, as they were last built."""
    node = shutil.which("node")
    assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
    script = ROOT / "static" / "shell_size.mjs"
    run = subprocess.run([node, script], capture_output=True, text=True, check=False)
    assert run.returncode == 0, f"the client is not built: {run.stderr}"
    assert 0 < int(run.stdout) <= FIRST_SCREEN_GZ_BYTES
