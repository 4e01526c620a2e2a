"""Pages that need no sign-in, and where what is said on them is acted on."""

import re

from playwright.sync_api import Page, expect

from .brewery import Brewery, customer_id
from .doings import all_at_the_brewery, ask_the_brewery, said, tap
from .looking import look_over
from .phone import Phone


def can_be_read_and_touched(page: Page) -> None:
    look = look_over(page, page.url)
    assert (look.dark, look.light, look.small, look.wide) == ([], [], [], [])


def test_what_a_customer_and_a_finder_say_reaches_the_phones(
    phone: Phone, brewery: Brewery
) -> None:
    """An empty is on the next round; a report is a question, settled on the container's page.

    Links that are stopped open nothing, and the next one does.
    """
    brewery.send("111", "112", to="Lantern", days=20)
    brewery.tell([brewery.office.entry("brewery", "brewery", web="https://casks.example")])
    page = phone.open(f"out/at/{customer_id('Lantern')}")
    page.get_by_text("Their own page").tap()
    tap(page, "Give them the link")
    text = page.get_by_label("The text").last
    expect(text).to_have_value(re.compile("https://casks.example/yours/"))
    link = text.input_value().rpartition("https://casks.example")[2]
    all_at_the_brewery(page)

    page.goto(phone.address + link)
    expect(page.get_by_role("heading", name="Containers with you")).to_be_visible()
    can_be_read_and_touched(page)
    tap(page, "Empty, ready to collect: 111")
    expect(page.get_by_text("Empty, ready to collect. The brewery knows.")).to_be_visible()

    page.goto(f"{phone.address}/f/112")
    can_be_read_and_touched(page)
    page.get_by_label("Where is it?").fill("Mill Lane, behind the chapel")
    page.get_by_label("Your name").fill("Gam")
    tap(page, "Tell the brewery")
    expect(page.get_by_role("heading", name="Thank you")).to_be_visible()

    phone.open()
    ask_the_brewery(page)
    page.goto(f"{phone.address}/#/out/round")
    expect(page.get_by_text("They say: 111 empty, ready to collect.")).to_be_visible()
    tap(page, "Go there: Lantern")
    expect(page).to_have_url(re.compile("/out/make-up/"))
    page.goto(f"{phone.address}/#/out/round")
    stop = page.get_by_role("main").get_by_role("link").filter(has_text="Lantern").first
    expect(stop).to_contain_text("They say: 111 empty, ready to collect.")

    page.goto(f"{phone.address}/#/out")
    report = page.get_by_role("link").filter(has_text="A finder says where it is")
    expect(report).to_contain_text("Mill Lane, behind the chapel.")
    report.tap()
    tap(page, "It is seen to")
    said(page, "112: settled.")
    page.get_by_role("button", name="A finder says: Mill Lane, behind the chapel; Gam").tap()
    tap(page, "Erase what they left of themselves")
    tap(page, "Erase for good")
    said(page, "What the finder left of themselves is erased.")
    all_at_the_brewery(page)
    expect(page.get_by_role("main")).not_to_contain_text("Gam")
    page.goto(f"{phone.address}/#/out")
    expect(page.get_by_role("heading", name="Reported by finders")).to_be_hidden()

    page.goto(f"{phone.address}/#/out/at/{customer_id('Lantern')}")
    page.get_by_text("Their own page").tap()
    tap(page, "Stop all links")
    tap(page, "Stop every link to it")
    said(page, "No link to the page of Lantern works any more.")
    tap(page, "Give them the link")
    expect(text).to_have_value(re.compile("https://casks.example/yours/"))
    newer = text.input_value().rpartition("https://casks.example")[2]
    all_at_the_brewery(page)
    page.goto(phone.address + link)
    expect(page.get_by_role("heading", name="This link does not work")).to_be_visible()
    page.goto(phone.address + newer)
    expect(page.get_by_role("heading", name="Containers with you")).to_be_visible()
