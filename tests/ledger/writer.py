"""A process that pushes into a ledger, started by test_many_processes.py.

It says "ready", waits for a line, pushes, and says when it began and ended and what became of
every entry.
"""

import json
import sys
from pathlib import Path
from time import monotonic

from cellarapp.app import opened
from cellarapp.ledger.take_in import take_in

from ..conftest import config_in
from ..making import Phone, batch

PUSHES = 12


def main(name: str, folder: str, database: str) -> None:
    phone, told = Phone(name), []
    with opened(config_in(Path(folder), database)):
        say("ready")
        sys.stdin.readline()
        began = monotonic()
        for number in range(PUSHES):
            told += take_in(batch(entries(phone, number))).verdicts
        ended = monotonic()
    words = [one.word for one in told]
    say(json.dumps({"began": began, "ended": ended, "words": words}))


def say(words: str) -> None:
    sys.stdout.write(words + "\n")
    sys.stdout.flush()


def entries(phone: Phone, number: int) -> list[dict[str, object]]:
    """Two containers that all writers fill, in an order that each has for itself, and one more.

    The last fill is taken out again, so that what counts is looked at too.
    """
    shared = [phone.filled("117"), phone.filled("118")]
    own = phone.filled(f"F{number}")
    void = phone.entry("voided", f"F{number}", target=own["id"])
    return [*(shared if phone.device > "8" else reversed(shared)), own, void]


if __name__ == "__main__":
    main(*sys.argv[1:])
