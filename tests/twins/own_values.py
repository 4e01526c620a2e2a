"""What a brewery may have set in place of a figure."""

import math
from typing import Any

from hypothesis import strategies as st

from cellarapp.domain.figures import FIGURES


def own_value(name: str) -> st.SearchStrategy[Any]:
    """A value in its range, whole or not; of a list now and then one that does not rise."""
    known = FIGURES[name]
    low, high = known["low"], known["high"]
    one = st.floats(low, high) | st.integers(math.ceil(low), math.floor(high))
    if "least" not in known:
        return one
    values = st.lists(one, min_size=known["least"], max_size=known["most"])
    return st.one_of(*[values.map(sorted)] * 9, values)


def own_or_none(name: str) -> st.SearchStrategy[Any]:
    """The settings of a brewery that has set this figure, or nothing."""
    return st.none() | own_value(name).map(lambda value: {name: value})
