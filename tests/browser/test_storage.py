"""The phone's own storage: full, cleared, damaged, or cut off by an empty battery."""

import re
from pathlib import Path

from playwright.sync_api import Page, expect

from .brewery import Brewery
from .doings import (
    all_at_the_brewery,
    fill,
    kept,
    on_this_phone,
    rack_from,
    said,
    shown,
    tap,
    type_number,
)
from .phone import Phone


def test_an_entry_says_where_it_is(phone: Phone, bench: Page) -> None:
    """On this phone until the brewery has it, and then at the brewery."""
    phone.lose_signal()
    fill(bench, "117")
    said(bench, "117 filled. On this phone.")
    phone.find_signal()
    said(bench, "117 filled. At the brewery.")
    bench.get_by_role("link", name="Filled on this phone today").tap()
    shown(bench, "at the brewery")


def test_a_full_phone_says_that_nothing_was_saved(
    phone: Phone, bench: Page, brewery: Brewery
) -> None:
    """What was typed stands on the pad again, and is saved once there is room."""
    fill(bench, "117")
    all_at_the_brewery(bench)
    phone.kill()
    phone.start(offline=True)
    storage = phone.context.new_cdp_session(phone.context.pages[0])
    origin = {"origin": phone.address}
    # Before the first save: a browser does not look again at once while there was room.
    storage.send("Storage.overrideQuotaForOrigin", {**origin, "quotaSize": 1})
    page = phone.open()
    type_number(page, "118")
    tap(page, "Fill 118")
    shown(page, "This phone has no room left. Nothing was saved.")
    expect(page.get_by_role("button", name="Fill 118", exact=True)).to_be_visible()
    all_at_the_brewery(page)

    storage.send("Storage.overrideQuotaForOrigin", origin)
    tap(page, "Fill 118")
    said(page, "118 filled. On this phone.")
    phone.find_signal()
    all_at_the_brewery(page)
    assert len(brewery.server.entries("118", "filled")) == 1


def test_what_was_said_to_be_saved_outlives_an_empty_battery(
    phone: Phone, bench: Page, brewery: Brewery
) -> None:
    """Again and again in the middle of a burst of saves: all that was said is there."""
    phone.lose_signal()
    heard: set[str] = set()

    def hear(page: Page) -> None:
        page.expose_function(
            "hear", lambda words: heard.update(re.findall(r"^(\d+) filled", words))
        )
        page.evaluate(
            """() => new MutationObserver(() => {
                window.hear(document.querySelector("[aria-live=polite].unseen").textContent);
            }).observe(document.body, {childList: true, characterData: true, subtree: true})"""
        )

    numbers = iter(range(101, 141))
    page = bench
    for round_ in range(5):
        hear(page)
        first = next(numbers)
        fill(page, str(first))  # so that there is something to lose, however slow the machine
        heard.add(str(first))
        for _ in range(3 + round_):
            page.keyboard.type(str(next(numbers)))
            page.keyboard.press("Enter")
        phone.kill()
        phone.start(offline=True)
        page = phone.open()
        shown(page, "Filled on this phone today")
    assert len(heard) >= 5
    phone.find_signal()
    all_at_the_brewery(page)
    assert {number for number in heard if not brewery.server.entries(number, "filled")} == set()


def test_a_tab_closed_right_after_the_tap_keeps_all_of_it_or_nothing(
    phone: Phone, bench: Page, brewery: Brewery
) -> None:
    """Nobody was told that it was saved; but what the phone shows then is what the brewery gets."""
    phone.lose_signal()
    numbers = ["117", "118", "119", "120"]
    for number in numbers:
        tab = phone.open_in_new_tab()
        type_number(tab, number)
        tap(tab, f"Fill {number}")
        tab.close()
    bench.bring_to_front()
    fill(bench, "121")
    bench.reload()
    expect(kept(bench)).to_contain_text("on this phone")
    shows = kept(bench).inner_text()
    phone.find_signal()
    all_at_the_brewery(bench)
    full = [n for n in [*numbers, "121"] if brewery.server.standing(n)["contents"]]
    assert shows == f"{len(full)} on this phone"


def test_storage_cleared_under_an_open_app_is_put_back(
    phone: Phone, bench: Page, brewery: Brewery
) -> None:
    """The app still has it all in memory, and keeps it anew."""
    phone.lose_signal()
    fill(bench, "117")
    clear = {"origin": phone.address, "storageTypes": "indexeddb"}
    phone.context.new_cdp_session(bench).send("Storage.clearDataForOrigin", clear)
    fill(bench, "118")
    on_this_phone(bench, 2)
    phone.kill()
    phone.start(offline=True)
    page = phone.open()
    on_this_phone(page, 2)
    phone.find_signal()
    all_at_the_brewery(page)
    assert [len(brewery.server.entries(n, "filled")) for n in ["117", "118"]] == [1, 1]


def test_storage_damaged_while_closed_is_told_and_work_goes_on(
    phone: Phone, bench: Page, brewery: Brewery, tmp_path: Path
) -> None:
    """What had not reached the brewery is lost, and the app says how much; the rest is fetched."""
    phone.lose_signal()
    fill(bench, "117")
    fill(bench, "118")
    phone.close()
    files = list((tmp_path / "phone 1").glob("**/IndexedDB/**/*.leveldb/*"))
    assert files
    for file in files:
        file.write_bytes(b"rust" * 64)
    phone.start()
    page = phone.open()
    expect(page.get_by_role("alert").filter(visible=True)).to_contain_text(
        "2 entries had not reached the brewery yet."
    )
    rack_from(page, "901")
    fill(page, "119")
    all_at_the_brewery(page)
    assert brewery.server.entries("117", "filled") == []


def test_a_newer_app_in_another_tab_may_change_the_storage(phone: Phone, bench: Page) -> None:
    """The older tab lets go of it at once and says what to do; nothing recorded is lost."""
    phone.lose_signal()
    fill(bench, "117")
    newer = phone.context.new_page()
    newer.goto(f"{phone.address}/app.webmanifest")
    version = newer.evaluate(
        """() => new Promise((resolve, reject) => {
            const opening = indexedDB.open("cellarapp", 99);
            opening.onsuccess = () => resolve(opening.result.version);
            opening.onblocked = () => reject(new Error("blocked"));
        })"""
    )
    assert version == 99
    bench.bring_to_front()
    words = "A newer version of this app is open in another tab. Load this page again."
    expect(bench.get_by_text(words).first).to_be_visible()
    bench.reload()
    expect(bench.get_by_role("alert")).to_have_text(words)
    expect(
        bench.get_by_text("What was recorded on this phone before is still there.")
    ).to_be_visible()
