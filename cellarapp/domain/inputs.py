"""What a rule is asked: every quantity is looked at before it is worked with.

Missing, text, yes or no, NaN, infinite and out of range are refused, each with the field and the
reason. The ranges of the usual fields stand once in ranges.json, which the phone reads too.
"""

import json
import math
from collections.abc import Mapping, Sequence
from importlib.resources import files
from typing import NotRequired, TypedDict

from cellarapp.domain.calendar import parse_day
from cellarapp.domain.errors import NotADate, NotAmong, OutOfRange

FIRST_DAY, LAST_DAY = "2000-01-01", "2100-12-31"

Inputs = Mapping[str, object]
"""What a rule is asked, by field, as it comes from a screen or over the wire."""


class Range(TypedDict):
    """What a field may hold, in its unit, and why no more; `whole` refuses parts of a unit."""

    low: float
    high: float
    unit: str
    why: str
    whole: NotRequired[bool]


RANGES: dict[str, Range] = json.loads(
    (files(__package__) / "ranges.json").read_text(encoding="utf-8")
)


def number_in(
    field: str, value: object, low: float | None, high: float | None, unit: str, why: str
) -> float:
    """The value as a number from low to high, either end included.

    Raises: OutOfRange for anything else.
    """
    number = _number(value)
    below = number is not None and low is not None and number < low
    above = number is not None and high is not None and number > high
    if number is None or not math.isfinite(number) or below or above:
        raise OutOfRange(field=field, given=shown(value), low=low, high=high, unit=unit, why=why)
    return number


def whole_in(
    field: str, value: object, low: float | None, high: float | None, unit: str, why: str
) -> int:
    """The value as a whole number from low to high; 3.0 is whole, 3.5 is refused."""
    unit = f"whole {unit}"
    number = number_in(field, value, low, high, unit, why)
    if not number.is_integer():
        raise OutOfRange(field=field, given=value, low=low, high=high, unit=unit, why=why)
    return int(number)


def choice_of(field: str, value: object, choices: Sequence[str], why: str) -> str:
    """The value, which is one of the choices. Raises: NotAmong."""
    if not isinstance(value, str) or value not in choices:
        raise NotAmong(field=field, given=shown(value), choices=list(choices), why=why)
    return value


def yes_or_no(field: str, value: object, why: str) -> bool:
    """The value, which is true or false. Raises: NotAmong."""
    if not isinstance(value, bool):
        raise NotAmong(field=field, given=shown(value), choices=[True, False], why=why)
    return value


def day_of(field: str, value: object) -> str:
    """The value as a day from 2000 to 2100, written 2026-11-25. Raises: OutOfRange."""
    try:
        if isinstance(value, str) and FIRST_DAY <= value <= LAST_DAY:
            return parse_day(value).isoformat()
    except NotADate:
        pass
    why = "A day is written year-month-day."
    raise OutOfRange(
        field=field, given=shown(value), low=FIRST_DAY, high=LAST_DAY, unit="day", why=why
    )


def number_of(field: str, value: object, at: str = "") -> float:
    """The value of a field whose range stands in ranges.json; `at` says in which of several."""
    known = RANGES[field]
    check = whole_in if known.get("whole") else number_in
    return check(at + field, value, known["low"], known["high"], known["unit"], known["why"])


class Asked:
    """What a rule was asked, read field by field.

    A name that the rule does not know is refused, so that a volume in other units is not passed
    over in silence. `at` names the place of a part in what was asked, such as "wishes[2].".
    """

    def __init__(self, inputs: object, *names: str, at: str = "") -> None:
        if not isinstance(inputs, Mapping):
            raise NotAmong(
                field=at + "inputs", given=shown(inputs), choices=list(names), why="Fields by name."
            )
        for name in inputs:
            if name not in names:
                raise NotAmong(
                    field=f"{at}{name}",
                    given=shown(inputs[name]),
                    choices=list(names),
                    why="The rule knows no such field.",
                )
        self.inputs = inputs
        self.at = at

    def has(self, field: str) -> bool:
        """Whether the field was answered at all."""
        return self.inputs.get(field) is not None

    def number(self, field: str) -> float:
        """A number within the field's range in ranges.json."""
        return number_of(field, self.inputs.get(field), self.at)

    def whole(self, field: str) -> int:
        """A whole number within the field's range in ranges.json."""
        return int(number_of(field, self.inputs.get(field), self.at))

    def choice(self, field: str, choices: Sequence[str], why: str) -> str:
        """One of the choices."""
        return choice_of(self.at + field, self.inputs.get(field), choices, why)

    def flag(self, field: str, why: str) -> bool:
        """Yes or no."""
        return yes_or_no(self.at + field, self.inputs.get(field), why)

    def parts(self, field: str, most: int, unit: str) -> list[object]:
        """A list of at most so many parts; each is then read by itself."""
        value = self.inputs.get(field)
        count = len(value) if isinstance(value, list) else None
        if not isinstance(value, list) or len(value) > most:
            raise OutOfRange(
                field=self.at + field,
                given=shown(value) if count is None else count,
                low=0,
                high=most,
                unit=f"whole {unit}",
                why="A list.",
            )
        return value


def shown(value: object) -> object:
    """What was given, in a form that an answer can carry: JSON knows no NaN and no infinity."""
    if value is None or isinstance(value, bool | str):
        return value
    number = _number(value)
    if number is None:
        return "not a number"
    if math.isnan(number):
        return "NaN"
    if math.isinf(number):
        return "infinite"
    return value


def _number(value: object) -> float | None:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    try:
        return float(value)
    except OverflowError:
        return math.inf
