"""A washing solution with no signal: made up, used, titrated, thrown away."""

from playwright.sync_api import Page, expect

from .brewery import Brewery
from .doings import all_at_the_brewery, choose, said, shown, tap, type_number
from .phone import Phone

TYPED = {
    "Active, % by weight": "5",
    "Density, g/mL": "1.12",
    "Contact, minutes": "10",
    "Strength wanted, mg/L": "200",
    "Temperature of the solution, °C": "15",
    "Litres to make up": "50",
    "Used down to, mg/L": "150",
    "Uses at most": "2",
    "Hours at most": "24",
}


def make_up(page: Page) -> None:
    """By the sheet: 200 ppm of 5 % at 1.12 g/mL is 3.57 mL in a litre."""
    page.get_by_role("link", name="Washed with").tap()
    page.get_by_role("link", name="Make up a solution").tap()
    for label, text in TYPED.items():
        page.get_by_label(label).fill(text)
    choose(page, "Yes")
    expect(page.get_by_text("178.6 mL")).to_be_visible()
    tap(page, "It is made up")
    said(page, "Peracetic acid made up.")


def titrate(page: Page, titrant_ml: str) -> None:
    """With 0.02 N thiosulphate, a sample of 20 mL."""
    page.get_by_text("Check by titration").tap()
    for label, text in {
        "Titrant used, mL": titrant_ml,
        "Normality": "0.02",
        "Sample, mL": "20",
    }.items():
        page.get_by_label(label).fill(text)
    tap(page, "Keep the check")


def test_a_solution_is_made_up_used_checked_and_thrown_away(phone: Phone, brewery: Brewery) -> None:
    """WASH-3, WASH-4.

    5 mL of titrant speak for 190 mg/L: 5.0 x 38 x 0.02 x 1000 / 20, by the formula of ProMinent's
    manual for its peracetic acid test.
    """
    page = phone.open()
    all_at_the_brewery(page)
    phone.lose_signal()
    choose(page, "Wash")
    make_up(page)
    titrate(page, "5")
    said(page, "Checked: 190 mg/L.")
    shown(page, "190 mg/L as checked")
    page.get_by_label("Sample, mL").fill("nothing")
    tap(page, "Keep the check")
    said(page, "All three figures of the titration are needed")

    page.get_by_role("link", name="To the pad").tap()
    type_number(page, "201-202")
    tap(page, "Wash all 2")
    said(page, "201 and 202 washed.")
    page.get_by_role("link", name="Washed with").tap()
    shown(page, "Not again: used as often as it may be.")
    tap(page, "Thrown away")
    said(page, "Peracetic acid thrown away.")
    expect(page.get_by_text("Check by titration")).to_have_count(0)
    phone.find_signal()
    all_at_the_brewery(page)
    washed = brewery.server.entries("201", "washed")
    assert [entry["facts"] for entry in washed] == [{"with": "Peracetic acid"}]
