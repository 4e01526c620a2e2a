"""Empties come off the van into the yard, one number after another."""

from playwright.sync_api import expect

from .brewery import Brewery
from .doings import all_at_the_brewery, on_this_phone, said, tap, taps, type_number
from .phone import Phone

FERRY = ["101", "102", "103", "104", "105"]
LANTERN = ["111", "112", "113"]


def test_many_come_back_in_a_row_and_one_is_undone(phone: Phone, brewery: Brewery) -> None:
    """Number and one tap each, from whichever customer; what was a slip is taken back."""
    brewery.send(*FERRY, to="Ferry House", days=20)
    brewery.send(*LANTERN, to="Lantern", days=5)
    page = phone.open("out/back")
    expect(page.get_by_text("all at the brewery")).to_be_visible()
    phone.lose_signal()

    with taps(page) as touched:
        for number in [*FERRY, *LANTERN]:
            type_number(page, number)
            tap(page, f"Take back {number}")
            said(page, f"{number} came back. On this phone.")
    assert len(touched) == 8 * (3 + 1)
    expect(page.get_by_role("heading", name="Back today")).to_contain_text("8 from 2 customers")
    tap(page, "Undo: 104 came back.")
    said(page, "Undone: 104 came back.")
    expect(page.get_by_role("heading", name="Back today")).to_contain_text("7 from 2 customers")
    on_this_phone(page, 9)  # an undo is an entry too

    phone.find_signal()
    all_at_the_brewery(page)
    out = [n for n in [*FERRY, *LANTERN] if brewery.server.standing(n)["trip"] is not None]
    assert out == ["104"]


def test_the_pad_says_from_where_it_comes_and_how_late(phone: Phone, brewery: Brewery) -> None:
    """Before the button is pressed."""
    brewery.send("101", to="Ferry House", days=20)
    page = phone.open("out/back")
    type_number(page, "101")
    expect(page.get_by_text("From Ferry House, out 20 days")).to_be_visible()
    expect(page.get_by_text("6 days late.")).to_be_visible()


def test_beer_that_came_back_in_a_cask_is_noted(phone: Phone, brewery: Brewery) -> None:
    """Ullage counts against duty: its litres are typed on the same pad."""
    brewery.send("101", to="Lantern", days=3)
    page = phone.open("out/back")
    type_number(page, "101")
    tap(page, "Beer in it")
    type_number(page, "4.5")
    tap(page, "Set 4.5 L")
    expect(page.get_by_text("4.5 L of beer still in it.")).to_be_visible()
    tap(page, "Take back 101")
    said(page, "101 came back. At the brewery.")
    [returned] = brewery.server.entries("101", "returned")
    assert returned["facts"]["ullage_ml"] == 4_500
