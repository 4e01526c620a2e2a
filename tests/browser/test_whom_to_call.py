"""Whom to call today, with no signal: in what order, why, what to write, and what came of it."""

from playwright.sync_api import expect

from .brewery import Brewery, customer_id, days_ago, in_days
from .demo import DemoPhone
from .doings import all_at_the_brewery, choose, said, tap
from .phone import Phone


def known_trips(brewery: Brewery) -> None:
    """Lantern has had ten casks and brought each back on the twentieth day."""
    casks = [str(number) for number in range(104, 114)]
    brewery.send(*casks, to="Lantern", days=39)
    back = f"{days_ago(19)}T12:00:00.000Z"
    brewery.tell([brewery.office.entry("returned", number, at=back) for number in casks])


def test_a_customer_is_called_written_to_and_left_in_peace(phone: Phone, brewery: Brewery) -> None:
    """The list, the text with the numbers and the outcome, all of it offline."""
    known_trips(brewery)
    brewery.send("101", "102", to="Ferry House", days=38)
    brewery.send("103", to="Lantern", days=17)
    page = phone.open("out")
    all_at_the_brewery(page)
    phone.lose_signal()
    page.get_by_role("link", name="Whom to call today").tap()
    lines = page.get_by_role("main").get_by_role("listitem")
    expect(lines.first).to_contain_text("Ferry House")
    expect(lines.first).to_contain_text("2 firkins, all overdue, the longest out 38 days.")
    expect(lines.first).to_contain_text("£150")
    lines.first.get_by_role("link").tap()
    expect(page.get_by_text("£150 would likely still be out in a fortnight")).to_be_visible()

    page.get_by_text("Write to them").tap()
    text = page.get_by_label("The text")
    expect(text).to_have_value(
        "Hello Ferry House, you have 2 firkins of ours at Ferry House, all of them longer than "
        "agreed. Their numbers: 101, 102. May we collect them this week? Thank you, Ash"
    )
    phone.context.grant_permissions(["clipboard-read", "clipboard-write"])
    tap(page, "Copy")
    said(page, "Copied.")
    assert page.evaluate("navigator.clipboard.readText()") == text.input_value()

    page.get_by_text("Note a call").tap()
    choose(page, "They say: not here")
    page.get_by_label("What was said").fill("Gone with the old tenant")
    tap(page, "Keep this note")
    said(page, "Noted that Ferry House was asked. On this phone.")
    expect(page.get_by_text("They say it is not there.")).to_be_visible()
    page.goto(f"{phone.address}/#/out/call")
    expect(page.get_by_text("Asked; again on")).to_be_visible()

    phone.find_signal()
    all_at_the_brewery(page)
    pulled = brewery.server.get("/api/snapshot/pages?limit=1000")["rows"]
    [chase] = [row["doc"]["chase"] for row in pulled if row["id"] == customer_id("Ferry House")
               and row["type"] == "customer"]  # fmt: skip
    assert chase["outcome"] == "not_there"
    assert chase["ask_again_on"] == in_days(7).isoformat()


def test_missing_is_proposed_and_a_person_declares_it(phone: Phone, brewery: Brewery) -> None:
    """It stays with its customer, and can be undone."""
    known_trips(brewery)
    brewery.send("101", to="Ferry House", days=38)
    page = phone.open(f"out/at/{customer_id('Ferry House')}")
    all_at_the_brewery(page)
    assert brewery.server.standing("101")["held"] is None
    tap(page, "Missing: Firkin 101")
    said(page, "101 is down as missing.")
    expect(page.get_by_role("heading", name="Put down as missing?")).to_be_hidden()
    expect(page.get_by_role("link", name="Firkin 101")).to_contain_text("Down as missing.")
    tap(page, "Undo")
    expect(page.get_by_role("heading", name="Put down as missing?")).to_be_visible()


def test_on_the_demo_who_keeps_them_for_good_comes_first(demo: DemoPhone) -> None:
    """And the sum that is at stake is worked out before one's eyes."""
    page = demo.open("out/call")
    first = page.get_by_role("main").get_by_role("listitem").first
    expect(first).to_contain_text("Pobble End")
    expect(first).to_contain_text("all overdue")
    first.get_by_role("link").tap()
    tap(page, "How it is worked out")
    expect(page.get_by_role("dialog")).to_contain_text("x chance never to be back")
    tap(page, "Close")


def test_the_brewery_writes_in_its_own_words(phone: Phone, brewery: Brewery) -> None:
    """A name that stands for nothing is found; the words are there for every customer."""
    brewery.send("101", to="Ferry House", days=38)
    page = phone.open("office/texts/call_text")
    page.get_by_label("What is written to a customer").fill("Empties please: {casks}")
    tap(page, "Keep it")
    expect(page.get_by_role("alert")).to_contain_text("Nothing stands for {casks}.")
    page.get_by_label("What is written to a customer").fill("Empties please: {numbers}")
    tap(page, "Keep it")
    said(page, "The text is kept.")
    all_at_the_brewery(page)
    page.goto(f"{phone.address}/#/out/at/{customer_id('Ferry House')}")
    page.get_by_text("Write to them").tap()
    expect(page.get_by_label("The text")).to_have_value("Empties please: 101")


def test_how_many_it_takes_is_reckoned_anew_for_another_number_of_fills(demo: DemoPhone) -> None:
    """With what the bars show in numbers behind them."""
    page = demo.open("office/fleet")
    page.get_by_role("link", name="Firkin").tap()
    found = page.get_by_role("status").filter(has_text="Needed:")
    expect(found).to_contain_text("Half are back after")
    page.get_by_label("To be sent out in a week").fill("40")
    expect(found).to_contain_text("more than there are. Likely none left in")
    page.get_by_text("The numbers").tap()
    expect(page.get_by_role("row").last).to_contain_text("too few")
