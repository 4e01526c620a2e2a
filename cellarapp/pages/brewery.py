"""Whose containers these are, as a stranger is told."""

import re
from dataclasses import dataclass

from cellarapp.ledger.on_record import fields_of

NOT_DIALLED = re.compile("[^+0-9]")


@dataclass(frozen=True, slots=True)
class Brewery:
    """What the brewery has entered of itself; nothing else of it is shown."""

    name: str
    address: str
    phone: str
    email: str

    @property
    def tel(self) -> str:
        """The number as a telephone dials it."""
        return NOT_DIALLED.sub("", self.phone)


def the_brewery() -> Brewery:
    """The brewery as it stands on record."""
    fields = fields_of("brewery", "brewery")
    return Brewery(*(fields.get(name) or "" for name in ("name", "address", "phone", "email")))
