"""The app by keyboard, by ear, and in the light that one works in."""

import re

from playwright.sync_api import Page, expect

from .brewery import Brewery
from .doings import all_at_the_brewery, choose, fill, go_to, rack_from, said
from .phone import Phone

MOST_STEPS = 60


def tab_to(page: Page, name: str) -> None:
    """Press Tab until the focus is on what has this name, as a person does who sees the focus."""
    focused = page.locator("a:focus, button:focus, input:focus, summary:focus")
    wanted = focused.and_(page.get_by_role("button", name=name, exact=True))
    wanted = wanted.or_(focused.and_(page.get_by_role("link", name=name, exact=True)))
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        if wanted.count() == 1:
            return
    raise AssertionError(f"{name} is not reached by Tab")


def test_one_fill_with_nothing_but_keys(phone: Phone, brewery: Brewery) -> None:
    """Gyle, number and button are reached by Tab; then the keys of a number pad do."""
    page = phone.open()
    expect(page.get_by_role("button", name="Rack: Oystercatcher, gyle 901")).to_be_visible()
    tab_to(page, "Rack: Oystercatcher, gyle 901")
    page.keyboard.press("Enter")
    expect(page.get_by_role("group", name="Number pad")).to_be_visible()
    for digit in "117":
        tab_to(page, digit)
        page.keyboard.press("Space")
    tab_to(page, "Fill 117")
    page.keyboard.press("Enter")
    said(page, "117 filled.")
    tab_to(page, "Undo")
    page.keyboard.press("Enter")
    said(page, "Undone: 117 filled.")

    page.keyboard.type("118")
    page.keyboard.press("Enter")
    said(page, "118 filled.")
    all_at_the_brewery(page)
    assert brewery.server.standing("118")["contents"] is not None


def test_what_has_the_focus_is_seen(phone: Phone) -> None:
    """A ring of three pixels, whatever it is."""
    page = phone.open("office/phone")
    expect(page.get_by_role("heading", name="Look")).to_be_visible()
    seen = 0
    while True:
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement === document.body"):
            break  # once around
        seen += 1
        ring = page.evaluate(
            """() => {
                const on = document.activeElement;
                const drawn = on.matches(".choice input") ? on.nextElementSibling : on;
                const { outlineWidth, outlineStyle } = getComputedStyle(drawn);
                return `${outlineWidth} ${outlineStyle}`;
            }"""
        )
        assert ring == "3px solid", page.evaluate("document.activeElement.outerHTML")
    assert seen >= 10


def test_a_save_is_read_out(phone: Phone) -> None:
    """The words stand in a part of the page that is there all along, so that ears hear them."""
    page = phone.open()
    rack_from(page, "901")
    ears = page.get_by_role("status").filter(has_not_text=re.compile("version|restored"))
    expect(ears).to_have_attribute("aria-live", "polite")
    phone.lose_signal()
    fill(page, "117")
    expect(ears).to_have_text("117 filled. On this phone.")
    phone.find_signal()
    expect(ears).to_have_text("117 filled. At the brewery.")


def test_another_screen_puts_the_focus_on_its_title(phone: Phone) -> None:
    """So that ears hear where they are."""
    page = phone.open()
    for place in ["Cellar", "Bar", "Out", "Office"]:
        go_to(page, place)
        expect(page.get_by_role("heading", level=1, name=place)).to_be_focused()
        expect(page).to_have_title(re.compile(f"^{place} "))


def test_the_chosen_look_stays(phone: Phone) -> None:
    """Chalk for a bright yard, although the phone itself is dark; after a restart too."""
    page = phone.open("office/phone")
    slate = background(page)
    choose(page, "Chalk")
    page.wait_for_function("() => document.documentElement.dataset.theme === 'board'")
    chalk = background(page)
    assert chalk != slate
    phone.close()
    phone.start()
    page = phone.open()
    assert background(page) == chalk
    first, with_content = page.evaluate(
        "() => performance.getEntriesByType('paint').map((paint) => paint.startTime)"
    )
    assert first == with_content, "it is painted before it is known how it is to look"


def background(page: Page) -> str:
    """The colour of the page."""
    colour: str = page.evaluate("() => getComputedStyle(document.documentElement).backgroundColor")
    return colour
