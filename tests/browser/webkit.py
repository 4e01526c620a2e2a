"""WebKitGTK, the nearest here to an iPhone: what it keeps lies in a folder, and outlives a kill."""

import json
import os
import select
import shutil
import signal
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from cellarapp.api.cookie import NAME

from .server import Server

SYSTEM_PYTHON = "/usr/bin/python3"
"""It has GTK, which no package index has."""
PATIENCE_S = 60


class WebKit:
    """A window on a display."""

    def __init__(self, display: str, folder: Path) -> None:
        self._process = subprocess.Popen(
            [SYSTEM_PYTHON, Path(__file__).with_name("webkit_window.py"), folder],
            env=os.environ | {"DISPLAY": display, "LC_ALL": "C.UTF-8"},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            bufsize=1,
            start_new_session=True,  # its other processes end with it
        )

    def let_in(self, server: Server) -> None:
        """Give it the cookie of a paired device."""
        self._ask(cookie=[NAME, server.let_in("WebKitGTK"), "127.0.0.1"])

    def open(self, address: str) -> None:
        """Go there, and come back when the page is loaded."""
        self._ask(open=address)

    def run(self, script: str) -> Any:
        """What the body of an async function answers."""
        return self._ask(run=script)

    def kill(self) -> None:
        """End it as an empty battery would."""
        if self._process.poll() is None:
            os.killpg(self._process.pid, signal.SIGKILL)
            self._process.communicate(timeout=20)

    def close(self) -> None:
        """End it as a person would."""
        self._process.communicate(timeout=20)

    def _ask(self, **told: Any) -> Any:
        assert self._process.stdin
        assert self._process.stdout
        self._process.stdin.write(json.dumps(told) + "\n")
        ready, _, _ = select.select([self._process.stdout], [], [], PATIENCE_S)
        assert ready, f"WebKitGTK says nothing to {told}"
        answer = self._process.stdout.readline()
        assert answer, "WebKitGTK has ended"
        said = json.loads(answer)
        assert "fault" not in said, said["fault"]
        return said["value"]


@contextmanager
def a_display() -> Iterator[str]:
    """A screen that nobody sees: WebKitGTK has no other way of showing nothing."""
    program = shutil.which("Xvfb")
    assert program, "Xvfb is not on the path: run .ci/test, which installs it"
    told, tell = os.pipe()
    command = [program, "-displayfd", str(tell), "-screen", "0", "800x800x24", "-nolisten", "tcp"]
    screen = subprocess.Popen(command, pass_fds=[tell], stderr=subprocess.DEVNULL)
    try:
        yield f":{os.read(told, 16).decode().strip()}"
    finally:
        screen.terminate()
        screen.wait(timeout=20)
        os.close(told)
        os.close(tell)
