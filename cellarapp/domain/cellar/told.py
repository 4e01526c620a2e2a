"""TOLD: from what is on record of a container to what the rules of readiness are told of it.

Only what was noted is told; of what was not, each rule has the brewery's usual value or guesses.
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

from cellarapp.domain.cellar.times import ms_of
from cellarapp.domain.cellar.units import HOUR_MS
from cellarapp.domain.figures import figure
from cellarapp.domain.inputs import RANGES
from cellarapp.domain.records import Record
from cellarapp.domain.standing import Contents, Dose, Serving, Standing

Read = tuple[str, int]
"""An instant, and tenths of a degree C."""

SAME_DECIDEGC = 2
SAME_HOURS = 3


class Around(NamedTuple):
    """The records that a container's readiness hangs on; None where there is none."""

    beer: Record | None
    gyle: Record | None
    place: Record | None


def _field(record: Record | None, name: str) -> Any:
    return None if record is None else record["fields"].get(name)


def _degrees_c(name: str, decidegc: int | None) -> float | None:
    """Left out where no such thing can have been meant."""
    if decidegc is None:
        return None
    known = RANGES[name]
    return decidegc / 10 if known["low"] <= decidegc / 10 <= known["high"] else None


def _last_isinglass(contents: Contents) -> Dose | None:
    fined = [dose for dose in contents["doses"] if dose["what"] == "isinglass"]
    return fined[-1] if fined else None


def is_fined(contents: Contents, beer: Record | None) -> bool | None:
    """TOLD-1: whether it was fined: as noted with the fill, else as the beer's own rate says.

    None where neither tells: the rule takes what is usual.
    """
    if _last_isinglass(contents) is not None:
        return True
    if contents["doses"] or _field(beer, "vegan") is True:
        return False
    rate = _field(beer, "isinglass_ml_per_hl")
    return None if rate is None else rate > 0


def _fining(contents: Contents, beer: Record | None) -> dict[str, Any]:
    dose = _last_isinglass(contents)
    moves = contents["moves"] - (dose["moves"] if dose else 0)
    moved = contents["moved"]
    return {
        "fined": is_fined(contents, beer),
        "fined_at": dose["since"] if dose else None,
        "moves": min(RANGES["moves"]["high"], moves),
        "last_moved_at": moved["since"] if moved else None,
    }


def _first_drawn_at(standing: Standing) -> str | None:
    """TOLD-2: tapped the day before a sale it is drawn from when that begins.

    A dip may tell otherwise, and a plan for long after tapping is not believed.
    """
    serving, planned, contents = standing["serving"], standing["planned"], standing["contents"]
    tapped = serving["tapped"]["since"] if serving and serving["tapped"] else None
    sale = planned["sale_at"] if planned else None
    if tapped is None or sale is None or sale <= tapped:
        return None
    if ms_of(sale) - ms_of(tapped) > figure("tapped_ahead_most_hours") * HOUR_MS:
        return None
    dips = contents["dips"] if contents else []
    drawn = any(
        dip["at"] < sale and contents and dip["left_ml"] < contents["volume_ml"] for dip in dips
    )
    return None if drawn else sale


def _serving(serving: Serving | None) -> dict[str, Any]:
    stillaged = serving["stillaged"] if serving else None
    vented = serving["vented"] if serving else None
    tapped = serving["tapped"] if serving else None
    return {
        "stillaged_at": stillaged["since"] if stillaged else None,
        "vented_at": vented["first_at"] if vented else None,
        "hard_spile_at": vented["since"] if vented and vented["spile"] == "hard" else None,
        "tapped_at": tapped["since"] if tapped else None,
    }


def _thinned(readings: Sequence[Read]) -> list[Read]:
    """TOLD-3: what is so near to the reading before, and so soon after it, tells nothing new."""
    found: list[Read] = []
    for at, decidegc in readings:
        if _degrees_c("reading_temp_c", decidegc) is None:
            continue
        if found:
            before, was = found[-1]
            soon = ms_of(at) - ms_of(before) < SAME_HOURS * HOUR_MS
            if soon and abs(decidegc - was) <= SAME_DECIDEGC:
                continue
        found.append((at, decidegc))
    return found


def _on_arrival(readings: Sequence[Read], since: str) -> list[Read]:
    """What the place's thermometer showed when it came there, if that was read not long before."""
    before = [one for one in readings if one[0] <= since]
    stands_ms = figure("reading_stands_hours") * HOUR_MS
    if not before or ms_of(since) - ms_of(before[-1][0]) > stands_ms:
        return []
    return [(since, before[-1][1])]


def _air(standing: Standing, contents: Contents, place: Record | None) -> dict[str, Any]:
    """TOLD-4: only where it is now is known, and since when.

    The place's readings are its own from then on; the place's usual temperature speaks for every
    hour without one.
    """
    if standing["place"] is None:
        return {}
    since = standing["place"]["since"]
    begins = max(since, contents["since"])
    read = [] if place is None else place["temperatures"]
    every = _thinned([(str(at), int(decidegc)) for at, decidegc in read])
    readings = [*_on_arrival(every, begins), *(one for one in every if one[0] > begins)]
    place_temp_c = _degrees_c("place_temp_c", _field(place, "temp_decidegc"))
    return {
        "stays": [{"since_at": since, "place_temp_c": place_temp_c}],
        "readings": [{"at": at, "reading_temp_c": decidegc / 10} for at, decidegc in readings],
    }


def _holds_ml(standing: Standing, contents: Contents) -> int | None:
    capacity = standing["capacity_ml"]
    ml = contents["volume_ml"] if capacity is None else capacity
    return ml if RANGES["holds_ml"]["low"] <= ml <= RANGES["holds_ml"]["high"] else None


def cask_inputs(standing: Standing, around: Around) -> dict[str, Any] | None:
    """TOLD-5: what `ready` and the plans are told; None while there is no beer in it.

    Twin: static/src/domain/cellar/told.ts.
    """
    contents = standing["contents"]
    if contents is None:
        return None
    beer, gyle, place = around
    tasted = contents["tasted"]
    return {
        "filled_at": contents["since"],
        "shape": standing["shape"],
        "holds_ml": _holds_ml(standing, contents),
        "conditioning_days": _field(beer, "conditioning_days"),
        "best_before_on": contents["best_before"],
        "on_sale_days": _field(beer, "on_sale_days"),
        "fill_temp_c": _degrees_c("fill_temp_c", _field(gyle, "fining_temp_decidegc")),
        "tasted_at": tasted["since"] if tasted else None,
        **_fining(contents, beer),
        **_serving(standing["serving"]),
        "first_drawn_at": _first_drawn_at(standing),
        **_air(standing, contents, place),
    }
