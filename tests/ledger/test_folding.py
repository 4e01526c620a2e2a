"""Late entries and corrections: rows are folded anew where stepping forward would not do."""

import json

import pytest

from cellarapp.ledger.check import check
from cellarapp.ledger.history import history

from ..making import Phone, made_id
from .looking import docs, standing, words

pytestmark = pytest.mark.usefixtures("app")


def drawn_ml(gyle: str) -> int:
    found: int = json.loads(docs()["gyle", made_id(gyle)])["drawn_ml"]
    return found


def test_late_entry_takes_its_place_in_the_past() -> None:
    """ORD-1: the wash that another phone noted before the fill."""
    bench, yard = Phone("bench"), Phone("yard")
    words(bench.entry("emptied", "117", at="2026-11-20T09:00:00.000Z"))
    words(bench.filled("117", at="2026-11-22T09:00:00.000Z"))
    assert [q["rule"] for q in standing("117")["queries"]] == ["unwashed"]
    words(yard.entry("washed", "117", at="2026-11-21T09:00:00.000Z"))
    assert standing("117")["queries"] == []


def test_void_takes_its_target_out_and_a_void_of_the_void_brings_it_back() -> None:
    """ORD-3: with what was drawn from the gyle."""
    phone = Phone()
    fill = phone.filled("117")
    void = phone.entry("voided", "117", target=fill["id"])
    words(fill, void)
    assert (standing("117")["contents"], drawn_ml("gyle 1")) == (None, 0)
    words(phone.entry("voided", "117", target=void["id"]))
    assert (standing("117")["contents"]["volume_ml"], drawn_ml("gyle 1")) == (40_000, 40_000)


def test_correction_waits_for_its_target() -> None:
    """ORD-3: whichever phone finds a signal first."""
    phone = Phone()
    fill = phone.filled("117")
    assert words(phone.entry("voided", "117", target=fill["id"])) == ["accepted"]
    words(fill)
    assert (standing("117")["contents"], drawn_ml("gyle 1")) == (None, 0)
    assert check() == []


def test_renumbered_fill_counts_for_the_other_container() -> None:
    """ORD-3: the gyle has lost no more and no less."""
    phone = Phone()
    fill = phone.filled("117")
    words(fill, phone.filled("120"))
    words(phone.entry("renumbered", "117", target=fill["id"], to="118"))
    assert standing("117")["contents"] is None
    assert standing("118")["contents"]["entry"] == fill["id"]
    assert drawn_ml("gyle 1") == 80_000


def test_correction_of_one_fill_settles_the_query_of_two() -> None:
    """LIFE-21: the way out names the entry that goes."""
    one, other = Phone("one"), Phone("other")
    first = one.filled("117", at="2026-11-25T09:00:00.000Z")
    second = other.filled("117", at="2026-11-25T09:30:00.000Z", gyle=made_id("gyle 2"))
    words(second, first)
    query = standing("117")["queries"][0]["id"]
    words(one.entry("settled", "117", query=query, way=f"void:{second['id']}"))
    assert standing("117")["queries"] == []
    assert (drawn_ml("gyle 1"), drawn_ml("gyle 2")) == (40_000, 0)


def test_voided_name_of_a_beer_gives_way_to_the_one_before() -> None:
    """A record is folded like anything else."""
    phone, beer = Phone(), made_id("beer")
    words(phone.entry("beer", beer, name="Bitter"))
    slip = phone.entry("beer", beer, name="Bittre")
    words(slip)
    words(phone.entry("voided", "117", target=slip["id"]))
    assert json.loads(docs()["beer", beer])["fields"] == {"name": "Bitter"}
    assert check() == []


def test_history_says_what_each_entry_counts_for_and_what_took_it_out() -> None:
    """In the order in which things happened, with what came from elsewhere."""
    phone = Phone()
    gone, moved = phone.filled("117"), phone.filled("118", at="2026-11-25T08:00:00.000Z")
    void = phone.entry("voided", "117", target=gone["id"])
    move = phone.entry("renumbered", "118", target=moved["id"], to="117")
    words(gone, moved, void, move)
    found = history("117")
    assert found is not None
    assert [(e["id"], e["counts_for"], e["dropped_by"]) for e in found[1]] == [
        (moved["id"], "117", None),
        (gone["id"], None, void["id"]),
        (void["id"], "117", None),
    ]


def test_container_that_nobody_spoke_of_has_no_history() -> None:
    """Not even an empty one."""
    assert history("999") is None
