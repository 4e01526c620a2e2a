"""What a brewery may have set in place of a figure."""

import math
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.figures import FIGURES

hours_of_a_bar = st.lists(st.integers(0, 7 * 24 * 60), min_size=2, max_size=14, unique=True).map(
    lambda minutes: sorted(minutes)[: len(minutes) // 2 * 2]
)
"""Opening and closing in turn."""


def own_value(name: str) -> st.SearchStrategy[Any]:
    """A value in its range, whole or not; of a list now and then one that does not rise."""
    known = FIGURES[name]
    low, high = known["low"], known["high"]
    one: st.SearchStrategy[Any] = st.floats(low, high)
    if math.ceil(low) <= math.floor(high):
        one |= st.integers(math.ceil(low), math.floor(high))
    if "least" not in known:
        return one
    values = st.lists(one, min_size=known["least"], max_size=known["most"])
    fits = hours_of_a_bar if name == "bar_hours" else values.map(sorted)
    return st.one_of(*[fits] * 9, values)


def own_or_none(name: str) -> st.SearchStrategy[Any]:
    """The settings of a brewery that has set this figure, or nothing."""
    return st.none() | own_value(name).map(lambda value: {name: value})
