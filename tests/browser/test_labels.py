"""What a label has to say, read with no signal on a cask's page and with its gyle."""

from playwright.sync_api import Page, expect

from ..making import made_id
from .brewery import Brewery, ago, gyle_id, in_days
from .doings import look_at
from .phone import Phone


def expect_words(page: Page, *words: str) -> None:
    for each in words:
        expect(page.get_by_text(each).filter(visible=True)).to_be_visible()


def test_a_label_is_read_on_the_cask_and_with_the_gyle(phone: Phone, brewery: Brewery) -> None:
    """Allergens, strength and best before as the law writes them, and the lot."""
    label = {"cereals": ["barley", "oats"], "milk": True}
    brewery.tell([brewery.office.entry("beer", made_id("Winter Lamp"), at=ago(days=9), **label)])
    racked, best = in_days(-5), in_days(37)
    filled = brewery.office.filled(
        "117", gyle=gyle_id("902"), at=f"{racked}T12:00:00.000Z", best_before=str(best)
    )
    brewery.tell([filled])
    page = phone.open("cellar")
    expect(page.get_by_text("117 Winter Lamp")).to_be_visible()
    phone.lose_signal()
    look_at(page, "117")
    page.get_by_text("Its label, and how it has aged").tap()
    contains = "Contains barley (gluten), oats (gluten), milk"
    written = f"Best before {best.day} {best:%B %Y}."
    expect_words(page, written, f"L902-{racked:%d%m%y}", contains)
    page.goto(f"{page.url.partition('#')[0]}#/office/gyles/{gyle_id('902')}")
    page.get_by_text("Its labels, if racked today").tap()
    expect_words(page, contains, "% vol")
