"""What people do with the app, in their words. Nothing here knows how the app is made."""

import re
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Locator, Page, expect


def tap(page: Page, name: str) -> None:
    """Tap the button of this name."""
    page.get_by_role("button", name=name, exact=True).tap()


def tap_though_dim(page: Page, name: str) -> None:
    """Tap a button that looks as if it could not be used: it says why."""
    dim = page.get_by_role("button", name=name, exact=True)
    expect(dim).to_be_disabled()
    dim.tap(force=True)


def choose(page: Page, name: str) -> None:
    """Choose one of a few that are all shown."""
    page.get_by_role("radio", name=name, exact=True).tap()


def go_to(page: Page, place: str) -> None:
    """To one of the five places."""
    page.get_by_role("navigation", name="Places").get_by_role("link", name=place).tap()
    expect(page.get_by_role("heading", level=1)).to_be_visible()


def pad(page: Page) -> Locator:
    return page.get_by_role("group", name="Number pad")


def type_number(page: Page, typed: str) -> None:
    """Type on the pad: digits, a letter, "-" for a run, "." for litres."""
    for sign in typed:
        if sign.isalpha():
            pad(page).get_by_role("button", name="Letters").tap()
            page.get_by_role("group", name="Letters").get_by_role(
                "button", name=sign, exact=True
            ).tap()
        else:
            key = {"-": "Dash, for a run", ".": "Decimal point"}.get(sign, sign)
            pad(page).get_by_role("button", name=key, exact=True).tap()


def rack_from(page: Page, gyle: str) -> None:
    """Choose the gyle that is racked."""
    line = page.get_by_role("listitem").filter(has_text=f"gyle {gyle}")
    line.get_by_role("button").tap()
    expect(page.get_by_role("link", name=re.compile(f"gyle {gyle}"))).to_be_visible()


def shown(page: Page, words: str) -> None:
    """The screen says so."""
    expect(page.get_by_role("main").get_by_text(words)).to_be_visible()


def said(page: Page, words: str) -> None:
    """The app has said so, to eyes."""
    expect(page.locator(".saved").filter(visible=True)).to_contain_text(words)


def fill(page: Page, number: str) -> None:
    """Fill one container that is on record."""
    type_number(page, number)
    tap(page, f"Fill {number}")
    said(page, f"{number} filled.")


def kept(page: Page) -> Locator:
    """Where the head line says that the entries are."""
    return page.get_by_role("banner").get_by_role("link").first


def on_this_phone(page: Page, count: int) -> None:
    """So many entries wait on this phone."""
    expect(kept(page)).to_contain_text(f"{count} on this phone")


def all_at_the_brewery(page: Page) -> None:
    """Nothing waits."""
    expect(kept(page)).to_have_text("all at the brewery")


def ask_the_brewery(page: Page) -> None:
    """Send and fetch, because somebody wants it now."""
    page.goto(f"{page.url.partition('#')[0]}#/office/phone")
    tap(page, "Send and fetch now")
    expect(page.get_by_text("This phone last knew everything: just now.")).to_be_visible()


def look_at(page: Page, number: str) -> None:
    """Open a container's own page."""
    page.goto(f"{page.url.partition('#')[0]}#/c/{number}")
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(rf"\b{number}$"))


@contextmanager
def taps(page: Page) -> Iterator[list[str]]:
    """Every touch of the screen meanwhile, as the page felt it: what was touched."""
    page.evaluate(
        """() => {
            window.touched = [];
            window.feel = (event) => window.touched.push(event.target.textContent);
            addEventListener("pointerdown", window.feel, true);
        }"""
    )
    felt: list[str] = []
    yield felt
    felt += page.evaluate("() => (removeEventListener('pointerdown', feel, true), touched)")
