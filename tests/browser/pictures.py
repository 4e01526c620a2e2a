"""Takes the pictures that the README shows, of the demo: `python -m tests.browser.pictures`."""

import re
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, expect, sync_playwright

from ..meta.sources import ROOT
from .built import build_client
from .doings import all_at_the_brewery, type_number
from .phone import Phone
from .server import Server

PICTURES = ROOT / "static" / "pictures"


def take_pictures(phone: Phone, washed: str) -> None:
    """At the bench with a number typed, in the cellar, and of who has what."""
    page = phone.open()
    all_at_the_brewery(page)
    page.get_by_role("button", name=re.compile("^Rack: Clattergate Bitter")).first.tap()
    type_number(page, washed)
    expect(page.get_by_role("button", name=f"Fill {washed}")).to_be_visible()
    _keep(page, "bench")
    for name in ("cellar", "out"):
        page = phone.open(name)
        expect(page.get_by_role("main").get_by_role("listitem").first).to_be_visible()
        _keep(page, name)


def _keep(page: Page, name: str) -> None:
    page.screenshot(path=PICTURES / f"{name}.png", scale="css", animations="disabled")


def washed_firkin(server: Server) -> str:
    """The number of a firkin that is clean and empty."""
    docs = [row["doc"] for row in server.get("/api/snapshot/pages?limit=1000")["rows"]]
    return next(
        str(doc["number"])
        for doc in docs
        if doc.get("kind") == "firkin"
        and doc["clean"]["state"] == "washed"
        and not (doc["contents"] or doc["held"] or doc["trip"] or doc["queries"])
    )


def main() -> None:
    """Start the demo, take them, and stop it."""
    with TemporaryDirectory() as folder, sync_playwright() as playwright:
        client = build_client(Path(folder, "client"))
        server = Server(Path(folder, "server"), client, "--demo")
        server.start()
        phone = Phone(playwright, Path(folder, "phone"), server)
        phone.start()
        try:
            take_pictures(phone, washed_firkin(server))
        finally:
            phone.close()
            server.stop()


if __name__ == "__main__":
    main()
