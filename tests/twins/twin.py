"""A running twin: the phone's rules in Node, asked line by line."""

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any, NamedTuple

HOST = Path(__file__).with_name("host.mjs")


class Fault(NamedTuple):
    """What to write in a file of the phone's rules in place of what is right."""

    file: str
    right: str
    wrong: str


class Twin:
    """The phone's side of every rule. Answers ("value", v) or ("error", slug)."""

    def __init__(self, process: "subprocess.Popen[str]", fault: Fault | None = None) -> None:
        self.process = process
        self.fault = fault and fault._asdict()

    def with_fault(self, fault: Fault) -> "Twin":
        """The rules with this fault in them, in the same process."""
        return Twin(self.process, fault)

    def ask(self, rule: str, *args: Any) -> tuple[str, Any]:
        """What the phone's rule says.

        Raises:
            RuntimeError: the process has ended; it says why on its error output.
        """
        assert self.process.stdin
        assert self.process.stdout
        question = {"fault": self.fault, "rule": rule, "args": args}
        self.process.stdin.write(json.dumps(question) + "\n")
        answer = self.process.stdout.readline()
        if not answer:
            raise RuntimeError(f"the twin died of {question}")
        [(sort, what)] = json.loads(answer).items()
        return sort, what

    def close(self) -> None:
        """Ends the process, and with it all of its faults."""
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.close()
        self.process.wait(timeout=10)
        self.process.stdout.close()


def start() -> Twin:
    """Starts Node, which bundles the rules when they are first asked."""
    node = shutil.which("node")
    assert node, "node is not on the path: run .ci/test, or put Node 20 or newer there"
    command = [node, HOST]
    return Twin(
        subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
        )
    )
