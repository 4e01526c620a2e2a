"""A running twin: the phone's rules in Node, asked line by line."""

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
HOST = Path("tests/twins/host.ts")


def bundle(root: Path, to: Path) -> Path:
    """Bundles the host with the rules found under `root` into one file that Node can run."""
    node = shutil.which("node")
    assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
    esbuild = ROOT / "static/node_modules/esbuild/bin/esbuild"
    out = to / "host.mjs"
    command = [esbuild, root / HOST, "--bundle", "--format=esm", "--platform=node"]
    subprocess.run([*command, "--log-level=warning", f"--outfile={out}"], check=True, cwd=root)
    return out


class Twin:
    """The phone's side of every rule. Answers ("value", v) or ("error", slug)."""

    def __init__(self, script: Path) -> None:
        self.process = subprocess.Popen(
            ["node", script], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
        )

    def ask(self, rule: str, *args: Any) -> tuple[str, Any]:
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.write(json.dumps({"rule": rule, "args": args}) + "\n")
        answer = self.process.stdout.readline()
        assert answer, f"the twin died of {rule}{args}"
        [(sort, what)] = json.loads(answer).items()
        return sort, what

    def close(self) -> None:
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.close()
        self.process.wait(timeout=10)
        self.process.stdout.close()
