"""From what is on record to what stands on plates and labels, with what is missing in words."""

from collections.abc import Iterable, Mapping
from typing import Any

from cellarapp.documents.labels.fill import FillLabel
from cellarapp.documents.labels.finings import is_fined, sulphites_mg_per_l
from cellarapp.documents.labels.plate import Plate
from cellarapp.domain.calendar import london_date, parse_day
from cellarapp.domain.cellar.date_mark import date_mark
from cellarapp.domain.cellar.label import label
from cellarapp.domain.cellar.lot import lot_mark
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.errors import DomainError
from cellarapp.domain.figures import Settings
from cellarapp.domain.standing import Contents, Standing

Rows = Mapping[str, Mapping[str, Any]]
"""Everything on record: by type of row, then by id."""

TYPES = ("brewery", "container", "beer", "gyle", "lot")
"""The types of rows that labels are made from."""


class CannotLabel(Exception):
    """Something that has to stand on a label is not on record; the message says what to enter."""


def collect_plates(numbers: Iterable[str], rows: Rows) -> list[Plate]:
    """The plates of these containers. Raises: CannotLabel."""
    brewery = _brewery(rows)
    if not brewery.get("web"):
        raise CannotLabel(
            "Enter the brewery's address on the web first, at the Office: a plate carries it for "
            "as long as the container lasts."
        )
    return [_plate(_standing(number, rows), brewery) for number in numbers]


def _plate(standing: Standing, brewery: Mapping[str, Any]) -> Plate:
    kind = standing["kind"]
    if kind is None:
        raise CannotLabel(f"{standing['number']} is not registered yet: enter its kind first.")
    name = CONTAINER_KINDS[kind]["name"]
    prefix = brewery.get("company_prefix", "")
    return Plate(standing["number"], kind, name, brewery["name"], brewery["web"], prefix)


def collect_fill_labels(numbers: Iterable[str], rows: Rows, settings: Settings) -> list[FillLabel]:
    """The labels of what is in these containers now. Raises: CannotLabel."""
    return [_fill_label(_standing(number, rows), rows, settings) for number in numbers]


def _fill_label(standing: Standing, rows: Rows, settings: Settings) -> FillLabel:
    number, contents = standing["number"], standing["contents"]
    if contents is None:
        raise CannotLabel(f"{number} is empty by what is on record: there is nothing to label.")
    gyle = rows["gyle"].get(contents["gyle"], {"fields": {}})["fields"]
    beer = rows["beer"].get(gyle.get("beer", ""), {"fields": {}})["fields"]
    if not beer.get("name") or beer.get("abv_tenths") is None:
        raise CannotLabel(
            f"The beer in {number} has no name or no strength on record. Enter them at the Office."
        )
    brewery = _brewery(rows)
    isinglass = is_fined(contents, beer)
    lots = {key: lot["fields"] for key, lot in rows["lot"].items()}
    says = label(
        {
            "abv_tenths": beer["abv_tenths"],
            "cereals": beer.get("cereals") or [],
            "milk": beer.get("milk") or False,
            "isinglass": isinglass is not False,
            "sulphites_mg_per_l": sulphites_mg_per_l(contents, gyle, beer, lots, settings),
        },
        settings,
    )["result"]
    return FillLabel(
        beer=beer["name"],
        number=number,
        strength=says["strength_words"],
        date=_date_words(contents, beer["abv_tenths"], settings),
        lot=_lot_words(gyle, london_date(contents["since"]), settings),
        racked=f"Racked {_day_words(london_date(contents['since']))}",
        contains=says["contains_words"],
        fined=_fined_words(isinglass),
        holds=f"{contents['volume_ml'] / 1000:.1f} L",
        maker=", ".join(filter(None, (brewery["name"], brewery.get("address")))),
    )


def _fined_words(isinglass: bool | None) -> str:
    if isinglass is None:
        return ""
    return "Fined with isinglass" if isinglass else "Unfined"


def _date_words(contents: Contents, abv_tenths: int, settings: Settings) -> str:
    best = contents["best_before"]
    if best is None:
        return ""
    packed_on = london_date(contents["since"])
    asked = {"packed_on": packed_on, "best_before_on": best, "abv_tenths": abv_tenths}
    try:
        return str(date_mark(asked, settings)["result"]["words"])
    except DomainError as fault:
        raise CannotLabel(
            f"Best before {_day_words(best)} does not fit its day of racking, "
            f"{_day_words(packed_on)}. Put one of them right."
        ) from fault


def _lot_words(gyle: Mapping[str, Any], racked_on: str, settings: Settings) -> str:
    if not gyle.get("number"):
        return ""
    asked = {"gyle_number": gyle["number"], "racked_on": racked_on}
    return f"Lot {lot_mark(asked, settings)['result']['mark']}"


def _day_words(day: str) -> str:
    return f"{parse_day(day):%-d %b %Y}"


def _standing(number: str, rows: Rows) -> Standing:
    found: Standing | None = rows["container"].get(number)
    if found is None:
        raise CannotLabel(f"There is no {number} on record. Check the number, or register it.")
    return found


def _brewery(rows: Rows) -> Mapping[str, Any]:
    fields: Mapping[str, Any] = rows["brewery"].get("brewery", {"fields": {}})["fields"]
    if not fields.get("name"):
        raise CannotLabel("Enter the brewery's name first, at the Office.")
    return fields
