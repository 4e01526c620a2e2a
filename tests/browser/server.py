"""A brewery's server as it runs in earnest: a process with a port and a folder of its own.

It is stopped, killed and started again as power cuts and careless feet would.
"""

import os
import signal
import socket
import subprocess
import sys
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any
from urllib.error import URLError

from ..signed_in import OWNER, become_owner, call, pair

COMMAND = Path(sys.executable).with_name("cellarapp")
HEALTH = "/api/health"
TRY_AGAIN_S = 0.05
TRIES = 1200


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


class Server:
    """Keeps its port and its folder over stops and starts, as the phones expect."""

    def __init__(self, folder: Path, client: Path, *options: str) -> None:
        self.folder = folder
        self.client = client
        self.port = free_port()
        self.address = f"http://127.0.0.1:{self.port}"
        self._options = options
        self._demo = "--demo" in options
        self._cookie = ""
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        """Start, and come back when it answers."""
        self.begin_to_start()
        self.wait_until_it_answers()

    def begin_to_start(self) -> None:
        """Start, while something else is done meanwhile."""
        self.folder.mkdir(parents=True, exist_ok=True)
        with self._log.open("ab") as log:
            # A session of its own, so that the worker ends with it whatever happens.
            self._process = subprocess.Popen(
                [COMMAND, "serve", *self._options],
                env=self._environment(),
                stdin=subprocess.DEVNULL,
                stdout=log,
                stderr=log,
                start_new_session=True,
            )

    def wait_until_it_answers(self) -> None:
        for _ in range(TRIES):
            if self._answers():
                return
            self._still_running()
        raise AssertionError(f"the server does not answer: {self._log.read_text()}")

    def stop(self) -> None:
        """Stop it as a person would; what it is doing is finished first."""
        self.begin_to_stop()
        if self._process is not None:
            self._process.wait(timeout=20)
            self.kill()

    def begin_to_stop(self) -> None:
        """Stop it, while something else is done meanwhile."""
        if self._process is not None:
            self._process.terminate()

    def freeze(self) -> None:
        """Leave it as a machine that has hung: what is sent arrives, nobody takes it up."""
        assert self._process is not None
        os.killpg(self._process.pid, signal.SIGSTOP)

    def kill(self) -> None:
        """Stop it as a power cut would: main process and worker at once."""
        if self._process is not None:
            with suppress(ProcessLookupError):  # when all of them have ended already
                os.killpg(self._process.pid, signal.SIGKILL)
            self._process.wait(timeout=20)
            self._process = None

    def run(self, *command: str) -> "subprocess.CompletedProcess[str]":
        """Run another command of cellarapp on the same data."""
        run = [COMMAND, *command]
        return subprocess.run(run, env=self._environment(), capture_output=True, text=True)

    def get(self, path: str) -> Any:
        """What it answers."""
        return call(self.address + path, cookie="" if path == HEALTH else self._owner())

    def post(self, path: str, body: Mapping[str, object]) -> Any:
        """What it answers to something sent."""
        return call(self.address + path, body, self._owner())

    def let_in(self, device: str) -> str:
        """The cookie of another device, which the owner pairs by a link; none in the demo."""
        return "" if self._demo else pair(self.address, self._owner(), device)

    def invitation(self) -> str:
        """What the link holds by which the owner lets another device in."""
        token: str = call(self.address + "/api/invites", {"person": OWNER}, self._owner())["token"]
        return token

    def _owner(self) -> str:
        """The cookie of the office, which opens the link that the first start has printed."""
        if not self._cookie and not self._demo:
            self._cookie = become_owner(self.address, self._log.read_text())
        return self._cookie

    def entries(self, number: str, kind: str) -> list[dict[str, Any]]:
        """The entries of one kind that the brewery has of a container."""
        entries = self.get(f"/api/containers/{number}")["entries"]
        return [entry for entry in entries if entry["kind"] == kind]

    def standing(self, number: str) -> dict[str, Any]:
        """How a container stands at the brewery."""
        doc: dict[str, Any] = self.get(f"/api/containers/{number}")["row"]["doc"]
        return doc

    @property
    def _log(self) -> Path:
        return self.folder / "server.log"

    def _environment(self) -> dict[str, str]:
        return os.environ | {
            "CELLAR_DATA": str(self.folder),
            "CELLAR_CLIENT": str(self.client),
            "CELLAR_PORT": str(self.port),
        }

    def _answers(self) -> bool:
        try:
            self.get(HEALTH)
        except (URLError, ConnectionError):
            return False
        return True

    def _still_running(self) -> None:
        assert self._process is not None
        try:
            self._process.wait(timeout=TRY_AGAIN_S)
        except subprocess.TimeoutExpired:
            return
        raise AssertionError(f"the server has stopped: {self._log.read_text()}")
