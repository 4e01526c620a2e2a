"""What the build leaves in static/dist: a page without inline code, and all it needs offline."""

import gzip
import json
from html.parser import HTMLParser
from typing import Any

import pytest

from .sources import ROOT

DIST = ROOT / "static" / "dist"
NOT_KEPT_OFFLINE = {"sw.js", "build.json"}


@pytest.fixture(scope="module")
def files() -> list[str]:
    summary: dict[str, Any] = json.loads((DIST / "build.json").read_text())
    names: list[str] = summary["files"]
    return names


class InlineCode(HTMLParser):
    """Collects scripts, styles and handlers that stand in the page itself."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = {name for name, _ in attrs}
        if tag == "style" or (tag == "script" and "src" not in names):
            self.found.append(tag)
        self.found += [name for name in names if name == "style" or name.startswith("on")]


def test_page_has_no_inline_code() -> None:
    """The Content-Security-Policy forbids it, so it would not run."""
    assert InlineCode((DIST / "index.html").read_text()).found == []


@pytest.mark.parametrize(
    "planted", ["<script>x</script>", "<style>x</style>", "<p style='x'>", "<p onclick='x'>"]
)
def test_planted_inline_code_is_found(planted: str) -> None:
    """The search above can fail."""
    assert len(InlineCode(planted).found) == 1


def test_worker_keeps_every_file(files: list[str]) -> None:
    """A file that the worker does not keep is a screen that fails in the cellar."""
    worker = (DIST / "sw.js").read_text()
    kept = [name for name in files if name not in NOT_KEPT_OFFLINE]
    assert "index.html" in kept
    assert [name for name in kept if f'"/{name}"' not in worker] == []


def test_every_named_file_is_there(files: list[str]) -> None:
    """And nothing but these and their compressed forms."""
    plain = {
        path.relative_to(DIST).as_posix()
        for path in DIST.rglob("*")
        if path.is_file() and path.suffix not in {".br", ".gz"}
    }
    assert plain == {*files, "build.json"}


def test_compressed_forms_hold_the_same(files: list[str]) -> None:
    """The server sends them in the file's place."""
    packed = [name for name in files if (DIST / f"{name}.gz").exists()]
    assert any(name.endswith(".js") for name in packed)
    for name in packed:
        assert gzip.decompress((DIST / f"{name}.gz").read_bytes()) == (DIST / name).read_bytes()
