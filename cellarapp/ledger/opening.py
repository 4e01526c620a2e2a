"""Opens the ledger when the application starts."""

import logging
from uuid import uuid4

from cellarapp.domain import RULES_VERSION
from cellarapp.ledger.rebuild import rebuild
from cellarapp.ledger.release import RightsOf, release_held
from cellarapp.storage.heads import HeadState
from cellarapp.storage.work import reading, writing

logger = logging.getLogger(__name__)


def open_ledger(rights: RightsOf) -> None:
    """Make a new ledger, or bring the rows of an old one up to the rules of this release.

    Args:
        rights: the rights of what a device sent, by its id; for what was held and is tried again.
    """
    with reading() as work:
        head = work.head.find()
    if head is None:
        _begin()
        return
    _catch_up(head, rights)


def begin_another_life() -> None:
    """Give the ledger another epoch: phones then see that it is not as they knew it."""
    with writing() as work:
        work.head.write(epoch=str(uuid4()))


def _begin() -> None:
    """Make the head; two processes that start at once make one."""
    with writing() as work:
        if work.head.find() is None:
            work.head.make(epoch=str(uuid4()), rules=RULES_VERSION)


def _catch_up(head: HeadState, rights: RightsOf) -> None:
    if head.rules != RULES_VERSION:
        changed = rebuild()
        logger.info("rules %s instead of %s: %s rows changed", RULES_VERSION, head.rules, changed)
    released = release_held(rights)
    if released:
        logger.info("%s entries that were held are in the ledger now", released)
