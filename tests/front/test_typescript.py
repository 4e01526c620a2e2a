"""Runs the client's own tests, each file of them as one test here."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
FILES = sorted(path.relative_to(HERE).as_posix() for path in HERE.rglob("*.test.ts*"))


def run_typescript(path: Path) -> subprocess.CompletedProcess[str]:
    node = shutil.which("node")
    assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
    runner = ROOT / "static" / "unit_test.mjs"
    return subprocess.run([node, runner, path], capture_output=True, text=True, check=False)


def counts(tap: str) -> dict[str, int]:
    """The totals that end a run: tests, pass, fail, cancelled, skipped, todo."""
    return {word: int(count) for word, count in re.findall(r"^# (\w+) (\d+)$", tap, re.MULTILINE)}


@pytest.mark.parametrize("file", FILES)
def test_client(file: str) -> None:
    """Every test in the file is run, and passes."""
    run = run_typescript(HERE / file)
    assert run.returncode == 0, run.stdout + run.stderr
    totals = counts(run.stdout)
    assert totals["tests"] > 0, "the file holds no test"
    assert totals["pass"] == totals["tests"], run.stdout


def test_a_failing_client_test_is_seen(tmp_path: Path) -> None:
    """This runner can fail."""
    planted = tmp_path / "planted.test.ts"
    planted.write_text('import { test } from "node:test"; test("x", () => { throw 1; });')
    run = run_typescript(planted)
    assert run.returncode != 0
    assert counts(run.stdout)["fail"] == 1
