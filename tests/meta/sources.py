"""Every file that people wrote here, told apart from what tools have made."""

from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
HIDDEN = {".ci", ".editorconfig", ".gitignore", ".npmrc"}
MADE = {"__pycache__", "node_modules", "dist"}


def is_made(path: Path) -> bool:
    """Whether a tool made it: named so, or hidden and none of our own hidden names."""
    name = path.name
    hidden = name.startswith(".") and name not in HIDDEN
    return hidden or name in MADE or name.startswith("dist-") or name.endswith(".egg-info")


def written_files(folder: Path = ROOT) -> Iterator[Path]:
    """All of them, folder by folder."""
    for path in sorted(folder.iterdir()):
        if is_made(path):
            continue
        if path.is_dir():
            yield from written_files(path)
        else:
            yield path


def text_of(path: Path) -> str:
    """Its text; of a picture, whatever can be read as such."""
    return path.read_text(encoding="utf-8", errors="replace")
