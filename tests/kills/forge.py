"""Starts servers quickly: a process that has the program loaded already and forks.

What it starts is `cellarapp serve` and all that belongs to it, in a session of its own. Only the
half second in which Python reads the program is saved.
"""

import json
import os
import signal
import sys

from cellarapp.cli import main


def serve(environment: dict[str, str], log: str) -> None:
    os.setsid()
    sys.stdout.write(f"{os.getpid()}\n")
    sys.stdout.flush()
    signal.signal(signal.SIGCHLD, signal.SIG_DFL)
    os.environ.update(environment)
    target = os.open(log, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    nothing = os.open(os.devnull, os.O_RDONLY)
    for ours, theirs in ((nothing, 0), (target, 1), (target, 2)):
        os.dup2(ours, theirs)
    sys.exit(main(["serve"]))


def forge() -> None:
    """Read a line for each server, with its environment and its log; it answers with its number."""
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # nobody waits for those that end
    for line in sys.stdin:
        environment, log = json.loads(line)
        if os.fork() == 0:
            serve(environment, log)


if __name__ == "__main__":
    forge()
