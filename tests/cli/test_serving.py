"""`cellarapp serve` as a process of its own, asked over the network."""

import json
import os
import resource
import signal
import socket
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.error import HTTPError, URLError

import pytest

from cellarapp.api.cookie import NAME
from cellarapp.storage.backups import backup_path, backups_in

from ..conftest import config_in
from ..making import Phone, push_body
from ..postgres import Cluster
from ..signed_in import call, owner_in

COMMAND = [sys.executable, "-c", "import sys; from cellarapp.cli import main; sys.exit(main())"]
PATIENCE_S = 60


@pytest.fixture
def port() -> int:
    """One that nothing listens at."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        found: int = probe.getsockname()[1]
        return found


def start(folder: Path, port: int, **options: Any) -> subprocess.Popen[str]:
    environment = os.environ | {"CELLAR_DATA": str(folder), "CELLAR_PORT": str(port)}
    return subprocess.Popen(
        [*COMMAND, "serve"],
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        start_new_session=True,
        **options,
    )


@contextmanager
def served(folder: Path, port: int, **options: Any) -> Iterator[subprocess.Popen[str]]:
    """A server that answers; at the end it is stopped, with all that it started."""
    process = start(folder, port, **options)
    try:
        wait_until_it_answers(process, port)
        yield process
    finally:
        if process.poll() is None:
            process.terminate()
        try:
            process.communicate(timeout=PATIENCE_S)
        finally:
            kill_all(process)


def wait_until_it_answers(process: subprocess.Popen[str], port: int) -> None:
    for _ in range(PATIENCE_S * 20):
        try:
            ask(port, "/api/health")
            return
        except URLError:
            try:
                process.wait(timeout=0.05)
            except subprocess.TimeoutExpired:
                continue
        break
    raise AssertionError(f"the server does not answer: {process.communicate()[0]}")


def kill_all(process: subprocess.Popen[str]) -> None:
    try:
        os.killpg(process.pid, signal.SIGKILL)
    except ProcessLookupError:
        return


def ask(port: int, path: str, body: object = None, cookie: str = "") -> dict[str, Any]:
    told: dict[str, Any] = call(f"http://127.0.0.1:{port}{path}", body, cookie)
    return told


def refusal(port: int, path: str, body: object = None, cookie: str = "") -> dict[str, Any] | None:
    """The problem that is the answer, if it is one."""
    try:
        ask(port, path, body, cookie)
    except HTTPError as answer:
        with answer:
            told: dict[str, Any] = json.load(answer)
            return told
    return None


def is_free(port: int) -> bool:
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) != 0


def test_server_answers_until_it_is_stopped(tmp_path: Path, port: int) -> None:
    """SIGTERM is what a service manager sends; nothing is left listening."""
    with served(tmp_path, port) as process:
        assert ask(port, "/api/health")["status"] == "ok"
        process.terminate()
        said = process.communicate(timeout=PATIENCE_S)[0]
        assert process.returncode == 0
        assert f"cellarapp is at http://127.0.0.1:{port}" in said
    assert is_free(port)


def test_what_was_accepted_outlives_the_death_of_the_server(tmp_path: Path, port: int) -> None:
    """A verdict is given after the commit, and the next start finds the entry."""
    cookie = owner_in(config_in(tmp_path))
    entries = [Phone().filled("117")]
    with served(tmp_path, port) as process:
        told = ask(port, "/api/push", push_body(entries), cookie)
        kill_all(process)
        process.communicate(timeout=PATIENCE_S)
    with served(tmp_path, port):
        again = ask(port, "/api/push", push_body(entries), cookie)
    assert told["results"][0]["verdict"] == "accepted"
    assert again["results"] == [told["results"][0] | {"verdict": "known"}]
    assert again["epoch"] == told["epoch"]


def test_port_that_is_taken_is_told_in_a_sentence(tmp_path: Path, port: int) -> None:
    """Two servers at one port would share the phones between them in silence."""
    with served(tmp_path, port):
        second = start(tmp_path, port)
        said = second.communicate(timeout=PATIENCE_S)[0]
        assert second.returncode == 1
    assert f"cellarapp: port {port} at 127.0.0.1 cannot be used" in said
    assert "Traceback" not in said


def test_body_of_unknown_length_is_not_taken_for_an_empty_one(tmp_path: Path, port: int) -> None:
    """It would have to be read to its end to know that it is too long."""
    cookie = owner_in(config_in(tmp_path))
    with served(tmp_path, port), socket.create_connection(("127.0.0.1", port)) as line:
        line.settimeout(PATIENCE_S)
        line.sendall(
            b"POST /api/push HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
            b"Transfer-Encoding: chunked\r\nConnection: close\r\n"
            + f"Cookie: {NAME}={cookie}\r\n\r\n".encode()
        )
        line.sendall(b"10000\r\n" + b" " * 0x10000 + b"\r\n0\r\n\r\n")
        answer = line.recv(100)
    assert answer.split()[1] == b"411"


def test_request_in_flight_is_finished_before_the_server_ends(tmp_path: Path, port: int) -> None:
    """It was told to stop while a push waited for another program to be done with writing."""
    body = json.dumps(push_body([Phone().filled("117")])).encode()
    cookie = f"Cookie: {NAME}={owner_in(config_in(tmp_path))}"
    head = f"POST /api/push HTTP/1.1\r\nHost: x\r\nContent-Length: {len(body)}\r\n{cookie}\r\n"
    with served(tmp_path, port) as process:
        database = tmp_path / "cellarapp.sqlite"
        with (
            closing(sqlite3.connect(database, isolation_level=None)) as other,
            socket.create_connection(("127.0.0.1", port), PATIENCE_S) as line,
        ):
            other.execute("BEGIN IMMEDIATE")
            line.sendall(f"{head}Content-Type: application/json\r\n\r\n".encode() + body)
            ask(port, "/api/health")  # what came before this is in hand
            process.terminate()
            other.execute("COMMIT")
            answer = line.makefile("rb").read()
        assert b'"verdict":"accepted"' in answer.replace(b" ", b"")
        process.communicate(timeout=PATIENCE_S)
        assert process.returncode == 0
    # One file is all of it: nothing is left in a log beside it.
    assert [path.name for path in tmp_path.iterdir()] == ["cellarapp.sqlite"]


def test_disk_that_fills_up_loses_nothing_that_was_accepted(tmp_path: Path, port: int) -> None:
    """No file may grow beyond 400 kB. Health stays; readiness goes; with room all is well again."""
    cookie = owner_in(config_in(tmp_path))
    phone = Phone()
    batches = [[phone.filled(f"K{100 * n + i}") for i in range(100)] for n in range(20)]

    def narrow() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (400_000, 400_000))

    taken = 0
    with served(tmp_path, port, preexec_fn=narrow) as process:
        refused = None
        while refused is None:
            refused = refusal(port, "/api/push", push_body(batches[taken]), cookie)
            taken += refused is None
        assert refused["type"] == "/problems/storage-trouble"
        unready = refusal(port, "/api/ready")
        assert unready is not None
        assert unready["detail"].startswith("database: ")
        assert ask(port, "/api/health")["status"] == "ok"
        process.terminate()
        assert "storage-trouble" in process.communicate(timeout=PATIENCE_S)[0]
    assert 0 < taken < len(batches)
    with served(tmp_path, port):
        assert ask(port, "/api/ready")
        for n, entries in enumerate(batches):
            told = ask(port, "/api/push", push_body(entries), cookie)["results"]
            expected = "known" if n < taken else "accepted"
            assert {one["verdict"] for one in told} == {expected}
    check = subprocess.run([*COMMAND, "check", "--data", str(tmp_path)], capture_output=True)
    assert check.returncode == 0


def test_backup_that_is_due_is_made_while_the_server_serves(tmp_path: Path, port: int) -> None:
    """An hour after the last one, and by a process that the server does not wait for."""
    cookie = owner_in(config_in(tmp_path))
    with served(tmp_path, port):
        ask(port, "/api/push", push_body([Phone().filled("117")]), cookie)
    folder = tmp_path / "backups"
    folder.mkdir()
    old = backup_path(folder, datetime(2020, 1, 1, tzinfo=UTC))
    old.touch()
    with served(tmp_path, port) as process:
        assert process.stdout is not None
        # Stopped as soon as the file is there, the server would end what has yet to tell of it.
        told = next(line for line in process.stdout if line.startswith("backup: "))
        ask(port, "/api/health")
    [made] = set(backups_in(folder).values()) - {old}
    assert str(made) in told
    with closing(sqlite3.connect(made)) as copy:
        assert copy.execute("SELECT subject FROM entry").fetchall() == [("117",)]


def test_several_processes_serve_one_ledger(
    tmp_path: Path, port: int, postgres: Cluster, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With PostgreSQL; stopped, none of them is left."""
    address = postgres.database()
    cookie = owner_in(config_in(tmp_path, address))
    monkeypatch.setenv("CELLAR_DATABASE", address)
    monkeypatch.setenv("CELLAR_WORKERS", "2")
    phones = [Phone(f"phone {n}") for n in range(8)]

    def push(phone: Phone) -> str:
        entries = [phone.filled("117"), phone.filled(f"F{phone.name[-1]}")]
        told = ask(port, "/api/push", push_body(entries), cookie)
        return str({result["verdict"] for result in told["results"]})

    with served(tmp_path, port) as process, ThreadPoolExecutor(len(phones)) as pool:
        assert set(pool.map(push, phones)) == {"{'accepted'}"}
        assert ask(port, "/api/containers/117", cookie=cookie)["row"]["doc"]["fills"] == len(phones)
        process.terminate()
        process.communicate(timeout=PATIENCE_S)
        assert process.returncode == 0
    assert is_free(port)
