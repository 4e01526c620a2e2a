"""Opening the app with no network on a slowed phone that holds 10,000 containers, 400 of them full.

The floor is a page of one line that a service worker keeps, in the same browser, in turn.
"""

import shutil
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import BrowserContext, Page, sync_playwright

from ..browser.built import build_client
from ..browser.phone import keep_cookie
from ..browser.server import Server
from ..making import push_body
from .timing import say
from .workload import CONTAINERS, history, house

RUNS = 9
SLOWED = 6
"""What is asked of Chromium; the floor is slowed by as much."""
EMPTY = """<!doctype html>
<html lang="en-GB"><title>bench</title><nav aria-label="Places">here</nav>
<main><button>do</button></main>
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
    const shown = (what) => [...document.querySelectorAll(what)]
        .some((one) => one.getClientRects().length > 0);
    const look = () => {
        const now = performance.now();
        if (shown("nav[aria-label=Places]")) window.shownAt ??= now;
        if (shown("main :is(a, button)")) console.log(`seen ${window.shownAt} ${now}`);
        else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
"""
"""When there are places to go to, and when there is something to do, since the navigation."""


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


def opened_ms(context: BrowserContext, address: str) -> tuple[float, float]:
    """When the places were shown, and what can be done there."""
    page: Page = context.new_page()
    page.add_init_script(WATCH)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    # Told by the page: a question asked of it would be answered in the time that is measured.
    with page.expect_console_message(lambda said: said.text.startswith("seen ")) as said:
        page.goto(address)
    shown, usable = map(float, said.value.text.split()[1:])
    page.close()
    return shown, usable


def hold_all(context: BrowserContext, address: str) -> None:
    """The phone knows everything that the brewery knows, and has a gyle in hand as on any day."""
    page = context.new_page()
    page.goto(f"{address}/#/office/phone")
    page.get_by_text("This phone last knew everything: just now.").wait_for(timeout=60_000)
    page.goto(f"{address}/#/bench/gyle")
    page.get_by_role("button", name="Rack").first.click()
    page.get_by_role("button", name="Fill").wait_for()
    page.close()


def measure(ours: str, empty: str, cookie: str, profile: Path) -> None:
    with sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            profile, executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        keep_cookie(context, ours, cookie)
        for address in (ours, empty):
            learn(context, address)
        hold_all(context, ours)
        context.set_offline(True)
        for screen in ("bench", "cellar"):
            address = f"{ours}/#/{screen}"
            pairs = [(opened_ms(context, address), opened_ms(context, empty)) for _ in range(RUNS)]
            for at, what in enumerate(("the places", "something to do")):
                ours_ms, floor_ms = (median(pair[i][at] for pair in pairs[1:]) for i in (0, 1))
                say(f"{screen}, no network: {what}", ours_ms, floor_ms, "an empty page")
        context.close()


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        server = Server(folder / "server", build_client(folder / "client"))
        empty = Server(folder / "empty server", empty_client(folder / "empty"))
        try:
            server.start()
            empty.start()
            for some in (*history(CONTAINERS * 5), *house()):
                server.post("/api/push", push_body(some))
            cookie = server.let_in("bench")
            measure(server.address, empty.address, cookie, folder / "profile")
        finally:
            server.stop()
            empty.stop()


if __name__ == "__main__":
    main()
