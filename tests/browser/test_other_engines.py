"""The core journey in Firefox and in WebKitGTK: no signal, no battery, and another phone."""

import json
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any, TypeAlias

import pytest
from playwright.sync_api import Playwright

from .brewery import Brewery
from .firefox import Firefox
from .webkit import WebKit, a_display

Engine: TypeAlias = Firefox | WebKit
Start = Callable[[str], Engine]

HELP = """
    const seen = (one) => one.getClientRects().length > 0;
    const named = (one) =>
        (one.getAttribute("aria-label") ?? one.innerText).replace(/\\s+/g, " ").trim();
    const until = (look) => new Promise((resolve, reject) => {
        const ends = Date.now() + 20000;
        const turn = () => {
            const found = look();
            if (found) resolve(found);
            else if (Date.now() > ends) reject(new Error(document.body.innerText));
            else requestAnimationFrame(turn);
        };
        turn();
    });
"""


@pytest.fixture(params=["Firefox", "WebKitGTK"])
def start(
    request: pytest.FixtureRequest, tmp_path: Path, playwright: Playwright
) -> Iterator[Start]:
    """Starts the engine with the folder of this name."""
    running: list[Engine] = []
    with ExitStack() as stack:
        display = "" if request.param == "Firefox" else stack.enter_context(a_display())

        def begin(name: str) -> Engine:
            folder = tmp_path / name
            engine = WebKit(display, folder) if display else Firefox(playwright, folder)
            running.append(engine)
            return engine

        yield begin
        for one in running:
            one.kill()


def press(engine: Engine, name: str, within: str = "") -> None:
    """Press the button or link of this name, as soon as it is there."""
    find = f"""[...document.querySelectorAll({json.dumps(within + " :is(button, a)")})]
        .find((one) => seen(one) && named(one) === {json.dumps(name)})"""
    engine.run(f"{HELP} (await until(() => {find})).click();")


def shows(engine: Engine, words: str) -> None:
    """The page says so, sooner or later."""
    told = json.dumps(words)
    engine.run(f"{HELP} await until(() => document.body.innerText.includes({told}));")


def open_app(engine: Engine, address: str, screen: str = "") -> None:
    engine.open(f"{address}/#/{screen}")
    engine.run(f"{HELP} await until(() => document.querySelector('nav[aria-label=Places]'));")


def test_a_fill_with_no_signal_outlives_the_battery_and_reaches_the_other_phone(
    start: Start, brewery: Brewery
) -> None:
    """Installed, started with no network, filled, killed, back in range, and seen elsewhere."""
    server = brewery.server
    phone = start("one")
    phone.let_in(server)
    open_app(phone, server.address)
    assert installed(phone)
    shows(phone, "gyle 901")  # it has fetched what it needs without the brewery
    phone.close()

    server.stop()
    phone = start("one")
    open_app(phone, server.address)
    choose_gyle(phone, "901")
    for key in "117":
        press(phone, key, "[aria-label='Number pad']")
    press(phone, "Fill 117")
    shows(phone, "117 filled. On this phone.")
    phone.kill()
    phone = start("one")
    open_app(phone, server.address)
    shows(phone, "1 on this phone")

    server.start()
    open_app(phone, server.address, "office/phone")
    press(phone, "Send and fetch now")
    shows(phone, "all at the brewery")
    assert len(server.entries("117", "filled")) == 1

    other = start("two")
    other.let_in(server)
    open_app(other, server.address, "c/117")
    shows(other, "Oystercatcher")
    shows(other, "gyle 901")


def installed(engine: Engine) -> Any:
    """The worker is in charge, and the manifest says what an installation needs."""
    return engine.run(
        """await navigator.serviceWorker.ready;
        const link = document.querySelector("link[rel=manifest]");
        const manifest = await (await fetch(link.href)).json();
        return manifest.display === "standalone" && manifest.icons.length > 0;"""
    )


def choose_gyle(engine: Engine, gyle: str) -> None:
    engine.run(
        f"""{HELP} (await until(() => [...document.querySelectorAll("li")]
            .find((one) => seen(one) && one.textContent.includes("gyle {gyle}"))
            ?.querySelector("button"))).click();"""
    )
