"""LIFE-20: the missing step that an entry implies.

A step that nobody noted, but without which the entry could not have happened, is taken with the
entry's own time and marked as inferred. When the missing entry arrives later it takes its place in
the order, the fold runs again, and the inferred step goes away by itself.
Each function answers with the names of the steps it took, none when there was nothing to infer.
"""

from cellarapp.domain.entries import Entry
from cellarapp.domain.queries import WHEREABOUTS, lapse
from cellarapp.domain.standing import Mark, Serving, Standing, Vent, mark

AT_THE_BREWERY = "brewery"
"""The place of a container that is in the brewery, nobody noted where."""


def end_of_beer(standing: Standing, entry: Entry, *, inferred: bool) -> None:
    """No beer in it any more: serving ends, it is dirty, and what hung on the beer lapses."""
    standing["contents"] = None
    standing["serving"] = None
    standing["planned"] = None
    standing["clean"] = {**mark(entry, inferred=inferred), "state": "dirty"}
    lapse(standing)


def be_in_hand(standing: Standing) -> list[str]:
    """LIFE-27: what somebody handles is not missing, and nobody has to ask where it is."""
    lapse(standing, WHEREABOUTS)
    return be_found(standing)


def be_found(standing: Standing) -> list[str]:
    """A container that is somewhere is not missing."""
    if standing["held"] is None or standing["held"]["state"] != "missing":
        return []
    standing["held"] = None
    return ["found"]


def be_back(standing: Standing, entry: Entry, *, with_its_beer: bool = False) -> list[str]:
    """A container handled at the brewery has come back from its customer."""
    if standing["trip"] is None:
        return []
    standing["trip"] = None
    standing["returned"] = mark(entry, inferred=True)
    standing["place"] = {**mark(entry, inferred=True), "at": AT_THE_BREWERY, "with_customer": False}
    if not with_its_beer:
        end_of_beer(standing, entry, inferred=True)
    return ["returned"]


def be_emptied(standing: Standing, entry: Entry) -> list[str]:
    """A container that is washed or filled has been emptied."""
    if standing["contents"] is None:
        return []
    end_of_beer(standing, entry, inferred=True)
    return ["emptied"]


def on_stillage(stillaged: Mark) -> Serving:
    """Serving begins: on the stillage, and no more than that."""
    return {"stillaged": stillaged, "vented": None, "tapped": None, "stooped": None}


def be_stillaged(standing: Standing, entry: Entry) -> tuple[Serving, list[str]]:
    """A container that is vented or tapped lies on the stillage."""
    serving = standing["serving"]
    if serving is not None and serving["stillaged"] is not None:
        return serving, []
    return on_stillage(mark(entry, inferred=True)), ["stillaged"]


def be_vented(serving: Serving, entry: Entry) -> tuple[Serving, list[str]]:
    """A container that is tapped has been vented; with which spile nobody said."""
    if serving["vented"] is not None:
        return serving, []
    vented: Vent = {
        **mark(entry, inferred=True),
        "spile": None,
        "first_at": entry["effective_at"],
    }
    return {**serving, "vented": vented}, ["vented"]
