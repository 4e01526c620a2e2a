"""One cask from the cold room over the stillage to the bar, and off again."""

from playwright.sync_api import expect

from .brewery import Brewery, ago
from .doings import all_at_the_brewery, go_to, said, tap, type_number
from .phone import Phone

CASK = "117 Winter Lamp"


def test_a_ready_cask_goes_on_sale_and_comes_off(phone: Phone, brewery: Brewery) -> None:
    """Stillage, soft spile, hard spile, tap, dip, take off: one tap each, but for what asks."""
    brewery.fill("117", gyle="902")
    page = phone.open("cellar")
    expect(page.get_by_role("heading", name="Ready now")).to_be_visible()
    tap(page, f"Stillage: {CASK}")
    said(page, "117 is on the stillage.")
    tap(page, f"Vent: {CASK}")
    tap(page, "Soft spile")
    said(page, "117: soft spile in.")
    expect(page.get_by_text("Working since")).to_be_visible()

    go_to(page, "Bar")
    tap(page, f"Hard spile: {CASK}")
    said(page, "117: hard spile in.")
    tap(page, f"Tap: {CASK}")
    said(page, "117 tapped: on sale. Early: it can be sold from")
    expect(page.get_by_text("Not dipped yet; 40 L, 70 pints when filled.")).to_be_visible()

    tap(page, f"Dip: {CASK}")
    tap(page, "Pints instead")
    type_number(page, "40")
    expect(page.get_by_text("that is 22.7 L")).to_be_visible()
    tap(page, "Dip 117")
    said(page, "117 dipped: 22.7 L, 40 pints left.")
    expect(page.get_by_text("22.7 L, 40 pints left, dipped just now.")).to_be_visible()

    tap(page, f"Take off: {CASK}")
    tap(page, "Sold out")
    said(page, "117 is off: sold out.")
    expect(page.get_by_text("Nothing is on the stillage.")).to_be_visible()
    all_at_the_brewery(page)
    standing = brewery.server.standing("117")
    assert (standing["contents"], standing["clean"]["state"]) == (None, "dirty")
    assert standing["queries"] == []


def test_a_dip_of_more_beer_than_before_is_said_to_be_odd(phone: Phone, brewery: Brewery) -> None:
    """Before it is saved, and it can be saved all the same."""
    brewery.fill("117", gyle="902")
    for kind, facts in [("stillaged", {}), ("vented", {"spile": "hard"}), ("tapped", {})]:
        brewery.tell([brewery.office.entry(kind, "117", at=ago(minutes=1), **facts)])
    brewery.tell([brewery.office.entry("dipped", "117", at=ago(minutes=1), left_ml=10_000)])
    page = phone.open("bar")
    tap(page, f"Dip: {CASK}")
    type_number(page, "20")
    expect(page.get_by_role("alert").filter(visible=True)).to_contain_text("only 10 L was left")
    tap(page, "Dip 117")
    said(page, "117 dipped: 20 L, 35 pints left.")


def test_conditioning_beer_is_moved(phone: Phone, brewery: Brewery) -> None:
    """It says until when, and where it can go."""
    brewery.fill("118", gyle="901")
    page = phone.open("cellar")
    expect(page.get_by_text("Conditioning until")).to_be_visible()
    tap(page, "Move: 118 Oystercatcher")
    tap(page, "Cold room")
    said(page, "118 moved to Cold room.")
    expect(page.get_by_text("Firkin, Cold room.")).to_be_visible()


def test_the_beer_begins_above_the_middle_of_the_screen(phone: Phone, brewery: Brewery) -> None:
    """What the Cellar is opened for is seen without scrolling."""
    brewery.fill("117", gyle="902")
    brewery.fill("118", gyle="901", at=ago(days=5))
    page = phone.open("cellar")
    height = page.evaluate("innerHeight")
    line = page.get_by_role("listitem").filter(has=page.get_by_role("button", name="Stillage:"))
    box = line.first.bounding_box()
    assert box
    assert box["y"] < height * 0.45
