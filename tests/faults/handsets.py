"""The real client's phones in a process of Node, asked line by line."""

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]


def bundle(folder: Path, root: Path = ROOT) -> Path:
    """The phones, as they are under `root`, as one file that Node can run."""
    static = ROOT / "static"
    out = folder / "phones.mjs"
    command = [static / "node_modules/esbuild/bin/esbuild", root / "tests/faults/phones.ts"]
    options = ["--bundle", "--format=esm", "--platform=node", "--log-level=warning"]
    packages = {"NODE_PATH": str(static / "node_modules")}
    subprocess.run([*command, *options, f"--outfile={out}"], check=True, env=packages)
    return out


class Handsets:
    """All phones of a brewery. Each command answers with what it has led to."""

    def __init__(self, script: Path) -> None:
        node = shutil.which("node")
        assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
        self._process = subprocess.Popen(
            [node, "--enable-source-maps", script],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            bufsize=1,
        )

    def ask(self, deed: str, phone: int = 0, **more: Any) -> dict[str, Any]:
        assert self._process.stdin
        assert self._process.stdout
        self._process.stdin.write(json.dumps({"do": deed, "phone": phone} | more) + "\n")
        answer = self._process.stdout.readline()
        assert answer, f"the phones died of {deed}"
        told: dict[str, Any] = json.loads(answer)
        assert "fault" not in told, f"{deed}: {told['fault']}"
        return told

    def close(self) -> None:
        assert self._process.stdin
        assert self._process.stdout
        self._process.stdin.close()
        self._process.wait(timeout=20)
        self._process.stdout.close()
