"""Builds the client into a folder of the tests' own, so that nobody else's build changes it."""

import json
import shutil
import subprocess
from pathlib import Path

from ..meta.sources import ROOT

NOT_COPIED = shutil.ignore_patterns("node_modules", "dist*", ".types")


def build_client(folder: Path, *, named: str = "Casks of a small brewery") -> Path:
    """Build the client as it is, but for the words by which the manifest describes it.

    Anything that is delivered goes into the build's id, so other words make another build.
    """
    static = folder / "static"
    shutil.copytree(ROOT / "static", static, ignore=NOT_COPIED)
    rules = folder / "cellarapp" / "domain"
    shutil.copytree(ROOT / "cellarapp" / "domain", rules, ignore=shutil.ignore_patterns("*.py*"))
    (static / "node_modules").symlink_to(ROOT / "static" / "node_modules")
    manifest = json.loads((static / "app.webmanifest").read_text())
    (static / "app.webmanifest").write_text(json.dumps(manifest | {"description": named}))
    node = shutil.which("node")
    assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
    run = subprocess.run([node, "build.mjs"], cwd=static, capture_output=True, text=True)
    assert run.returncode == 0, run.stderr
    return static / "dist"


def build_id(client: Path) -> str:
    """The name of a build."""
    return str(json.loads((client / "build.json").read_text())["id"])
