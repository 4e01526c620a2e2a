"""Opening the app with no network on a slowed phone that holds 10,000 containers.

The floor is a page of one line that a service worker keeps, in the same browser, in turn.
"""

import shutil
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import BrowserContext, Page, sync_playwright

from ..browser.built import build_client
from ..browser.server import Server
from ..making import push_body
from .timing import say
from .workload import CONTAINERS, history

RUNS = 9
SLOWED = 6
"""What is asked of Chromium; the floor is slowed by as much."""
EMPTY = """<!doctype html>
<html lang="en-GB"><title>bench</title><nav aria-label="Places">here</nav>
<script src="/start.js"></script></html>
"""
START = """navigator.serviceWorker.register("/sw.js");"""
WORKER = """
self.addEventListener("install", (event) => event.waitUntil(
    caches.open("all")
        .then((cache) => cache.addAll(["/index.html", "/start.js"]))
        .then(() => self.skipWaiting())));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (event) => event.respondWith(
    caches.match(event.request.mode === "navigate" ? "/index.html" : event.request)));
"""
WATCH = """
    const look = () => {
        const there = document.querySelector("nav[aria-label=Places]");
        if (there !== null && there.getClientRects().length > 0) {
            requestAnimationFrame(() => { window.shownAt ??= performance.now(); });
        } else requestAnimationFrame(look);
    };
    look();
"""
"""When there is something to press, from the start of the navigation."""


def empty_client(folder: Path) -> Path:
    folder.mkdir()
    (folder / "index.html").write_text(EMPTY)
    (folder / "start.js").write_text(START)
    (folder / "sw.js").write_text(WORKER)
    return folder


def learn(context: BrowserContext, address: str) -> None:
    """Open it once with a network, until it needs none."""
    page = context.new_page()
    page.goto(address)
    page.wait_for_function("() => navigator.serviceWorker.controller?.state === 'activated'")
    page.close()


def opened_ms(context: BrowserContext, address: str) -> float:
    page: Page = context.new_page()
    page.add_init_script(WATCH)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    page.goto(address)
    page.wait_for_function("() => window.shownAt !== undefined")
    shown: float = page.evaluate("() => window.shownAt")
    page.close()
    return shown


def hold_all(context: BrowserContext, address: str) -> None:
    """The phone knows everything that the brewery knows."""
    page = context.new_page()
    page.goto(f"{address}/#/office/phone")
    page.get_by_text("This phone last knew everything: just now.").wait_for(timeout=60_000)
    page.close()


def measure(ours: str, empty: str, profile: Path) -> None:
    with sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            profile, executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        for address in (ours, empty):
            learn(context, address)
        hold_all(context, ours)
        context.set_offline(True)
        for screen in ("bench", "cellar"):
            address = f"{ours}/#/{screen}"
            pairs = [(opened_ms(context, address), opened_ms(context, empty)) for _ in range(RUNS)]
            ours_ms, floor_ms = (median(pair[i] for pair in pairs[1:]) for i in (0, 1))
            say(f"opened with no network: {screen}", ours_ms, floor_ms, "an empty page")
        context.close()


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        server = Server(folder / "server", build_client(folder / "client"))
        empty = Server(folder / "empty server", empty_client(folder / "empty"))
        try:
            server.start()
            empty.start()
            for some in history(CONTAINERS * 5):
                server.post("/api/push", push_body(some))
            measure(server.address, empty.address, folder / "profile")
        finally:
            server.stop()
            empty.stop()


if __name__ == "__main__":
    main()
