"""The client's folders import one way, and its rules stay pure."""

import re
from pathlib import Path

import pytest

from .sources import ROOT, text_of, written_files

CLIENT = ROOT / "static" / "src"

# Each may import itself and what stands after the colon.
ALLOWED = {
    "main": {"ui", "sw", "sync", "store", "domain"},
    "ui": {"sw", "sync", "store", "domain"},
    "sync": {"store", "domain"},
    "store": {"domain"},
    "sw": {"domain"},
    "domain": set[str](),
}

# The compiler already refuses document and fetch in the rules; these it lets through.
IMPURE = [r"\bDate\.now\(", r"\bnew Date\(\)", r"\bMath\.random\(", r"\bMath\.round\("]

IMPORT = re.compile(r"""(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")


def part_of(path: Path) -> str:
    """The folder under src/ that a file belongs to, or the name of a file at its top."""
    return path.relative_to(CLIENT).parts[0].split(".")[0]


def imported_parts(path: Path, text: str) -> set[str]:
    """The parts of the client that a file imports."""
    targets = ((path.parent / found).resolve() for found in IMPORT.findall(text))
    return {part_of(target) for target in targets if target.is_relative_to(CLIENT)}


def impure_in(text: str) -> list[str]:
    """Hidden clocks and chance, and a rounding that Python does not share."""
    return [pattern for pattern in IMPURE if re.search(pattern, text)]


def client_files() -> list[Path]:
    return [path for path in written_files(CLIENT) if path.suffix in {".ts", ".tsx"}]


def test_folders_import_one_way() -> None:
    """From main over ui, sync and store to domain; the worker knows only domain."""
    wrong = []
    for path in client_files():
        part = part_of(path)
        for target in imported_parts(path, text_of(path)) - {part}:
            if target not in ALLOWED.get(part, set()):
                wrong.append(f"{path.relative_to(CLIENT)} imports {target}")
    assert wrong == []


def test_every_folder_has_its_place() -> None:
    """A new folder is entered in the list above."""
    assert {part_of(path) for path in client_files()} - {"build"} <= set(ALLOWED)


def test_rules_hide_no_clock_or_chance() -> None:
    """A rule is given the time, and rounds as its Python twin does."""
    rules = [path for path in client_files() if part_of(path) == "domain"]
    assert rules
    found = {path.name: impure_in(text_of(path)) for path in rules}
    assert {name: words for name, words in found.items() if words} == {}


@pytest.mark.parametrize(
    "line",
    [
        'import { head } from "../ui/Head.tsx";',
        'export type { Head } from "../ui/Head.tsx";',
        'const late = await import("../ui/Head.tsx");',
    ],
)
def test_an_import_is_seen(line: str) -> None:
    """The search above can fail."""
    assert imported_parts(CLIENT / "domain" / "planted.ts", line) == {"ui"}


@pytest.mark.parametrize("line", ["Date.now()", "new Date()", "Math.random()", "Math.round(x / 2)"])
def test_an_impure_line_is_seen(line: str) -> None:
    """The search above can fail."""
    assert len(impure_in(f"const x = {line};")) == 1
