"""Remembers what trouble the database has made, so that a later look can tell of it.

One look says little: on a disk that is nearly full a small write goes well where a large one has
just failed, and most reads of a damaged file meet only sound pages.
"""

from weakref import WeakKeyDictionary

from sqlalchemy import Engine

from cellarapp.storage.db import db
from cellarapp.storage.errors import StorageDamaged, StorageTrouble

_met: WeakKeyDictionary[Engine, StorageTrouble] = WeakKeyDictionary()


def remember_trouble(fault: StorageTrouble) -> None:
    """The current application's database has made this trouble."""
    if not isinstance(_met.get(db.engine), StorageDamaged):
        _met[db.engine] = fault


def forget_trouble() -> None:
    """A write went well. Damage does not heal, and is remembered while the process lives."""
    if not isinstance(_met.get(db.engine), StorageDamaged):
        _met.pop(db.engine, None)


def known_trouble() -> StorageTrouble | None:
    """The trouble that has not passed."""
    return _met.get(db.engine)
