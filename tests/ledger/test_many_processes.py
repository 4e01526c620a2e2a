"""Several processes that write into one ledger, and a reader that polls it meanwhile."""

import json
import subprocess
import sys
from pathlib import Path

from flask import Flask

from cellarapp.config import Config
from cellarapp.ledger.check import check

from .looking import docs
from .polling import Held
from .writer import PUSHES

ROOT = Path(__file__).parents[2]
WRITERS = ["ash", "birch", "cherry"]
ENTRIES_A_PUSH = 4


def start(name: str, config: Config) -> "subprocess.Popen[str]":
    address = "" if config.database_file else config.database_url
    return subprocess.Popen(
        [sys.executable, "-m", "tests.ledger.writer", name, str(config.data), address],
        cwd=ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )


def let_go(writer: "subprocess.Popen[str]") -> None:
    assert writer.stdin is not None
    writer.stdin.write("go\n")
    writer.stdin.flush()


def test_reader_that_polls_misses_nothing_of_several_processes(app: Flask, config: Config) -> None:
    """Positions become visible in order; nobody is sent away, and nothing is folded twice."""
    held, pulls = Held(), 0
    writers = {name: start(name, config) for name in WRITERS}
    for writer in writers.values():
        assert writer.stdout is not None
        assert writer.stdout.readline() == "ready\n"
    for writer in writers.values():
        let_go(writer)
    while any(writer.poll() is None for writer in writers.values()):
        held.pull(5)
        pulls += 1
    told = {name: json.loads(writer.communicate()[0]) for name, writer in writers.items()}
    while held.pull(5):
        pass

    words = [word for one in told.values() for word in one["words"]]
    assert words == ["accepted"] * (PUSHES * len(WRITERS) * ENTRIES_A_PUSH)
    assert held.docs() == docs()
    assert held.sum() == held.checksum
    assert json.loads(docs()["container", "117"])["fills"] == PUSHES * len(WRITERS)
    assert check() == []
    all_had_begun = max(one["began"] for one in told.values())
    one_had_ended = min(one["ended"] for one in told.values())
    assert all_had_begun < one_had_ended, "the processes did not write at the same time"
    assert pulls > 5
