"""Two people out of signal record the same number; somebody settles it, once, for everybody."""

from playwright.sync_api import Page, expect

from .brewery import Brewery, gyle_id
from .conftest import GetPhone
from .doings import (
    all_at_the_brewery,
    ask_the_brewery,
    fill,
    go_to,
    on_this_phone,
    rack_from,
    said,
    tap,
)
from .phone import Phone


def filled_on_both(get_phone: GetPhone, brewery: Brewery) -> tuple[list[Phone], list[Page]]:
    """Two phones that both filled 117 with no signal, and know of the question by now."""
    phones = [get_phone(), get_phone()]
    pages = [phone.open() for phone in phones]
    for page, phone, gyle in zip(pages, phones, ["901", "902"], strict=True):
        rack_from(page, gyle)
        all_at_the_brewery(page)
        phone.lose_signal()
        fill(page, "117")
        on_this_phone(page, 1)
    for page, phone in zip(pages, phones, strict=True):
        phone.find_signal()
        all_at_the_brewery(page)

    assert len(brewery.server.entries("117", "filled")) == 2
    assert asked(brewery) == ["filled_twice"]
    for page in pages:
        look_at_questions(page)
        expect(page.get_by_role("heading", name="1 question")).to_be_visible()
    return phones, pages


def asked(brewery: Brewery) -> list[str]:
    """What does not fit about 117 by the brewery's own records, whoever has settled what."""
    return [query["rule"] for query in brewery.server.standing("117")["queries"]]


def look_at_questions(page: Page) -> None:
    """With all that the brewery knows."""
    ask_the_brewery(page)
    go_to(page, "Office")
    page.get_by_role("link", name="Questions to settle").tap()


def nothing_to_settle(page: Page) -> None:
    """The Office asks for nothing any more."""
    ask_the_brewery(page)
    go_to(page, "Office")
    expect(page.get_by_role("heading", name="On record")).to_be_visible()
    expect(page.get_by_text("Questions to settle")).to_be_hidden()


def settle_at_once(phones: list[Phone], pages: list[Page], ways: list[str]) -> None:
    """Each settles with no signal, so before hearing of the other; then both are sent."""
    for phone, page, way in zip(phones, pages, ways, strict=True):
        phone.lose_signal()
        tap(page, way)
        said(page, "117: settled.")
    for phone, page in zip(phones, pages, strict=True):
        phone.find_signal()
        all_at_the_brewery(page)


def test_a_cask_filled_on_two_phones_is_one_question_for_both(
    get_phone: GetPhone, brewery: Brewery
) -> None:
    """Both fills are kept. Settling on one phone clears the question on the other."""
    _, (first, second) = filled_on_both(get_phone, brewery)
    tap(first, "The fill from gyle 902 never happened")
    said(first, "117: settled.")
    expect(first.get_by_text("There is no question to settle.")).to_be_visible()
    all_at_the_brewery(first)
    nothing_to_settle(second)
    assert brewery.server.standing("117")["contents"]["gyle"] == gyle_id("901")


def test_settled_on_both_at_once_the_same_way_is_settled(
    get_phone: GetPhone, brewery: Brewery
) -> None:
    """LIFE-21: two settlements that agree are one."""
    phones, pages = filled_on_both(get_phone, brewery)
    settle_at_once(phones, pages, ["The fill from gyle 902 never happened"] * 2)
    for page in pages:
        nothing_to_settle(page)
    assert brewery.server.standing("117")["contents"]["gyle"] == gyle_id("901")


def test_settled_on_both_at_once_in_two_ways_is_a_question_again(
    get_phone: GetPhone, brewery: Brewery
) -> None:
    """LIFE-21: neither overrules the other unseen; one further tap, on either phone, settles it."""
    phones, pages = filled_on_both(get_phone, brewery)
    ways = [f"The fill from gyle {gyle} never happened" for gyle in ("902", "901")]
    settle_at_once(phones, pages, ways)
    for page in pages:
        look_at_questions(page)
        expect(page.get_by_role("heading", name="1 question")).to_be_visible()
    first, second = pages
    tap(second, ways[0])
    said(second, "117: settled.")
    all_at_the_brewery(second)
    nothing_to_settle(first)
    assert brewery.server.standing("117")["contents"]["gyle"] == gyle_id("901")
