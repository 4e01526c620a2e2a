"""The demo brewery on a phone that is in use, with a few entries of its own."""

import re
from collections import Counter, defaultdict
from dataclasses import dataclass

from playwright.sync_api import Page, expect

from .doings import said, tap, type_number
from .phone import Phone
from .server import Server


@dataclass
class DemoPhone:
    """A phone that holds the demo brewery. What is recorded on it goes nowhere."""

    phone: Phone
    page: Page
    numbers: dict[str, list[str]]
    """Containers that are empty, full, out."""

    def open(self, screen: str) -> Page:
        """Open a screen afresh, so that nothing is left of the one before, typed or shown."""
        # A number on the pad outlives the tab, and would be taken up again.
        self.page.evaluate("() => localStorage.removeItem('cellarapp.bench')")
        self.page.goto("about:blank")
        self.phone.open(screen)
        expect(self.page.get_by_text("One moment")).to_be_hidden()
        expect(self.page.get_by_text("Asking the brewery")).to_be_hidden()
        return self.page


def take_in_hand(phone: Phone, server: Server) -> DemoPhone:
    """A phone with a few entries of its own, which the demo never hears of."""
    page = phone.open()
    expect(page.get_by_role("banner").get_by_role("link").first).to_have_text("all at the brewery")
    demo = DemoPhone(phone, page, numbers_in(server))
    phone.context.route("**/api/push", lambda route: route.abort())
    page.get_by_role("button", name=re.compile("^Rack:")).first.tap()
    empty, out = demo.numbers["empty"][0], demo.numbers["out"][0]
    type_number(page, empty)
    tap(page, f"Fill {empty}")
    said(page, f"{empty} filled. On this phone.")
    demo.open("out/back")
    type_number(page, out)
    tap(page, f"Take back {out}")
    said(page, f"{out} came back. On this phone.")
    demo.open("c/9998")
    tap(page, "Washed")
    said(page, "9998 washed. On this phone.")
    # So that something is on sale whatever the day and the hour.
    full = demo.numbers["full"].pop()
    demo.open(f"c/{full}")
    page.get_by_text("More that can happen to it").tap()
    tap(page, "Tap")
    said(page, f"{full} tapped.")
    return demo


def numbers_in(server: Server) -> dict[str, list[str]]:
    """Containers of each sort, whose digits are nobody else's."""
    rows = server.get("/api/snapshot/pages?limit=1000")["rows"]
    docs = [row["doc"] for row in rows if row["type"] == "container"]
    digits = Counter(re.sub(r"\D", "", doc["number"]) for doc in docs)
    found = defaultdict(list)
    for doc in docs:
        if digits[doc["number"]] == 1 and not (doc["held"] or doc["queries"] or doc["serving"]):
            sort = "out" if doc["trip"] else "full" if doc["contents"] else "empty"
            found[sort].append(doc["number"])
    return found
