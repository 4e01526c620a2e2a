"""What is said on the pages that need no sign-in: by customers, and by somebody out for a walk."""

from datetime import date

from cellarapp.demo.brewery import Brewery
from cellarapp.demo.clock import at
from cellarapp.demo.fleet import Container
from cellarapp.demo.van import held_by
from cellarapp.pages.customer import BY_THE_CUSTOMER
from cellarapp.pages.finder import FINDER


def say(brewery: Brewery, day: date) -> None:
    """A pub has two empties to collect, another never had one, and the missing one was seen."""
    drunk = [_drunk(brewery, index, day) for index in range(len(brewery.customers))]
    ready = max(drunk, key=len)
    for minute, container in enumerate(ready[:2]):
        _tell(brewery, day, 40 + minute, container, "empty")
    other = next(few for few in drunk if few and few is not ready)
    _tell(brewery, day, 52, other[0], "not_here")
    [missing] = brewery.standing("missing")
    brewery.book.note(
        brewery.office, at(day, 18, 25), "reported", missing.number, by=FINDER,
        where="In the nettles by the mill bridge", words="Upright, seems empty", name="", phone="",
    )  # fmt: skip


def _drunk(brewery: Brewery, index: int, day: date) -> list[Container]:
    held = held_by(brewery, brewery.customers[index])
    return [c for c in held if c.trip is not None and c.trip.drunk_on <= day and not c.kept]


def _tell(brewery: Brewery, day: date, minute: int, container: Container, says: str) -> None:
    if container.trip is None:
        raise LookupError(f"{container.number} is with nobody")
    customer = brewery.customers[container.trip.customer].id
    brewery.book.note(
        brewery.office, at(day, 17, minute), "told", container.number, by=BY_THE_CUSTOMER,
        customer=customer, says=says,
    )  # fmt: skip
