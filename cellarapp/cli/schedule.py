"""Makes backups while the server serves, each in a process of its own.

A process of its own takes neither the server's time nor its memory, and can fail by itself.
"""

import logging
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from threading import Event, Thread

from cellarapp.config import Config
from cellarapp.storage.backups import Keeping, backups_in

COMMAND = [sys.executable, "-c", "from cellarapp.cli import main; raise SystemExit(main())"]
FIRST_AFTER = timedelta(minutes=5)
"""So long after its start a server makes the first backup there is."""
AT_REST_S = 2
AGAIN_AFTER = timedelta(minutes=10)
"""So long after a backup that failed the next one is tried."""

logger = logging.getLogger(__name__)


class Schedule:
    """Backups at their times, from `start` to `stop`. Settings reach the process by environment."""

    def __init__(self, config: Config) -> None:
        self._folder = config.backups
        self._every = Keeping(*config.keep).every
        self._due = datetime.now(UTC) + FIRST_AFTER
        self._stopped = Event()
        self._process: subprocess.Popen[bytes] | None = None
        self._thread = Thread(target=self._keep_on, daemon=True)

    def start(self) -> None:
        """Begin; nothing is made if no backups are to be kept."""
        if self._every is not None:
            self._thread.start()

    def stop(self) -> None:
        """End, and a backup that is being made with it."""
        self._stopped.set()
        if self._process is not None:
            self._process.terminate()
        if self._thread.is_alive():
            self._thread.join()

    def _keep_on(self) -> None:
        assert self._every is not None
        # The worker is forked meanwhile; this thread must be at rest then, holding no lock.
        if self._stopped.wait(AT_REST_S):
            return
        last = max(backups_in(self._folder), default=None)
        if last is not None:
            self._due = last + self._every
        while not self._stopped.wait(self._wait_s()):
            done = self._make()
            self._due = datetime.now(UTC) + (self._every if done else AGAIN_AFTER)

    def _wait_s(self) -> float:
        return max(0.0, (self._due - datetime.now(UTC)).total_seconds())

    def _make(self) -> bool:
        self._process = subprocess.Popen([*COMMAND, "backup"], stdin=subprocess.DEVNULL)
        status = self._process.wait()
        if status != 0 and not self._stopped.is_set():
            logger.error("the backup failed; it is tried again in %s", AGAIN_AFTER)
        return status == 0
