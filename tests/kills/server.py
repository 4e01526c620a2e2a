"""A server that is killed and started again, as power cuts and careless feet would."""

import json
import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from http.client import HTTPConnection, HTTPException
from pathlib import Path
from threading import Event, Lock
from typing import Any

from cellarapp.api.cookie import NAME
from cellarapp.config import Config

from ..browser.server import free_port
from ..signed_in import owner_in

ROOT = Path(__file__).parents[2]
PATIENCE_S = 60
LOOK_AGAIN_S = 0.005
TRIES = round(PATIENCE_S / LOOK_AGAIN_S)


class Forge:
    """See forge.py."""

    def __init__(self, process: "subprocess.Popen[str]") -> None:
        self._process = process
        self._lock = Lock()

    def start(self, environment: dict[str, str], log: Path) -> int:
        """The number of the process, which leads a session."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        with self._lock:
            self._process.stdin.write(json.dumps([environment, str(log)]) + "\n")
            self._process.stdin.flush()
            return int(self._process.stdout.readline())


@contextmanager
def forging() -> Iterator[Forge]:
    """A forge for as long as it is needed."""
    command = [sys.executable, "-m", "tests.kills.forge"]
    with subprocess.Popen(
        command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as process:
        yield Forge(process)
        assert process.stdin is not None
        process.stdin.close()


class Server:
    """Keeps its port and its database over kills and starts."""

    def __init__(self, forge: Forge, config: Config) -> None:
        self._forge = forge
        self._log = config.data / "server.log"
        self._session: int | None = None
        self.port = free_port()
        self.cookie = owner_in(config)
        self._environment = {
            "CELLAR_DATA": str(config.data),
            "CELLAR_DATABASE": config.database_url,
            "CELLAR_PORT": str(self.port),
            "CELLAR_KEEP_HOURLY": "0",
            "CELLAR_KEEP_DAILY": "0",
            "CELLAR_KEEP_WEEKLY": "0",
        }

    def start(self) -> None:
        """Start, and come back when it answers."""
        self._session = self._forge.start(self._environment, self._log)
        for _ in range(TRIES):
            try:
                push(self, None)
            except (OSError, HTTPException):
                assert self._lives(), self._log.read_text()
                Event().wait(LOOK_AGAIN_S)
                continue
            return
        raise AssertionError(f"the server does not answer: {self._log.read_text()}")

    def kill(self) -> None:
        """End all of it at once, in the middle of whatever it does."""
        if self._session is None:
            return
        os.killpg(self._session, signal.SIGKILL)
        while self._lives():
            Event().wait(LOOK_AGAIN_S)
        self._session = None

    def _lives(self) -> bool:
        """Whether anything is left of it."""
        assert self._session is not None
        try:
            os.killpg(self._session, 0)
        except ProcessLookupError:
            return False
        return True


def push(server: Server, body: dict[str, Any] | None) -> dict[str, Any]:
    """What the server answers to a push, or to a question after its health.

    Raises: ConnectionRefusedError when nobody listens; another OSError or HTTPException when it
    was lost on the way.
    """
    line = HTTPConnection("127.0.0.1", server.port, timeout=PATIENCE_S)
    try:
        if body is None:
            line.request("GET", "/api/health")
        else:
            sent = json.dumps(body)
            headers = {"Content-Type": "application/json", "Cookie": f"{NAME}={server.cookie}"}
            line.request("POST", "/api/push", sent, headers)
        answer = line.getresponse()
        told: dict[str, Any] = json.load(answer)
        assert answer.status == 200, told
        return told
    finally:
        line.close()
