"""A phone with 10,000 containers in Chromium: the first load, and saving a fill.

The floor of a save is a bare strict IndexedDB put of the same record in the same page, in turn.
"""

import shutil
import subprocess
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import sync_playwright

from ..browser.phone import keep_cookie
from ..browser.server import Server
from ..making import push_body
from .timing import say
from .workload import CONTAINERS, history, number

ROOT = Path(__file__).parents[2]
SAVES = 200
PAGE = """<!doctype html>
<html lang="en-GB"><title>bench</title><script type="module" src="/bench.js"></script>
"""


def build(folder: Path) -> Path:
    """A client of one page, made of the app's own store and sync."""
    folder.mkdir()
    (folder / "index.html").write_text(PAGE)
    esbuild = ROOT / "static/node_modules/esbuild/bin/esbuild"
    options = ["--bundle", "--minify", "--format=esm", '--define:__BUILD_ID__="bench"']
    command = [esbuild, ROOT / "tests/bench/phone.ts", *options, f"--outfile={folder / 'bench.js'}"]
    modules = {"NODE_PATH": str(ROOT / "static/node_modules")}
    subprocess.run([*command, "--log-level=warning"], check=True, env=modules)
    return folder


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        server = Server(Path(name, "server"), build(Path(name, "client")))
        server.start()
        try:
            for some in history(CONTAINERS):
                server.post("/api/push", push_body(some))
            measure(server, Path(name, "profile"))
        finally:
            server.stop()


def measure(server: Server, profile: Path) -> None:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch_persistent_context(
            profile, executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        page = browser.new_page()
        keep_cookie(browser, server.address, server.let_in("bench"))
        page.goto(server.address)
        page.wait_for_function("() => 'saves' in globalThis")
        loaded_ms = page.evaluate("(rows) => firstLoad(rows)", CONTAINERS)
        print(f"first load of {CONTAINERS:,} containers: {loaded_ms:.0f} ms, once")
        pairs = page.evaluate("(n) => saves(n)", [number(n) for n in range(SAVES)])
        ours_ms, bare_ms = (median(pair[i] for pair in pairs[20:]) for i in (0, 1))
        say("saving a fill, 10,000 containers held", ours_ms, bare_ms, "a bare strict put")
        browser.close()


if __name__ == "__main__":
    main()
