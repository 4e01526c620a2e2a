"""Twenty devices that push and pull at once, without a pause, for two minutes on each database.

SQLite has one server process, PostgreSQL two. The devices share the machine with the servers, so
that the figures are what is left of it. At the end every phone's rows must have the server's sum.
"""

import json
import os
import signal
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from http.client import HTTPConnection
from pathlib import Path
from statistics import quantiles
from threading import Event
from time import perf_counter
from typing import Any

from cellarapp.api.cookie import NAME
from cellarapp.ledger.checksum import MODULUS, share

from ..browser.server import free_port
from ..conftest import config_in
from ..making import Phone, push_body
from ..postgres import cluster
from ..signed_in import owner_in

ROOT = Path(__file__).parents[2]
DEVICES = 20
SECONDS = 120
ENTRIES_A_PUSH = 5
CONTAINERS = 500


class Device:
    """Pushes, pulls what is new, and so on; keeps what it has pulled as a phone does."""

    def __init__(self, number: int, port: int, cookie: str) -> None:
        self.phone = Phone(f"device {number}")
        self.line = HTTPConnection("127.0.0.1", port, timeout=60)
        self.headers = {"Content-Type": "application/json", "Cookie": f"{NAME}={cookie}"}
        self.took_ms: dict[str, list[float]] = {"push": [], "pull": []}
        self.errors: list[str] = []
        self.rows: dict[tuple[str, str], int] = {}
        self.cursor = 0
        self.checksum: int | None = None

    def work_until(self, end: float) -> None:
        while perf_counter() < end:
            self.push()
            self.pull()

    def push(self) -> None:
        seq = self.phone.seq
        numbers = [f"F{(seq * 7 + n) % CONTAINERS}" for n in range(ENTRIES_A_PUSH)]
        told = self.ask("push", push_body([self.phone.filled(number) for number in numbers]))
        if told and {result["verdict"] for result in told["results"]} != {"accepted"}:
            self.errors.append(str(told))

    def pull(self) -> None:
        while told := self.ask("pull", None):
            for row in told["rows"]:
                self.rows[row["type"], row["id"]] = row["position"]
            self.cursor, self.checksum = told["next"], told.get("checksum")
            if not told["more"]:
                return

    def ask(self, what: str, body: dict[str, Any] | None) -> dict[str, Any] | None:
        began = perf_counter()
        if body is None:
            self.line.request("GET", f"/api/pull?since={self.cursor}", headers=self.headers)
        else:
            self.line.request("POST", "/api/push", json.dumps(body), self.headers)
        answer = self.line.getresponse()
        text = answer.read()
        self.took_ms[what].append((perf_counter() - began) * 1000)
        if answer.status != 200:
            self.errors.append(f"{answer.status} {text[:200]!r}")
            return None
        told: dict[str, Any] = json.loads(text)
        return told

    def answers(self) -> bool:
        try:
            self.line.request("GET", "/api/health")
            return self.line.getresponse().status == 200
        except ConnectionError:
            return False
        finally:
            self.line.close()

    def sum(self) -> int:
        return sum(share(*key, at) for key, at in self.rows.items()) % MODULUS


@contextmanager
def served(folder: Path, address: str, workers: int) -> Iterator[int]:
    """The port of a server that answers."""
    port = free_port()
    environment = {
        "CELLAR_DATA": str(folder), "CELLAR_DATABASE": address, "CELLAR_PORT": str(port),
        "CELLAR_WORKERS": str(workers), "CELLAR_KEEP_HOURLY": "0", "CELLAR_KEEP_DAILY": "0",
        "CELLAR_KEEP_WEEKLY": "0",
    }  # fmt: skip
    command = [sys.executable, "-c", "from cellarapp.cli import main; main(['serve'])"]
    process = subprocess.Popen(
        command, cwd=ROOT, env=os.environ | environment, stdout=subprocess.DEVNULL,
        start_new_session=True,
    )  # fmt: skip
    try:
        while not Device(0, port, "").answers():
            Event().wait(0.05)
        yield port
    finally:
        process.send_signal(signal.SIGTERM)
        process.wait(timeout=60)


def run(name: str, folder: Path, address: str, workers: int, seconds: int) -> None:
    cookie = owner_in(config_in(folder, address))
    with served(folder, address, workers) as port:
        devices = [Device(number, port, cookie) for number in range(DEVICES)]
        end = perf_counter() + seconds
        with ThreadPoolExecutor(DEVICES) as pool:
            for done in [pool.submit(device.work_until, end) for device in devices]:
                done.result()
        for device in devices:
            device.pull()
    errors = [error for device in devices for error in device.errors]
    errors += ["a phone's rows are not the server's" for d in devices if d.sum() != d.checksum]
    pushes = sum(len(device.took_ms["push"]) for device in devices)
    print(f"{name}: {pushes * ENTRIES_A_PUSH / seconds:.0f} entries/s, {pushes} pushes", flush=True)
    for what in ("push", "pull"):
        cuts = quantiles([ms for d in devices for ms in d.took_ms[what]], n=100)
        print(f"  {what}: p50 {cuts[49]:.0f} ms, p99 {cuts[98]:.0f} ms")
    print(f"  errors: {len(errors)} {errors[:3]}")


def main() -> None:
    seconds = int(sys.argv[1]) if len(sys.argv) > 1 else SECONDS
    with tempfile.TemporaryDirectory() as name:
        run("SQLite, 1 process", Path(name), "", 1, seconds)
    with cluster(safe=True) as postgres, tempfile.TemporaryDirectory() as name:
        run("PostgreSQL, 2 processes", Path(name), postgres.database(), 2, seconds)


if __name__ == "__main__":
    main()
