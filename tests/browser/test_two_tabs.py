"""The same phone with the app open twice: both show the same, and one of them sends."""

import json

from playwright.sync_api import Page, Request, expect

from .brewery import Brewery
from .doings import all_at_the_brewery, fill, on_this_phone, rack_from
from .phone import Phone


def test_two_tabs_show_the_same_and_send_each_entry_once(phone: Phone, brewery: Brewery) -> None:
    """What one saves the other shows at once; back in range only one of them sends."""
    first = phone.open()
    rack_from(first, "901")
    second = phone.open_in_new_tab()
    expect(second.get_by_text("None filled yet")).to_be_visible()
    phone.lose_signal()
    fill_in(first, "117")
    expect(second.get_by_text("1 firkin filled")).to_be_visible()
    fill_in(second, "118")
    fill_in(first, "119")
    for tab in (first, second):
        expect(tab.get_by_text("3 firkins filled")).to_be_visible()
        on_this_phone(tab, 3)

    sent: list[str] = []
    phone.context.on("request", lambda request: sent.extend(entries_in(request)))
    phone.find_signal()
    for tab in (first, second):
        all_at_the_brewery(tab)
    assert len(sent) == len(set(sent)) == 3
    assert [len(brewery.server.entries(n, "filled")) for n in ["117", "118", "119"]] == [1, 1, 1]


def fill_in(tab: Page, number: str) -> None:
    """Fill in one of the tabs: the one that is looked at."""
    tab.bring_to_front()
    fill(tab, number)


def entries_in(request: Request) -> list[str]:
    """The ids of the entries that a request carries to the brewery."""
    if not request.url.endswith("/api/push"):
        return []
    return [entry["id"] for entry in json.loads(request.post_data or "{}")["entries"]]
