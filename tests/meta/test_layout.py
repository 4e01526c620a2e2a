"""The shape of the repository: what stands at the top, and what no file may say."""

import json
import re
from pathlib import Path

import pytest

from .sources import ROOT, is_made, text_of, written_files

TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "cellarapp",
    "static",
    "migrations",
    "tests",
}

# Put together here, so that this file does not hold what it forbids.
REGISTRIES = ["registry." + "npmjs", "files." + "pythonhosted", "pypi." + "org"]
MACHINE_PATHS = ["/" + "work/", "/" + "root/"]


def forbidden_in(text: str) -> list[str]:
    """Names of registry hosts, and paths that only one machine has."""
    return [word for word in REGISTRIES + MACHINE_PATHS if word in text]


def test_top_level_holds_seven_names() -> None:
    """A newcomer sees the whole house at a glance; anything else has its place inside."""
    shown = {
        path.name for path in ROOT.iterdir() if not path.name.startswith(".") and not is_made(path)
    }
    assert shown == TOP_LEVEL


def test_lock_file_names_no_addresses() -> None:
    """Packages are known by hash, so any mirror may serve them."""
    packages = json.loads((ROOT / "static" / "package-lock.json").read_text())["packages"]
    packages.pop("")
    assert packages
    assert [name for name, package in packages.items() if "resolved" in package] == []
    assert [name for name, package in packages.items() if "integrity" not in package] == []


def test_no_file_names_a_registry_or_a_machine_path() -> None:
    """What works here must work wherever else it is cloned to."""
    files = list(written_files())
    assert len(files) > len(TOP_LEVEL)
    found = {str(path.relative_to(ROOT)): forbidden_in(text_of(path)) for path in files}
    assert {name: words for name, words in found.items() if words} == {}


@pytest.mark.parametrize("word", REGISTRIES + MACHINE_PATHS)
def test_a_forbidden_word_is_found(word: str) -> None:
    """The search above can fail."""
    assert forbidden_in(f"see {word}x") == [word]


def section(readme: str, heading: str) -> str:
    """The text under a heading, up to the next one of its level."""
    found = re.search(rf"^## {heading}\n(.*?)(?=^## |\Z)", readme, re.MULTILINE | re.DOTALL)
    assert found, f"README.md has no heading {heading}"
    return found[1]


@pytest.mark.parametrize(("heading", "command"), [("Run", ".ci/start"), ("Test", ".ci/test")])
def test_readme_gives_one_command_to(heading: str, command: str) -> None:
    """One command each to run and to test, and it is there to be called."""
    blocks = re.findall(
        r"^```\w*\n(.*?)^```$",
        section(text_of(ROOT / "README.md"), heading),
        re.MULTILINE | re.DOTALL,
    )
    assert [block.splitlines() for block in blocks] == [[command]]
    assert Path(ROOT, command).stat().st_mode & 0o100, f"{command} cannot be executed"


def test_readme_opens_with_what_it_is_for() -> None:
    """First the job in a paragraph, then everything else."""
    title, _, opening, *_ = text_of(ROOT / "README.md").splitlines()
    assert title == "# cellarapp"
    assert opening.startswith("cellarapp keeps the casks")
