"""Long lists in pieces: a statement may carry only so many values."""

from collections.abc import Iterator, Sequence
from typing import TypeVar

T = TypeVar("T")

IN_PIECES = {"yield_per": 1000}
"""Option of a statement whose answer is too long to be held at once."""

MOST_VALUES = 900
"""Below the 999 that old builds of SQLite allow."""


def batches(values: Sequence[T], size: int = MOST_VALUES) -> Iterator[Sequence[T]]:
    """The values in pieces of at most `size`, in order."""
    for start in range(0, len(values), size):
        yield values[start : start + size]
