"""Labels for what was racked today, and plates, as files to print."""

from playwright.sync_api import Page, expect

from .doings import all_at_the_brewery, choose, fill, said, tap
from .phone import Phone


def saved(page: Page, name: str) -> bytes:
    with page.expect_download() as download:
        page.get_by_role("link", name=f"Save {name}").tap()
    assert download.value.suggested_filename == name
    return download.value.path().read_bytes()


def test_labels_for_what_was_racked_and_plates(bench: Page, phone: Phone) -> None:
    """What is missing for a label is said, entered, and then it is there."""
    page = bench
    fill(page, "101")
    fill(page, "102")
    all_at_the_brewery(page)
    phone.open("office/labels")
    expect(page.get_by_label("Numbers")).to_have_value("101, 102")
    tap(page, "Make 2 labels")
    said(page, "Enter the brewery's name first, at the Office.")

    phone.open("office/brewery")
    page.get_by_label("Name").fill("Sallowick Brewery")
    page.get_by_label("Address on the web").fill("casks.example")
    tap(page, "Enter this brewery")
    expect(page.get_by_text("As https://casks.example, nothing after it.")).to_be_visible()
    page.get_by_label("Address on the web").fill("https://casks.example")
    tap(page, "Enter this brewery")
    said(page, "Sallowick Brewery entered. At the brewery.")

    phone.open("office/labels")
    tap(page, "Make 2 labels")
    assert saved(page, "fills.pdf").startswith(b"%PDF-")
    choose(page, "Plates")
    page.get_by_label("Numbers").fill("101-103")
    choose(page, "Roll, 100 by 50")
    tap(page, "Make 3 labels")
    assert saved(page, "plates.pdf").startswith(b"%PDF-")
