"""Who has our casks, who was asked for them, and what goes out next."""

import re

from playwright.sync_api import expect

from .brewery import Brewery, customer_id, days_ago, gyle_id, in_days
from .doings import all_at_the_brewery, choose, go_to, said, tap, type_number
from .phone import Phone


def test_a_late_customer_is_asked_and_promises_a_day(phone: Phone, brewery: Brewery) -> None:
    """What was said is kept with the day that was promised, and stands beside the name."""
    brewery.send("101", "102", to="Ferry House", days=30)
    brewery.send("111", to="Lantern", days=2)
    page = phone.open("out")
    expect(page.get_by_role("heading", name="Overdue")).to_contain_text("1 customer")
    expect(page.get_by_role("heading", name="In time")).to_contain_text("1 customer")
    page.get_by_role("link", name="Ferry House").tap()
    expect(page.get_by_text("Nobody has asked for these yet.")).to_be_visible()
    page.get_by_text("Note a call").tap()
    page.get_by_label("What was said").fill("They are in the yard")
    choose(page, "Another day")
    day = in_days(3)
    page.get_by_label("Which day").fill(day.isoformat())
    tap(page, "Keep this note")
    said(page, "Noted that Ferry House was asked.")
    expect(page.get_by_text(f"Promised for {day:%a}.")).to_be_visible()
    all_at_the_brewery(page)

    go_to(page, "Out")
    expect(page.get_by_role("link", name="Ferry House")).to_contain_text("romised")
    pulled = brewery.server.get("/api/snapshot/pages?limit=1000")["rows"]
    [row] = [
        row
        for row in pulled
        if row["type"] == "customer" and row["id"] == customer_id("Ferry House")
    ]
    assert row["doc"]["chase"]["promised_on"] == day.isoformat()


def test_casks_are_loaded_for_a_customer(phone: Phone, brewery: Brewery) -> None:
    """The customer once, then number and one tap each, with no signal in the yard."""
    brewery.fill("101", "102", gyle="902")
    page = phone.open("out/send")
    all_at_the_brewery(page)
    phone.lose_signal()
    line = page.get_by_role("listitem").filter(has_text="Lantern")
    line.get_by_role("button", name="Choose").tap()
    for number in ["101", "102"]:
        type_number(page, number)
        expect(page.get_by_text("Ready.")).to_be_visible()
        tap(page, f"Send {number}")
        said(page, f"{number} sent to Lantern. On this phone.")
    type_number(page, "103")
    expect(page.get_by_text("No beer on record in it.")).to_be_visible()
    for _ in "103":
        tap(page, "Delete")
    phone.find_signal()
    all_at_the_brewery(page)
    trip = brewery.server.standing("102")["trip"]
    assert trip["customer"] == customer_id("Lantern")
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", trip["due_on"])


def test_too_little_life_is_said_before_it_goes(phone: Phone, brewery: Brewery) -> None:
    """Against what customers expect, with no signal in the yard."""
    best = in_days(9).isoformat()
    filled = brewery.office.filled(
        "101", gyle=gyle_id("902"), at=f"{days_ago(30)}T12:00:00.000Z", best_before=best
    )
    brewery.tell([filled])
    page = phone.open("out/send")
    all_at_the_brewery(page)
    phone.lose_signal()
    line = page.get_by_role("listitem").filter(has_text="Lantern")
    line.get_by_role("button", name="Choose").tap()
    type_number(page, "101")
    expect(page.get_by_text("9 days left, and 14 are expected.")).to_be_visible()
