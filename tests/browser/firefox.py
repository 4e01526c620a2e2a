"""Firefox on a phone: what it keeps lies in its folder, and outlives a kill."""

import json
import os
import shutil
import signal
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Playwright

from ..making import made_id
from .phone import HIGH, WIDE
from .server import Server


class Firefox:
    """Debian's, as it is, through Playwright."""

    def __init__(self, playwright: Playwright, folder: Path) -> None:
        program = shutil.which("firefox-esr") or shutil.which("firefox")
        assert program, "firefox-esr is not on the path: run .ci/test, which installs it"
        self._folder = folder
        self._context: BrowserContext | None = playwright.firefox.launch_persistent_context(
            str(folder),
            channel="moz-firefox",
            executable_path=program,
            viewport={"width": WIDE, "height": HIGH},
            locale="en-GB",
        )
        self._page = self._context.pages[0]

    def let_in(self, server: Server) -> None:
        """Pair it by the token of an invitation, as the app does, before the app is opened."""
        self.open(f"{server.address}/api/health")
        token = server.invitation()
        asked = {"token": token, "device": made_id("Firefox"), "device_name": "Firefox"}
        sending = {
            "method": "POST",
            "headers": {"Content-Type": "application/json"},
            "body": json.dumps(asked),
        }
        assert self.run(f"return (await fetch('/api/pair', {json.dumps(sending)})).ok;")

    def open(self, address: str) -> None:
        self._page.goto(address)

    def run(self, script: str) -> Any:
        """What the body of an async function answers."""
        return self._page.evaluate(f"async () => {{ {script} }}")

    def kill(self) -> None:
        """End it as an empty battery would."""
        if self._context is None:
            return
        mine = processes_of(self._folder)
        assert mine, "Firefox runs under another profile than it was given"
        with self._context.expect_event("close"):
            for process in mine:
                os.kill(process, signal.SIGKILL)
        self._context = None

    def close(self) -> None:
        """End it as a person would."""
        if self._context is not None:
            self._context.close()
            self._context = None


def processes_of(folder: Path) -> list[int]:
    """The processes that were started with this folder as their profile."""
    mine = []
    for command in Path("/proc").glob("[0-9]*/cmdline"):
        try:
            words = command.read_bytes().split(b"\0")
        except OSError:  # it has ended meanwhile
            continue
        if str(folder).encode() in words:
            mine.append(int(command.parent.name))
    return mine
