"""The browser is killed thirty times, its profile kept: saving, sending and taking in."""

import re
from collections.abc import Iterator

from playwright.sync_api import Page, expect

from .brewery import Brewery
from .doings import all_at_the_brewery, fill, rack_from, shown, tap, type_number
from .phone import Phone

KILLS = 30
NUMBERS = [str(number) for number in range(1001, 1400)]


def hear(page: Page, heard: set[str]) -> None:
    """Note down what a person is told to be filled."""

    def take(words: str) -> None:
        one, run = re.match(r"(\d+) filled", words), re.match(r"(\d+) to (\d+) filled", words)
        if one:
            heard.add(one[1])
        if run:
            heard.update(str(number) for number in range(int(run[1]), int(run[2]) + 1))

    page.expose_function("hear", take)
    page.evaluate(
        """() => new MutationObserver(() => {
            window.hear(document.querySelector("[aria-live=polite].unseen").textContent);
        }).observe(document.body, {childList: true, characterData: true, subtree: true})"""
    )


def clear(page: Page) -> None:
    """A number that was typed and not saved stands on the pad again."""
    for _ in range(17):
        page.keyboard.press("Backspace")


def killed_in_a_save(phone: Phone, page: Page, numbers: Iterator[str], turn: int) -> None:
    """A burst with no signal; it is left to chance which of them the kill strikes."""
    for _ in range(2 + turn % 4):
        page.keyboard.type(next(numbers))
        page.keyboard.press("Enter")
    phone.kill()


def killed_while_sending(phone: Phone, page: Page, numbers: Iterator[str], turn: int) -> None:
    """Ten at once, killed as they set out, or as the answer comes."""
    run = [next(numbers) for _ in range(10)]
    type_number(page, f"{run[0]}-{run[-1]}")
    tap(page, "Fill all 10")
    expect(page.locator(".saved").filter(visible=True)).to_contain_text("10 in all")
    phone.kill_when(["request", "response", "requestfinished"][turn % 3], "/api/push")


def killed_while_taking_in(phone: Phone, brewery: Brewery, turn: int) -> None:
    """Something new at the brewery, killed as it is asked for, or as it comes."""
    noted = [brewery.office.entry("noted", number, words=f"{turn}") for number in NUMBERS[:200]]
    brewery.tell(noted)
    phone.kill_when(["request", "response", "requestfinished"][turn % 3], "/api/pull")


def open_for_the_first_time(phone: Phone) -> None:
    """Open and close it until Chromium has noted for good that the site keeps storage.

    It does so at a close, or after half a minute. Killed before it ever has, it begins with none;
    a phone in use has been closed once. A busy machine may let a close end before it is written.
    """
    for _ in range(5):
        all_at_the_brewery(phone.open())
        phone.close()
        noted = phone.storage_is_noted()
        phone.start()
        if noted:
            return
    raise AssertionError("Chromium does not note that it keeps storage for the app")


def test_thirty_kills_lose_and_double_nothing(phone: Phone, brewery: Brewery) -> None:
    """What was called saved is at the brewery in the end, once, and the phone knows all of it."""
    office = brewery.office
    brewery.tell([office.registered(number) for number in NUMBERS])
    brewery.tell([office.entry("washed", number) for number in NUMBERS])
    open_for_the_first_time(phone)
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    heard: set[str] = set()
    numbers = iter(NUMBERS)
    for kill in range(KILLS):
        turn = kill // 3
        hear(page, heard)
        phone.lose_signal()
        if kill % 3 == 0:
            fill(page, next(numbers))  # so that there is something to lose, however slow it is
            killed_in_a_save(phone, page, numbers, turn)
        elif kill % 3 == 1:
            killed_while_sending(phone, page, numbers, turn)
        else:
            killed_while_taking_in(phone, brewery, turn)
        phone.start(offline=True)
        page = phone.open()
        shown(page, "Filled on this phone today")
        clear(page)
    phone.find_signal()
    all_at_the_brewery(page)

    assert len(heard) >= 10 + 10 * 10
    fills = {n: len(brewery.server.entries(n, "filled")) for n in NUMBERS}
    assert {n for n in heard if fills[n] != 1} == set()
    assert max(fills.values()) == 1
    check = brewery.server.run("check")
    assert check.returncode == 0, check.stdout
    page.goto(f"{phone.address}/#/office/phone")
    tap(page, "Send and fetch now")
    expect(page.get_by_text("This phone last knew everything: just now.")).to_be_visible()
