"""A new version of the app is used when a person says so, and never under a half-made entry."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from .brewery import Brewery
from .built import build_client, build_id
from .doings import (
    all_at_the_brewery,
    fill,
    go_to,
    on_this_phone,
    rack_from,
    said,
    shown,
    tap,
    type_number,
)
from .phone import Phone

NEWS = "A new version is here."


@pytest.fixture(scope="session")
def newer(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The next build of the same client."""
    return build_client(tmp_path_factory.mktemp("newer"), named="Casks, and something new")


@pytest.fixture
def bench(phone: Phone, brewery: Brewery) -> Page:
    """A phone that has the old version and is at work with it."""
    page = phone.open()
    rack_from(page, "901")
    fill(page, "101")
    all_at_the_brewery(page)
    return page


def deploy(brewery: Brewery, client: Path) -> None:
    """The office installs another release of the server, which brings its client."""
    brewery.server.stop()
    brewery.server.client = client
    brewery.server.start()


def look_for_news(page: Page) -> None:
    """What the app does by itself every hour: look for a new version, and fetch it."""
    page.evaluate(
        """async () => {
            const registration = await navigator.serviceWorker.getRegistration();
            await registration.update();
        }"""
    )


def use_it_now(page: Page) -> None:
    """Say the word, upon which the app loads itself anew."""
    page.evaluate("() => { window.sameAsBefore = true; }")
    tap(page, "Use it now")
    page.wait_for_function("() => window.sameAsBefore === undefined")
    expect(page.get_by_text(NEWS)).to_be_hidden()


def shows_build(page: Page, build: str) -> None:
    """The version that is running, as it tells it itself."""
    page.goto(f"{page.url.partition('#')[0]}#/office/phone")
    shown(page, f"App {build}, rules")


def test_half_an_entry_outlives_an_update(
    bench: Page, brewery: Brewery, newer: Path, client: Path
) -> None:
    """It is not even spoken of until the entry is made; then it waits for the user's word."""
    bench.evaluate("() => { window.sameAsBefore = true; }")
    type_number(bench, "10")
    deploy(brewery, newer)
    look_for_news(bench)
    bench.wait_for_function(
        "async () => (await navigator.serviceWorker.getRegistration()).waiting !== null"
    )
    expect(bench.get_by_text(NEWS)).to_be_hidden()
    type_number(bench, "2")
    tap(bench, "Fill 102")
    said(bench, "102 filled.")
    expect(bench.get_by_text(NEWS)).to_be_visible()
    fill(bench, "103")
    assert bench.evaluate("() => window.sameAsBefore")
    shows_build(bench, build_id(client))

    use_it_now(bench)
    shows_build(bench, build_id(newer))
    all_at_the_brewery(bench)
    go_to(bench, "Bench")
    shown(bench, "3 firkins filled")


def test_entries_that_wait_outlive_an_update(
    phone: Phone, bench: Page, brewery: Brewery, newer: Path
) -> None:
    """The old version made them, the new one sends them: each once."""
    phone.context.route("**/api/push", lambda route: route.abort())
    fill(bench, "102")
    on_this_phone(bench, 1)
    deploy(brewery, newer)
    look_for_news(bench)
    use_it_now(bench)
    shows_build(bench, build_id(newer))
    on_this_phone(bench, 1)
    phone.context.unroute("**/api/push")
    tap(bench, "Send and fetch now")
    all_at_the_brewery(bench)
    assert len(brewery.server.entries("102", "filled")) == 1


def test_an_update_taken_in_one_tab_leaves_the_other_its_half_entry(
    phone: Phone, bench: Page, brewery: Brewery, newer: Path
) -> None:
    """The other follows as soon as its entry is made."""
    bench.evaluate("() => { window.sameAsBefore = true; }")
    type_number(bench, "10")
    deploy(brewery, newer)
    other = phone.open_in_new_tab("cellar")
    use_it_now(other)
    shows_build(other, build_id(newer))

    bench.bring_to_front()
    expect(bench.get_by_role("button", name="Enter & fill 10", exact=True)).to_be_visible()
    assert bench.evaluate("() => window.sameAsBefore")
    type_number(bench, "2")
    tap(bench, "Fill 102")
    bench.wait_for_function("() => window.sameAsBefore === undefined")
    shows_build(bench, build_id(newer))
    all_at_the_brewery(bench)
    assert len(brewery.server.entries("102", "filled")) == 1


def test_an_old_tab_opens_every_place_after_a_deploy(
    bench: Page, brewery: Brewery, newer: Path
) -> None:
    """The server has none of the old files any more; the phone has them all."""
    deploy(brewery, newer)
    for place in ["Cellar", "Bar", "Out", "Office"]:
        go_to(bench, place)
        expect(bench.get_by_role("heading", level=1)).to_have_text(place)
        expect(bench.get_by_text("could not be fetched")).to_be_hidden()


def test_an_update_that_arrives_in_part_changes_nothing(
    phone: Phone, bench: Page, brewery: Brewery, newer: Path, client: Path
) -> None:
    """The old version goes on, with no network too; the next look finds the new one whole."""
    deploy(brewery, newer)
    phone.context.route("**/app.webmanifest*", lambda route: route.fulfill(status=500))
    bench.evaluate(
        """async () => {
            const registration = await navigator.serviceWorker.getRegistration();
            const gone = new Promise((resolve) => {
                registration.addEventListener("updatefound", () => {
                    const coming = registration.installing;
                    coming.addEventListener("statechange", () => {
                        if (coming.state === "redundant") resolve();
                    });
                });
            });
            await registration.update().catch(() => undefined);
            await gone;
        }"""
    )
    phone.kill()
    phone.start(offline=True)
    page = phone.open()
    shows_build(page, build_id(client))
    phone.find_signal()
    look_for_news(page)
    use_it_now(page)
    shows_build(page, build_id(newer))
