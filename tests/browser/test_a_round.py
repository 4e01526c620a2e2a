"""The van's round: made up in the yard, handed over at the door with no network, told later."""

from pathlib import Path

import pypdfium2  # type: ignore[import-untyped]
import zxingcpp
from playwright.sync_api import Locator, Page, expect

from .brewery import Brewery, ago, customer_id
from .doings import all_at_the_brewery, fill, rack_from, said, tap, type_number
from .phone import Phone

WEB = "https://casks.example"


def make_up(page: Page, customer: str, *numbers: str) -> None:
    page.get_by_role("link", name="Make up a drop").tap()
    tap(page, f"Choose: {customer}")
    for number in numbers:
        type_number(page, number)
        tap(page, f"Make up {number}")
        said(page, f"{number} made up.")
    page.get_by_role("link", name="Done:").tap()


def enter_where_they_are_chosen(page: Page, customer: str) -> None:
    """The form of a new customer comes back to where one is chosen, with the new one first."""
    page.get_by_role("link", name="Make up a drop").tap()
    page.get_by_role("link", name="Enter a new customer").tap()
    page.get_by_label("Name", exact=True).fill(customer)
    tap(page, "Enter this customer")
    expect(page.get_by_role("heading", name="A drop for whom?")).to_be_visible()
    first = page.get_by_role("button", name="Choose: ").first
    expect(first).to_have_accessible_name(f"Choose: {customer}")


def sign(page: Page) -> None:
    glass = page.get_by_role("img", name="Sign here")
    glass.scroll_into_view_if_needed()
    box = glass.bounding_box()
    assert box is not None
    x, y = box["x"] + 40, box["y"] + 60
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(1, 9):
        page.mouse.move(x + 20 * step, y + (30 if step % 2 else -20))
    page.mouse.up()


def text_of(pdf: Path) -> str:
    pages = pypdfium2.PdfDocument(pdf)
    return " ".join(" ".join(page.get_textpage().get_text_range().split()) for page in pages)


def link_on(pdf: Path) -> str:
    """What another program reads off the paper: the way to the customer's own page."""
    page = pypdfium2.PdfDocument(pdf)[0]
    [code] = zxingcpp.read_barcodes(page.render(scale=3).to_pil())
    return code.text


def put_on_the_map(brewery: Brewery) -> None:
    """The brewery and two customers along a road that runs east; a third one that has no place."""
    office, at = brewery.office, ago(days=30)
    maps = [
        {"map": {"latitude_e6": 54_000_000, "longitude_e6": longitude_e6}}
        for longitude_e6 in (-2_500_000, -2_400_000, -2_300_000)
    ]
    tallow = {"name": "Tallow House", "agreed_days": 14}
    brewery.tell(
        [
            office.entry("brewery", "brewery", at=at, name="Wold Brewery", web=WEB, **maps[0]),
            office.entry("customer", customer_id("Lantern"), at=at, **maps[1]),
            office.entry("customer", customer_id("Ferry House"), at=at, **maps[2]),
            office.entry("customer", customer_id("Tallow House"), at=at, **tallow),
        ]
    )


def the_line(page: Page, heading: str, nth: int) -> Locator:
    """A line under a heading, the first with 0."""
    section = page.locator("section.lines").filter(has=page.get_by_role("heading", name=heading))
    return section.get_by_role("listitem").nth(nth)


