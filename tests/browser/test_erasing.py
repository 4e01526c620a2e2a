"""Personal data of a customer: erased for good, by an owner, with two taps."""

from playwright.sync_api import expect

from .brewery import Brewery
from .doings import all_at_the_brewery, said, tap
from .phone import Phone


def test_what_is_kept_of_people_is_erased(phone: Phone, brewery: Brewery) -> None:
    """The containers there stay on record, the telephone number does not."""
    brewery.send("101", to="Lantern", days=3)
    page = phone.open("office/customers")
    page.get_by_role("link", name="Lantern").tap()
    page.get_by_label("Telephone").fill("01632 960123")
    tap(page, "Keep the changes")
    all_at_the_brewery(page)
    page.get_by_role("link", name="Lantern").tap()
    expect(page.get_by_label("Telephone")).to_have_value("01632 960123")
    page.get_by_text("Personal data", exact=True).tap()
    tap(page, "Erase personal data")
    tap(page, "Keep everything")
    tap(page, "Erase personal data")
    tap(page, "Erase all but the name")
    said(page, "What was kept of people at Lantern is erased.")
    all_at_the_brewery(page)
    expect(page.get_by_label("Telephone")).to_have_value("")
    assert brewery.server.standing("101")["trip"] is not None
