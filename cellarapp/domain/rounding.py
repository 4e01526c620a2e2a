"""The one rounding rule. Rounding happens once, at the edge, on what is shown."""

import math

NUDGE = 1 + 1e-12
"""Two languages' exp, log and pow may differ in the last bit, and 1.005 is held as a little less.

A value that lies within a millionth of a millionth below a half is taken to be that half.
"""


def half_up(value: float, digits: int) -> float:
    """The value to so many digits after the point; halves go away from nought.

    Twin: static/src/domain/rounding.ts#halfUp.
    """
    steps: int = 10**digits
    whole = math.floor(abs(value) * steps * NUDGE + 0.5)
    rounded = whole / steps
    return -rounded if value < 0 and whole else rounded


def half_up_whole(value: float) -> int:
    """The nearest whole number; halves go away from nought."""
    return int(half_up(value, 0))


def cut(value: float, digits: int) -> float:
    """The value cut down, not rounded, to so many digits; not below nought.

    A value that lies within a millionth of a millionth below a step is taken to have reached it.
    """
    steps: int = 10**digits
    return math.floor(value * steps * NUDGE) / steps
