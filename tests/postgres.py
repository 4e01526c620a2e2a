"""A PostgreSQL server of the tests' own, from the programs that are installed.

Its databases sort text by the rules of English, as a real one may: what has to be in the order of
code points must say so itself.
"""

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path

import psycopg
from sqlalchemy import make_url

SUPERUSER = "postgres"
IN_MEMORY = Path("/dev/shm")
ROOM_BYTES = 2_000_000_000
NOT_SAFE = ["-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off"]
"""Three times as fast; only a power cut would tell."""


class Cluster:
    """A running server, reached through a socket in a folder that only it uses."""

    def __init__(self, *, safe: bool) -> None:
        # A short path: the name of a socket may have about a hundred characters.
        self._folder = Path(tempfile.mkdtemp(prefix="cellar-pg-", dir=None if safe else fast()))
        self._programs = programs()
        self._numbers = count(1)
        # The server refuses to run as root.
        self._user = SUPERUSER if os.geteuid() == 0 else None
        if self._user is not None:
            shutil.chown(self._folder, self._user)
        data = self._folder / "data"
        self._run(
            "initdb", "-D", data, "-U", SUPERUSER, "-A", "trust", "-E", "UTF8", "--no-sync",
            "--locale=C.UTF-8", "--locale-provider=icu", "--icu-locale=en-GB",
        )  # fmt: skip
        options = ["-k", str(self._folder), "-c", "listen_addresses=", "-c", "max_connections=200"]
        options += [] if safe else NOT_SAFE
        log = self._folder / "log"
        self._run("pg_ctl", "-D", data, "-l", log, "-o", " ".join(options), "-w", "start")
        self._connection = psycopg.connect(self._address("postgres"), autocommit=True)

    def database(self, like: str = "") -> str:
        """The address of a new database: an empty one, or a copy of the one that is given."""
        name = f"cellar_{next(self._numbers)}"
        template = name_in(like) if like else "template0"
        self._connection.execute(f"CREATE DATABASE {name} TEMPLATE {template}")
        return self._address(name)

    def drop(self, address: str) -> None:
        """Take a database away, also from those who have it open."""
        self._connection.execute(f"DROP DATABASE {name_in(address)} WITH (FORCE)")

    def stop(self) -> None:
        """Stop the server and leave nothing behind."""
        self._connection.close()
        self._run("pg_ctl", "-D", self._folder / "data", "-m", "immediate", "-w", "stop")
        shutil.rmtree(self._folder)

    def _address(self, name: str) -> str:
        return f"postgresql://{SUPERUSER}@/{name}?host={self._folder}"

    def _run(self, program: str, *arguments: str | Path) -> None:
        done = subprocess.run(
            [self._programs / program, *arguments],
            user=self._user,
            cwd=self._folder,
            env={"PATH": os.defpath, "LC_ALL": "C.UTF-8"},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
            text=True,
        )
        assert done.returncode == 0, f"{program}: {done.stderr}"


@contextmanager
def cluster(*, safe: bool = False) -> Iterator[Cluster]:
    """A server for as long as it is needed; with `safe`, one that outlives a power cut."""
    running = Cluster(safe=safe)
    try:
        yield running
    finally:
        running.stop()


def name_in(address: str) -> str:
    """The name of the database that an address leads to."""
    name = make_url(address).database
    assert name is not None
    return name


def fast() -> Path | None:
    """A folder in memory, where the system has one with room enough."""
    roomy = IN_MEMORY.is_dir() and shutil.disk_usage(IN_MEMORY).free > ROOM_BYTES
    return IN_MEMORY if roomy else None


def programs() -> Path:
    """Where initdb and its like are. Debian keeps the newest of several apart from the path."""
    debian = sorted(
        Path("/usr/lib/postgresql").glob("*/bin"), key=lambda folder: float(folder.parent.name)
    )
    if debian:
        return debian[-1]
    found = shutil.which("initdb")
    assert found, "PostgreSQL is not installed (Debian: apt-get install postgresql)"
    return Path(found).resolve().parent
