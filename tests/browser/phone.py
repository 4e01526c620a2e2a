"""A phone: a browser with a folder of its own, which outlives being killed and started again."""

import os
import select
import shutil
import signal
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from playwright.sync_api import BrowserContext, Error, Page, Playwright, Request, Response, expect

from cellarapp.api.cookie import NAME

from .server import Server

WIDE, HIGH = 360, 740
NEVER = 4_000_000_000
PATIENCE_S = 30


def _camera(sees: Path | None) -> list[str]:
    if sees is None:
        return []
    return [
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        f"--use-file-for-fake-video-capture={sees}",
    ]


def strike_down(processes: Sequence[int]) -> None:
    """All at once: an empty battery leaves none of them running."""
    for process in processes:
        with suppress(ProcessLookupError):
            os.kill(process, signal.SIGKILL)


@contextmanager
def ended(processes: Sequence[int]) -> Iterator[Sequence[int]]:
    """Wait at the end until they are all gone, and have let go of their files."""
    watched = []
    for process in processes:
        with suppress(ProcessLookupError):
            watched.append(os.pidfd_open(process))
    yield processes
    for one in watched:
        select.select([one], [], [], PATIENCE_S)
        os.close(one)


def keep_cookie(context: BrowserContext, address: str, cookie: str) -> None:
    """Give a browser the cookie of a paired device, if it has to have one."""
    if not cookie:
        return
    # Not by add_cookies: it names a domain, which a cookie of one host alone must not have.
    session = context.new_cdp_session(context.pages[0])
    session.send(
        "Network.setCookie",
        {
            "name": NAME,
            "value": cookie,
            "url": address.replace("http://", "https://"),
            "path": "/",
            "secure": True,
            "httpOnly": True,
            "sameSite": "Strict",
            "expires": NEVER,
        },
    )
    session.detach()


class Phone:
    """One installed browser. What it keeps lies in its folder, as on a real phone."""

    def __init__(self, playwright: Playwright, folder: Path, server: Server) -> None:
        self.address = server.address
        self.faults: list[str] = []
        self._playwright = playwright
        self._folder = folder
        self._server = server
        self._cookie = ""
        self._context: BrowserContext | None = None

    def start(
        self,
        *,
        offline: bool = False,
        theme: str = "dark",
        sees: Path | None = None,
        options: Sequence[str] = (),
        home: Path | None = None,
    ) -> None:
        """Start the browser; nothing is opened yet.

        `sees` is a film before its camera; whom it trusts, it reads in its `home` folder.
        """
        chromium = shutil.which("chromium") or shutil.which("google-chrome")
        assert chromium, "chromium is not on the path: run .ci/test, which installs it"
        self._context = self._playwright.chromium.launch_persistent_context(
            str(self._folder),
            executable_path=chromium,
            args=["--no-sandbox", *_camera(sees), *options],
            env=os.environ | ({"HOME": str(home)} if home else {}),
            viewport={"width": WIDE, "height": HIGH},
            screen={"width": WIDE, "height": HIGH},
            device_scale_factor=2,
            is_mobile=True,
            has_touch=True,
            locale="en-GB",
            color_scheme="light" if theme == "light" else "dark",
        )
        self._context.on("weberror", lambda error: self.faults.append(str(error.error)))
        if offline:
            self.lose_signal()

    def open(self, screen: str = "", *, tab: Page | None = None) -> Page:
        """Open the app, or one of its screens: "out/back". From then on it needs no network."""
        page = tab or self.context.pages[0]
        self._be_let_in()
        page.goto(f"{self.address}/#/{screen}")
        expect(page.get_by_role("navigation", name="Places")).to_be_visible()
        page.wait_for_function("() => navigator.serviceWorker.controller?.state === 'activated'")
        return page

    def _be_let_in(self) -> None:
        """Pair the phone before it is first used; a browser that is killed may lose the cookie."""
        self._cookie = self._cookie or self._server.let_in(self._folder.name)
        keep_cookie(self.context, self.address, self._cookie)

    def open_in_new_tab(self, screen: str = "") -> Page:
        return self.open(screen, tab=self.context.new_page())

    def lose_signal(self) -> None:
        self.context.set_offline(True)

    def find_signal(self) -> None:
        self.context.set_offline(False)

    def kill(self) -> None:
        """End the browser as an empty battery would: nothing is asked and nothing is finished."""
        with ended(self._processes()) as processes, self.context.expect_event("close"):
            strike_down(processes)
        self._context = None

    def kill_when(self, event: str, path: str) -> None:
        """Find a signal, and end at the first request to this path, or at its answer."""
        processes = self._processes()
        struck: list[str] = []

        def strike(asked: Request | Response) -> None:
            if not struck and path in asked.url:
                struck.append(asked.url)
                strike_down(processes)

        with ended(processes), self.context.expect_event("close"):
            self.context.on(event, strike)  # type: ignore[call-overload]
            with suppress(Error):  # it may have ended before it has found one
                self.find_signal()
        self._context = None

    def _processes(self) -> list[int]:
        """Every process of this browser, the main one first."""
        browser = self.context.browser
        assert browser is not None
        told = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")
        processes = sorted(told["processInfo"], key=lambda one: one["type"] != "browser")
        return [one["id"] for one in processes]

    def close(self) -> None:
        """Close the browser as a person would."""
        if self._context is not None:
            self._context.close()
            self._context = None

    def storage_is_noted(self) -> bool:
        """Whether Chromium, closed, has written down that a site keeps something on this phone."""
        file = self._folder / "Default" / "WebStorage" / "QuotaManager"
        if not file.exists():
            return False
        with closing(sqlite3.connect(f"{file.as_uri()}?mode=ro", uri=True)) as quota:
            [kept] = quota.execute("SELECT COUNT(*) FROM buckets").fetchone()
        return bool(kept)

    @property
    def context(self) -> BrowserContext:
        assert self._context is not None, "the phone is off"
        return self._context
