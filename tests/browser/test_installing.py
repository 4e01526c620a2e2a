"""The app is put on a phone's home screen, and from then on needs no network to start."""

from playwright.sync_api import expect

from .doings import go_to
from .phone import Phone

PLACES = ["Bench", "Cellar", "Bar", "Out", "Office"]


def test_browser_offers_to_install_it(phone: Phone) -> None:
    """Manifest, icons and worker are what a browser asks for."""
    page = phone.open()
    browser = phone.context.new_cdp_session(page)
    manifest = browser.send("Page.getAppManifest")
    assert manifest["errors"] == []
    assert manifest["data"]
    errors = browser.send("Page.getInstallabilityErrors")["installabilityErrors"]
    # Always there in a test browser, which keeps no home screen.
    assert [one for one in errors if one["errorId"] != "in-incognito"] == []


def test_every_place_opens_in_a_browser_started_with_no_network(phone: Phone) -> None:
    """Also those that were never opened before: the worker keeps them all."""
    phone.open()
    phone.kill()
    phone.start(offline=True)
    page = phone.open()
    for place in PLACES:
        go_to(page, place)
        expect(page.get_by_role("heading", level=1)).to_have_text(place)
        expect(page.get_by_text("One moment")).to_be_hidden()
        expect(page.get_by_text("could not be fetched")).to_be_hidden()
