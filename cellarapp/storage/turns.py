"""Whose turn it is, among threads that must do something one at a time."""

from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Condition

from cellarapp.storage.errors import StorageBusy


class Turns:
    """First come, first served.

    A plain lock goes to whoever asks at the right moment, so that a thread which has just let go
    of it often has it again, and another one may wait for as long as there is anything to do.
    """

    def __init__(self) -> None:
        self._changed = Condition()
        self._queue: deque[object] = deque()

    @property
    def waiting(self) -> int:
        """How many have asked: the one whose turn it is, and those behind."""
        return len(self._queue)

    @contextmanager
    def taken(self, *, within_s: float) -> Iterator[None]:
        """Wait for a turn and keep it for what is done within.

        Raises: StorageBusy when it does not come within `within_s` seconds.
        """
        ticket = object()
        with self._changed:
            self._queue.append(ticket)
            try:
                if not self._changed.wait_for(lambda: self._queue[0] is ticket, within_s):
                    raise StorageBusy
            except BaseException:
                self._leave(ticket)
                raise
        try:
            yield
        finally:
            with self._changed:
                self._leave(ticket)

    def _leave(self, ticket: object) -> None:
        self._queue.remove(ticket)
        self._changed.notify_all()
