"""A container's number: what the brewery stamped on it, and its identity.

Two phones that register or fill 117 without a network speak of the same container,
so the number itself is the id and nothing has to be matched up later.
"""

import re

from cellarapp.domain.errors import NotANumber

NORMAL = re.compile(r"(?=[A-Z0-9]*[0-9])[A-Z0-9]{1,8}")
BETWEEN = re.compile("[ \\t\u00a0.-]+")
DIGITS = re.compile("[0-9]+")


def is_number(text: str) -> bool:
    """Whether the text is a container's number in its normal form."""
    return NORMAL.fullmatch(text) is not None


def normal_number(text: str) -> str:
    """The one way a number is written: capitals and digits, nothing between them.

    "f 117", "F-117" and "F117" are one number. At most 8 characters, at least one digit.
    Raises: NotANumber.
    """
    number = BETWEEN.sub("", text).upper()
    if not is_number(number):
        raise NotANumber(text=text)
    return number


def bare_digits(number: str) -> str:
    """The digits of a number without letters and leading noughts: "K012" is "12"."""
    return "".join(DIGITS.findall(number)).lstrip("0") or "0"


def matches(typed: str, number: str) -> bool:
    """Whether what was typed on the pad means this container.

    The number itself always does; digits alone also find the containers that carry letters beside
    the same digits, so that 12 offers both 12 and K12.
    """
    if DIGITS.fullmatch(typed) is None:
        return typed == number
    return bare_digits(typed) == bare_digits(number)


MOST_AT_ONCE = 100
"""A longer run at the bench or on the van is a slip."""


def run_of_numbers(first: str, last: str, most: int = MOST_AT_ONCE) -> list[str]:
    """The numbers of a run such as 117 to 124 or K7 to K12, first and last included.

    Both ends carry the same letters in front; the written width is kept (007 to 010).
    Raises: NotANumber when the ends do not make a run of 2 numbers to the most.
    """
    front, start = _split(first)
    back, end = _split(last)
    if back == "" and front != "":
        back = front
    count = int(end) - int(start) + 1 if start and end else 0
    if front != back or not 2 <= count <= most or not is_number(f"{front}{end}"):
        raise NotANumber(text=f"{first}-{last}")
    width = len(start)
    return [f"{front}{n:0{width}d}" for n in range(int(start), int(end) + 1)]


def _split(number: str) -> tuple[str, str]:
    digits = re.search(r"[0-9]+\Z", number)
    return (number[: digits.start()], digits.group()) if digits else (number, "")
