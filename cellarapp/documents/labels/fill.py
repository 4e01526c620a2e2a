"""The label of one fill: what is in the container, and what the law and the cellar want to know."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from cellarapp.documents.labels.drawing import Area
from cellarapp.documents.labels.stock import Stock, print_labels


@dataclass(frozen=True)
class FillLabel:
    """The lines of a label, each worked out already; an empty one is left out."""

    beer: str
    number: str
    strength: str
    date: str
    lot: str
    racked: str
    contains: str
    fined: str
    holds: str
    maker: str


def fill_labels(stock: Stock, labels: Iterable[FillLabel], *, used: int = 0) -> bytes:
    """A PDF of fill labels."""
    drawing = (partial(_draw, one) for one in labels)
    return print_labels(stock, "Fill labels", drawing, used=used)


def _draw(label: FillLabel, area: Area) -> None:
    words = area.part(4, 4, 92, 42)
    words.write(label.beer, 22, bold=True)
    words.write(label.strength, 14, down_mm=9)
    words.write(label.date, 14, bold=True, down_mm=15.5)
    words.part(64, 0, 28, 14).write(label.number, 36, bold=True)
    beside = words.part(0, 0, 62, 42)
    lines = [
        " · ".join(filter(None, (label.racked, label.lot, label.holds))),
        label.contains,
        label.fined,
        label.maker,
    ]
    for at, line in enumerate(filter(None, lines)):
        beside.write(line, 9, down_mm=23 + at * 4.7)
