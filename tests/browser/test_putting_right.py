"""A slip of the thumb: undone, or moved to the right number, with a network and without."""

import pytest
from playwright.sync_api import Page, expect

from .brewery import Brewery, gyle_id
from .doings import all_at_the_brewery, fill, on_this_phone, said, shown, tap, type_number
from .phone import Phone


def test_a_fill_is_undone_before_it_was_sent(phone: Phone, bench: Page, brewery: Brewery) -> None:
    """With no signal; the brewery hears of both at once and of no full cask."""
    phone.lose_signal()
    fill(bench, "117")
    on_this_phone(bench, 1)
    tap(bench, "Undo")
    said(bench, "Undone: 117 filled.")
    expect(bench.get_by_text("None filled yet")).to_be_visible()
    phone.find_signal()
    all_at_the_brewery(bench)
    assert brewery.server.standing("117")["contents"] is None


def test_a_fill_is_undone_after_it_was_sent(bench: Page, brewery: Brewery) -> None:
    """The entry stays in the ledger, and another one takes it back."""
    fill(bench, "117")
    said(bench, "117 filled. At the brewery.")
    tap(bench, "Undo")
    said(bench, "Undone: 117 filled.")
    expect(bench.get_by_text("None filled yet")).to_be_visible()
    all_at_the_brewery(bench)
    [filled] = brewery.server.entries("117", "filled")
    assert filled["dropped_by"] is not None
    assert brewery.server.standing("117")["contents"] is None


@pytest.mark.parametrize("signal", [True, False], ids=["sent", "not sent"])
def test_a_wrong_number_is_moved(phone: Phone, bench: Page, brewery: Brewery, signal: bool) -> None:
    """It was 118: the fill stands under 118 then, on the phone at once and later at the brewery."""
    if not signal:
        phone.lose_signal()
    fill(bench, "117")
    if signal:
        all_at_the_brewery(bench)
    tap(bench, "Wrong number")
    expect(bench.get_by_text("Not 117: which number was it?")).to_be_visible()
    type_number(bench, "118")
    tap(bench, "Move to 118")
    said(bench, "Put down to 118, not 117.")
    expect(bench.get_by_text("1 firkin filled")).to_be_visible()
    phone.find_signal()
    all_at_the_brewery(bench)
    assert brewery.server.standing("117")["contents"] is None
    assert brewery.server.standing("118")["contents"]["gyle"] == gyle_id("901")


def test_the_right_number_is_looked_at_like_any_other(bench: Page, brewery: Brewery) -> None:
    """It was 201, which is dirty: that is said before the move, which can be undone as well."""
    fill(bench, "117")
    tap(bench, "Wrong number")
    type_number(bench, "201")
    shown(bench, "This one, not 117.")
    shown(bench, "Not washed: empty and dirty since")
    tap(bench, "Move to 201")
    said(bench, "Put down to 201, not 117.")
    all_at_the_brewery(bench)
    assert brewery.server.standing("201")["contents"]["gyle"] == gyle_id("901")
    tap(bench, "Undo")
    said(bench, "Undone: Put down to 201, not 117.")
    all_at_the_brewery(bench)
    assert brewery.server.standing("201")["contents"] is None
    assert brewery.server.standing("117")["contents"]["gyle"] == gyle_id("901")


def test_an_older_fill_is_put_right_from_the_list(bench: Page, brewery: Brewery) -> None:
    """Three casks later somebody sees that it was another one."""
    for number in ["117", "118", "119"]:
        fill(bench, number)
    bench.get_by_role("link", name="all 3").tap()
    tap(bench, "Wrong number: 117")
    type_number(bench, "127")
    tap(bench, "Move to 127")
    said(bench, "Put down to 127, not 117.")
    bench.get_by_role("link", name="all 3").tap()
    tap(bench, "Undo 118 filled.")
    said(bench, "Undone: 118 filled.")
    all_at_the_brewery(bench)
    full = [n for n in ["117", "118", "119", "127"] if brewery.server.standing(n)["contents"]]
    assert full == ["119", "127"]


def test_any_entry_is_undone_from_the_history(bench: Page, brewery: Brewery) -> None:
    """What another device noted long ago, too."""
    bench.goto(f"{bench.url.partition('#')[0]}#/c/117")
    bench.get_by_role("button", name="Washed", exact=False).last.tap()
    tap(bench, "Undo: Washed")
    said(bench, "Undone: 117, Washed.")
    all_at_the_brewery(bench)
    [washed] = brewery.server.entries("117", "washed")
    assert washed["dropped_by"] is not None
