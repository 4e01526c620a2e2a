"""No test is left out, and none waits for time to pass."""

import re
from pathlib import Path

import pytest

from .sources import ROOT, text_of, written_files

# Put together here, so that this file does not hold what it forbids.
LEFT_OUT = ["skip", "skipif", "xfail", "importorskip"]
FORBIDDEN = [
    *(rf"\bpytest\.(mark\.)?{word}\b" for word in LEFT_OUT),
    r"\btime\." + r"sleep\b",
    r"\bwait_for_" + r"timeout\b",
    r"\b(test|it|describe)\." + r"(skip|only|todo)\b",
]
CODE = {".py", ".ts", ".tsx", ".mjs", ".js"}


def forbidden_in(text: str) -> list[str]:
    return [found[0] for pattern in FORBIDDEN for found in re.finditer(pattern, text)]


def test_no_test_is_left_out_or_sleeps() -> None:
    """A test that may be passed over, or that waits, says nothing on the day it matters."""
    files = [path for path in written_files(ROOT / "tests") if path.suffix in CODE]
    assert Path(__file__) in files
    found = {str(path.relative_to(ROOT)): forbidden_in(text_of(path)) for path in files}
    assert {name: words for name, words in found.items() if words} == {}


@pytest.mark.parametrize(
    "line",
    [
        "@pytest.mark." + "skip",
        "pytest." + "importorskip('x')",
        "time." + "sleep(1)",
        "page.wait_for_" + "timeout(1)",
        "test." + "only('x')",
    ],
)
def test_a_planted_line_is_found(line: str) -> None:
    """The search above can fail."""
    assert len(forbidden_in(line)) == 1