def test_a_round_of_three(phone: Phone, brewery: Brewery) -> None:
    """Empties by a tap, by number and by count; a signature; the note as a file, all offline.

    The code on the note opens the customer's page once the phone has told the brewery of it.
    """
    brewery.send("111", "112", "113", to="Lantern", days=20)
    brewery.send("114", to="Ferry House", days=3)
    put_on_the_map(brewery)
    page = phone.open()
    rack_from(page, "901")
    for number in ("101", "102", "103", "104"):
        fill(page, number)
    all_at_the_brewery(page)
    phone.open("out/round")
    enter_where_they_are_chosen(page, "Groyne Arms")
    phone.open("out/round")
    make_up(page, "Lantern", "101", "102")
    make_up(page, "Ferry House", "103")
    make_up(page, "Tallow House", "104")
    all_at_the_brewery(page)
    phone.lose_signal()
    expect(page.get_by_text("4 containers to load")).to_be_visible()
    # There and back is 2 x 13.1 km: a fifth of a degree at 54 degrees north.
    expect(page.get_by_text("26.1\u00a0km as the crow flies")).to_be_visible()
    expect(the_line(page, "To drop", 2)).to_contain_text("Tallow House")
    expect(the_line(page, "To drop", 2)).to_contain_text("No place on the map.")
    expect(the_line(page, "To load", 0)).to_contain_text("For Tallow House")
    lantern = page.get_by_role("link", name="Lantern", exact=False).first
    expect(lantern).to_contain_text("3 containers of ours there; 111, 112 and 113 are overdue.")

    lantern.tap()
    tap(page, "Leave out: Firkin 102")
    tap(page, "Take: Firkin 111")
    page.get_by_label("Other empties, by number").fill("105, one more")
    page.get_by_label("Empties only counted").fill("two")
    page.get_by_label("Taken by").fill("Pat at the bar")
    sign(page)
    tap(page, "Hand over")
    said(page, "Not handed over yet, look at the empties. Not a number: one more.")
    page.get_by_label("Other empties, by number").fill("105")
    tap(page, "Hand over")
    said(page, "Not handed over yet, look at the empties. A whole figure, such as 3.")
    page.get_by_label("Empties only counted").fill("1")
    tap(page, "Hand over")
    said(page, "1 container handed over at Lantern, 3 taken along. On this phone.")
    expect(page.get_by_text("3 before, 1 now")).to_be_visible()
    with page.expect_download() as download:
        tap(page, "Save it")
    note = text_of(download.value.path())
    for part in ("Lantern", "101", "Oystercatcher", "111 and 105, and 1 counted", "Pat at the bar"):
        assert part in note
    link = link_on(download.value.path())
    assert "102" not in note.replace(" ", "").replace(link, "")

    page.get_by_role("link", name="Back to the round").tap()
    # The van stands at Lantern with all on board: on to Ferry House, and 13.1 km home.
    expect(the_line(page, "To drop", 0)).to_contain_text("6.5\u00a0km from Lantern.")
    expect(page.get_by_text("To load")).to_have_count(0)
    page.get_by_role("link", name="Ferry House").first.tap()
    tap(page, "Take: Firkin 114")
    tap(page, "Hand over")
    said(page, "1 container handed over at Ferry House, 1 taken along. On this phone.")
    phone.kill()
    phone.start(offline=True)
    page = phone.open("out/round")
    expect(page.get_by_text("Handed over today")).to_be_visible()
    page.get_by_role("link", name="Tallow House").first.tap()
    tap(page, "Hand over")
    said(page, "1 container handed over at Tallow House. On this phone.")

    phone.find_signal()
    all_at_the_brewery(page)
    numbers = ("101", "102", "103", "104", "111", "114", "105")
    customers = page.context.new_page()
    customers.goto(phone.address + link.removeprefix(WEB))
    expect(customers.get_by_role("listitem")).to_have_count(3)
    trips = {n: brewery.server.standing(n)["trip"] for n in numbers}
    assert {n for n, trip in trips.items() if trip is not None} == {"101", "103", "104"}

    page = phone.open("out/back")
    type_number(page, "112")
    expect(page.get_by_text("The one that was only counted on")).to_be_visible()
    tap(page, "Take back 112")
    said(page, "112 came back.")
    expect(page.get_by_role("button", name="Undo", exact=True)).to_be_visible()
    phone.open(f"out/at/{customer_id('Lantern')}")
    expect(page.get_by_role("heading", level=1)).to_have_text("Lantern")
    expect(page.get_by_role("link", name="Firkin 113").first).to_be_visible()
    expect(page.get_by_text("only counted")).to_have_count(0)
