"""A brewery brings in what it kept in spreadsheets: shown first, then entered whole."""

import re
from typing import Any
from urllib.error import HTTPError
from urllib.parse import urlsplit
from urllib.request import urlopen

import pytest
from icalendar import Calendar
from playwright.sync_api import Page, expect

from .doings import all_at_the_brewery, said, tap
from .phone import Phone
from .server import Server


def choose_file(page: Page, of: str, text: str) -> None:
    file: Any = {"name": "list.csv", "mimeType": "text/csv", "buffer": text.encode()}
    page.get_by_label(f"Choose a file: {of}").set_input_files(file)


def test_customers_containers_and_what_is_out(phone: Phone, server: Server) -> None:
    """A wrong cell is named and stops the list; mended and chosen again, it goes in whole."""
    page = phone.open("office/lists")
    choose_file(page, "Customers", "Pub;Day;Days to return\nThe Mitre;Tue;28\nThe Bell;;42\n")
    expect(page.get_by_text("list.csv: 2 new rows, 0 on record already.")).to_be_visible()
    tap(page, "Enter 2 rows")
    said(page, "Customers: 2 rows entered.")
    all_at_the_brewery(page)

    casks = "Number,Kind,Colour\n7,firkin,red\n8,bucket,blue\n"
    choose_file(page, "Containers", casks)
    expect(page.get_by_text("Row 3, Kind: “bucket” is not a kind of container.")).to_be_visible()
    expect(page.get_by_text("Not used: Colour.")).to_be_visible()
    expect(page.get_by_role("button", name="Enter")).to_have_count(0)
    choose_file(page, "Containers", casks.replace("bucket", "pin"))
    tap(page, "Enter 2 rows")
    said(page, "Containers: 2 rows entered.")
    all_at_the_brewery(page)

    choose_file(page, "What is out", "Number,Customer,Sent on\n7,the mitre,31/1/2026\n")
    tap(page, "Enter 1 row")
    said(page, "What is out: 1 row entered.")
    all_at_the_brewery(page)
    choose_file(page, "What is out", "Number,Customer,Sent on\n7,the mitre,31/1/2026\n")
    expect(page.get_by_text("list.csv: 0 new rows, 1 on record already.")).to_be_visible()

    standing = server.standing("7")
    assert standing["trip"]["since"] == "2026-01-31T09:00:00.000Z"
    assert standing["trip"]["due_on"] == "2026-02-28"
    assert standing["queries"] == []


def test_a_copy_is_taken_out_and_a_calendar_reads_the_jobs(phone: Phone, server: Server) -> None:
    """The browser saves it under its name. A calendar needs no more than the address."""
    page = phone.open("office/lists")
    for link, name in [
        ("Containers, as CSV", "containers.csv"),
        ("Everything, as JSON", "ledger.json"),
    ]:
        with page.expect_download() as download:
            page.get_by_role("link", name=link).tap()
        assert download.value.suggested_filename == name
        assert download.value.path().stat().st_size > 0

    page.goto(f"{phone.address}/#/office/calendar")
    tap(page, "Make an address")
    made = page.get_by_text(re.compile(r"^http\S+\.ics$"))
    expect(made).to_be_visible()
    feed = server.address + urlsplit(made.inner_text()).path
    with urlopen(feed) as answer:
        assert Calendar.from_ical(answer.read())["x-wr-calname"] == "Jobs due"
    page.reload()
    expect(page.get_by_text("You have an address since")).to_be_visible()
    tap(page, "End the address")
    expect(page.get_by_role("button", name="Make an address")).to_be_visible()
    with pytest.raises(HTTPError, match="404"):
        urlopen(feed)


def test_without_a_network_it_says_what_is_needed(phone: Phone) -> None:
    """Lists are read by the server; nothing is lost by trying."""
    page = phone.open("office")
    phone.lose_signal()
    page.get_by_role("link", name="Your lists").tap()
    expect(page.get_by_role("alert")).to_contain_text("so this needs the network")
    phone.find_signal()
    tap(page, "Try again")
    expect(page.get_by_role("heading", name="What is out")).to_be_visible()
