"""People and phones, as those who use them tell of it."""

import re
from dataclasses import dataclass

from playwright.sync_api import Page, expect

from .doings import go_to, said, tap
from .phone import Phone

PASSPHRASE = "three wet casks in a row"
OWNER = "Ann"


class NewPhone(Phone):
    """A phone that is let in only by what its user does with the app."""

    def _be_let_in(self) -> None:
        """Nobody has given it a cookie."""


def link_to_begin(printed: str) -> str:
    """The link that makes an owner, in what the server has printed."""
    found = re.search(r"http\S+#begin=\S+", printed)
    assert found, printed
    return found[0]


def begin(phone: Phone, link: str, name: str = OWNER) -> Page:
    """The first owner comes in by the link that the server printed."""
    page = phone.context.pages[0]
    page.goto(link)
    page.get_by_label("Your name").fill(name)
    page.get_by_label("A passphrase").fill(PASSPHRASE)
    tap(page, "Begin")
    expect(page.get_by_role("heading", level=1)).to_have_text("Office")
    return page


def pair(page: Page, link: str, called: str) -> None:
    """The phone joins by a link, whether the app is open on it or not."""
    page.goto(link)
    page.get_by_label("What this phone is called").fill(called)
    tap(page, "Pair this phone")


def sign_in(page: Page, name: str) -> None:
    """Somebody comes in again."""
    page.goto(f"{page.url.partition('#')[0]}#/sign-in")
    page.get_by_label("Name", exact=True).fill(name)
    page.get_by_label("Passphrase").fill(PASSPHRASE)
    page.get_by_role("main").get_by_role("button", name="Sign in").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Bench")


def give_passphrase(page: Page) -> None:
    """For what is behind the owner's passphrase."""
    page.get_by_label(re.compile("passphrase$")).fill(PASSPHRASE)
    tap(page, "Go on")


def office(page: Page, section: str) -> None:
    """To a section of the Office."""
    go_to(page, "Office")
    page.get_by_role("main").get_by_role("link", name=re.compile(f"^{section}")).first.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(section)


@dataclass
class Somebody:
    """Somebody whom the owner adds."""

    name: str
    role: str
    pin: str


BOB = Somebody("Bob", "Cellar", "2468")
DEE = Somebody("Dee", "Driver", "13579")


def add(page: Page, one: Somebody) -> None:
    """The owner adds somebody."""
    office(page, "People")
    page.get_by_role("link", name="Add somebody").tap()
    page.get_by_label("Name").fill(one.name)
    page.get_by_label("Role").select_option(one.role)
    page.get_by_label("PIN").fill(one.pin)
    tap(page, "Add")
    said(page, f"{one.name} is one of you now.")


def link_for(page: Page, name: str) -> str:
    """The owner makes a link for a phone of somebody."""
    office(page, "Phones")
    page.get_by_role("link", name="Pair a phone").tap()
    page.get_by_label("For whom").select_option(name)
    tap(page, "Make a link")
    link = page.get_by_text(re.compile("#pair="))
    expect(link).to_be_visible()
    expect(page.get_by_role("img", name="The link as a code to scan")).to_be_visible()
    return link.inner_text()


def take_in_hand(page: Page, one: Somebody, pin: str | None = None) -> None:
    """Somebody takes a shared tablet in hand by PIN."""
    page.goto(f"{page.url.partition('#')[0]}#/who/{one.name}")
    for digit in pin or one.pin:
        page.get_by_role("button", name=digit, exact=True).tap()
    page.get_by_role("button", name="This is me", exact=True).tap()
