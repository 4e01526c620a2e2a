"""Two people out of signal record the same number; somebody settles it, once, for everybody."""

from playwright.sync_api import expect

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


def test_a_cask_filled_on_two_phones_is_one_question_for_both(
    get_phone: GetPhone, brewery: Brewery
) -> None:
    """Both fills are kept. Settling on one phone clears the question on the other."""
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
    queries = brewery.server.standing("117")["queries"]
    assert [query["rule"] for query in queries] == ["filled_twice"]
    for page in pages:
        ask_the_brewery(page)
        go_to(page, "Office")
        page.get_by_role("link", name="Questions to settle").tap()
        expect(page.get_by_role("heading", name="1 question")).to_be_visible()

    first, second = pages
    tap(first, "The fill from gyle 902 never happened")
    said(first, "117: settled.")
    expect(first.get_by_text("There is no question to settle.")).to_be_visible()
    all_at_the_brewery(first)
    ask_the_brewery(second)
    go_to(second, "Office")
    expect(second.get_by_role("heading", name="On record")).to_be_visible()
    expect(second.get_by_text("Questions to settle")).to_be_hidden()
    assert brewery.server.standing("117")["contents"]["gyle"] == gyle_id("901")
