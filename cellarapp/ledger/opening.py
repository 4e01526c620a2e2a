"""Opens the ledger when the application starts."""

from uuid import uuid4

from cellarapp.domain import RULES_VERSION
from cellarapp.storage.errors import Overtaken
from cellarapp.storage.work import reading, writing


def open_ledger() -> None:
    """Make the head of a new ledger; two processes that start at once make one."""
    with reading() as work:
        if work.head.find() is not None:
            return
    try:
        with writing() as work:
            if work.head.find() is None:
                work.head.make(epoch=str(uuid4()), rules=RULES_VERSION)
    except Overtaken:
        return
