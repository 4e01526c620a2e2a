"""What stands in a cell, read into what an entry holds."""

import re
from datetime import date, datetime
from decimal import Decimal, InvalidOperation

from cellarapp.domain.containers import CONTAINER_KINDS, LARGEST_ML
from cellarapp.domain.errors import NotANumber
from cellarapp.domain.inputs import RANGES
from cellarapp.domain.numbers import normal_number

MOST_ML = 4 * LARGEST_ML
MOST_TARE_G = 1_000_000
FIRST_YEAR = 2000
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
DATE_FORMS = ("%Y-%m-%d", "%d/%m/%Y", "%d.%m.%Y", "%d-%m-%Y", "%d/%m/%y", "%d %B %Y", "%d %b %Y")


class CellNotReadable(Exception):
    """The words say what the cell should hold."""


def number(text: str) -> str:
    """A container's number, in normal form."""
    try:
        return normal_number(text)
    except NotANumber as fault:
        raise CellNotReadable(
            f"“{text}” is not a container's number: one to eight letters and digits, "
            "at least one of them a digit."
        ) from fault


def kind(text: str) -> str:
    """A kind of container, by its name or size: "Firkins", "9 gallon cask", "keg 50L"."""
    found = _KINDS.get(_sorted_out(text))
    if found is None:
        raise CellNotReadable(f"“{text}” is not a kind of container. Write one of: {KIND_NAMES}.")
    return found


UNSAID = {"litre": "", "ltr": "", "l": "", "gallon": "gal", "g": "gal", "x": ""}
"""What people write for units, or leave out."""


def _sorted_out(text: str) -> frozenset[str]:
    """The words of a kind in no order, singular, units as we write them."""
    said = [one.removesuffix("s") for one in re.findall(r"[a-z]+|[0-9]+", text.casefold())]
    return frozenset(UNSAID.get(one, one) for one in said) - {""}


def _kinds() -> dict[frozenset[str], str]:
    known: dict[frozenset[str], str] = {}
    for kind_id, about in CONTAINER_KINDS.items():
        names = [about["name"], f"{about['name']} {about['shape']}"]
        if about["shape"] == "cask" and about["gallons"] is not None:
            names += [f"{about['gallons']:g} gal", f"{about['gallons']:g} gal cask"]
        if kind_id.startswith("other_"):
            names += [kind_id, f"another {about['name']}"]
        known |= {_sorted_out(name): kind_id for name in names}
    return known


_KINDS = _kinds()
KIND_NAMES = ", ".join(about["name"] for about in CONTAINER_KINDS.values())


def litres_as_ml(text: str) -> int:
    """Litres, with or without the letter, as mL."""
    ml = _decimal(text, "l", "litres", "litre") * 1000
    if not 1 <= ml <= MOST_ML:
        raise CellNotReadable(f"“{text}” must be litres from 0.001 to {MOST_ML // 1000}.")
    return round(ml)


def kilograms_as_g(text: str) -> int:
    """Kilograms as g."""
    grams = _decimal(text, "kg") * 1000
    if not 1 <= grams <= MOST_TARE_G:
        raise CellNotReadable(f"“{text}” must be kilograms from 0.001 to {MOST_TARE_G // 1000}.")
    return round(grams)


def bar_as_millibar(text: str) -> int:
    """Bar above the atmosphere as thousandths."""
    low, high = RANGES["limit_bar"]["low"], RANGES["limit_bar"]["high"]
    bar = _decimal(text, "bar")
    if not Decimal(str(low)) <= bar <= Decimal(str(high)):
        raise CellNotReadable(f"“{text}” must be bar from {low:g} to {high:g}.")
    return round(bar * 1000)


def whole_days(text: str) -> int:
    """A whole number of days, 0 to 1000."""
    days = _decimal(text, "days", "day")
    if days != int(days) or not 0 <= days <= 1000:
        raise CellNotReadable(f"“{text}” must be a whole number of days from 0 to 1000.")
    return int(days)


def weekday(text: str) -> int:
    """A day of the week by its name or the beginning of it; Monday is 0."""
    plain = text.casefold().rstrip(".")
    found = [n for n, name in enumerate(DAYS) if len(plain) >= 2 and name.startswith(plain)]
    if len(found) != 1:
        raise CellNotReadable(f"“{text}” is not a day of the week. Write Tuesday, for example.")
    return found[0]


def day(text: str) -> str:
    """A date as 2026-11-25, day before month as in Britain."""
    found = _day(text)
    if found is None:
        raise CellNotReadable(
            f"“{text}” is not a date. Write day, month and year, such as 25/11/2026, or 2026-11-25."
        )
    if not FIRST_YEAR <= found.year <= 2100:
        raise CellNotReadable(f"“{text}” is not a date from {FIRST_YEAR} on.")
    return found.isoformat()


def _day(text: str) -> date | None:
    for form in DATE_FORMS:
        try:
            return datetime.strptime(text, form).date()  # noqa: DTZ007 - a day has no time zone
        except ValueError:
            continue
    return None


def words(text: str, most: int) -> str:
    """Any words, at most so many characters."""
    plain = " ".join(text.split())
    if len(plain) > most:
        raise CellNotReadable(f"This is longer than {most} characters.")
    return plain


def _decimal(text: str, *units: str) -> Decimal:
    plain = text.casefold().replace(" ", "")
    for unit in units:
        plain = plain.removesuffix(unit)
    if re.fullmatch(r"\d+,\d{3}", plain):
        raise CellNotReadable(f"“{text}” can be read in two ways. Write it without a comma.")
    plain = plain.replace(",", ".")
    try:
        found = Decimal(plain)
    except InvalidOperation as fault:
        raise CellNotReadable(f"“{text}” is not a figure.") from fault
    if not found.is_finite():
        raise CellNotReadable(f"“{text}” is not a figure.")
    return found
