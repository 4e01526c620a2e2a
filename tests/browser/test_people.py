"""People and their phones: coming in, sharing a tablet, and being shut out with entries waiting."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect

from .brewery import Brewery
from .conftest import GetPhone, switched_on
from .doings import (
    all_at_the_brewery,
    fill,
    go_to,
    kept,
    look_at,
    on_this_phone,
    rack_from,
    said,
    shown,
    tap,
    type_number,
)
from .looking import look_over
from .people import (
    BOB,
    DEE,
    NewPhone,
    add,
    begin,
    link_for,
    link_to_begin,
    office,
    pair,
    sign_in,
    take_in_hand,
)
from .phone import Phone
from .server import Server


@pytest.fixture
def get_stranger(playwright: Playwright, tmp_path: Path, server: Server) -> Iterator[GetPhone]:
    """Another phone, which the brewery has never heard of."""
    with switched_on(
        server, lambda n: NewPhone(playwright, tmp_path / f"stranger {n}", server)
    ) as get:
        yield get


@pytest.fixture
def owners_phone(get_stranger: GetPhone, brewery: Brewery) -> Phone:
    """The phone of an owner of the small brewery."""
    phone = get_stranger()
    begin(phone, link_to_begin(brewery.server.run("invite").stdout))
    return phone


@pytest.fixture
def owners(owners_phone: Phone) -> Page:
    """The app on it, at the Bench."""
    return owners_phone.open()


def recorded_by(brewery: Brewery, number: str) -> list[str]:
    """Who filled a container, by the brewery's records."""
    return [entry["person"] for entry in brewery.server.entries(number, "filled")]


def seen_by_all(page: Page, state: str) -> list[str]:
    """What keeps people from reading or touching a state that no walk over the screens comes by."""
    look = look_over(page, state)
    return [*look.dark, *look.light, *look.small, *look.wide]


def test_from_the_first_link_to_the_first_fill(get_stranger: GetPhone, server: Server) -> None:
    """Nobody is here yet; whoever opens the link that the server printed is the owner."""
    server.wait_until_it_answers()
    phone = get_stranger()
    page = phone.open()
    expect(page.get_by_text("This brewery has no owner yet")).to_be_visible()
    begin(phone, link_to_begin((server.folder / "server.log").read_text()))
    assert "begin=" not in page.url

    page.get_by_role("link", name="Your first beer").tap()
    page.get_by_label("Name").fill("Oystercatcher")
    tap(page, "Enter this beer")
    said(page, "Beer Oystercatcher entered.")
    page.get_by_role("link", name="The gyle to rack").tap()
    page.get_by_label("Gyle number").fill("901")
    expect(page.get_by_label("Beer").locator("option:checked")).to_have_text("Oystercatcher")
    tap(page, "Enter this gyle")
    said(page, "Gyle 901 Oystercatcher entered.")
    rack_from(page, "901")
    type_number(page, "117")
    tap(page, "Enter & fill 117")
    said(page, "117 filled.")
    all_at_the_brewery(page)
    look_at(page, "117")
    expect(page.get_by_text(re.compile(", Ann$")).first).to_be_visible()


def test_a_second_phone_joins_by_a_link_that_works_once(
    owners: Page, get_stranger: GetPhone, brewery: Brewery
) -> None:
    """The app is open on it already. Who opens the link after that is told so."""
    add(owners, BOB)
    link = link_for(owners, "Bob")
    assert seen_by_all(owners, "a link") == []
    second = get_stranger().open()
    expect(second.get_by_text("This phone is not signed in.")).to_be_visible()
    pair(second, link, "Bob's phone")
    said(second, "Paired. Bob has this phone now.")
    assert "pair=" not in second.url
    rack_from(second, "901")
    fill(second, "117")
    all_at_the_brewery(second)
    assert recorded_by(brewery, "117") == ["Bob"]

    third = get_stranger().open()
    pair(third, link, "Another phone")
    expect(third.get_by_role("alert").filter(visible=True)).to_contain_text("another one")
    office(owners, "Phones")
    expect(owners.get_by_role("link", name=re.compile("^Bob's phone"))).to_be_visible()
    expect(owners.get_by_role("link", name=re.compile("^Another phone"))).to_have_count(0)


def test_a_tablet_goes_from_hand_to_hand_with_no_signal(
    owners: Page, owners_phone: Phone, brewery: Brewery
) -> None:
    """Each proves themselves by PIN once with a signal. Each entry says whose it is."""
    brewery.send("130", to="Lantern", days=3)
    for one in (BOB, DEE):
        add(owners, one)
        take_in_hand(owners, one)
        said(owners, f"{one.name} has this phone now.")
        sign_in(owners, "Ann")
    rack_from(owners, "901")
    fill(owners, "117")
    all_at_the_brewery(owners)
    owners_phone.lose_signal()

    take_in_hand(owners, BOB, pin="1111")
    expect(owners.get_by_role("alert").filter(visible=True)).to_have_text("That is not the PIN.")
    take_in_hand(owners, BOB)
    said(owners, "Bob has this phone now.")
    fill(owners, "118")
    on_this_phone(owners, 1)

    take_in_hand(owners, DEE)
    said(owners, "Dee has this phone now.")
    expect(owners.get_by_role("heading", level=1)).to_have_text("Out")
    go_to(owners, "Bench")
    shown(owners, "Dee is down as driver. This is for Ann and Bob.")
    expect(owners.get_by_role("group", name="Number pad")).to_have_count(0)
    assert seen_by_all(owners, "not hers") == []
    go_to(owners, "Out")
    owners.get_by_role("link", name="Came back").tap()
    type_number(owners, "130")
    tap(owners, "Take back 130")
    said(owners, "130 came back.")
    on_this_phone(owners, 2)

    owners_phone.find_signal()
    all_at_the_brewery(owners)
    assert [recorded_by(brewery, number) for number in ("117", "118")] == [["Ann"], ["Bob"]]
    assert brewery.server.entries("130", "returned")[-1]["person"] == "Dee"


def test_what_a_revoked_phone_recorded_is_the_owners_to_take_in(
    owners: Page, get_stranger: GetPhone, brewery: Brewery
) -> None:
    """It records on and is told. Taken in or put aside, nothing is lost."""
    add(owners, BOB)
    phone = get_stranger()
    page = phone.open()
    pair(page, link_for(owners, "Bob"), "Bob's phone")
    rack_from(page, "901")
    all_at_the_brewery(page)
    phone.lose_signal()
    fill(page, "117")
    fill(page, "118")

    office(owners, "Phones")
    owners.get_by_role("link", name=re.compile("^Bob's phone")).tap()
    tap(owners, "Take it out of use")
    tap(owners, "Yes, take Bob's phone out of use")
    said(owners, "Bob's phone is out of use.")
    phone.find_signal()
    expect(page.get_by_text("An owner took this phone out of use.")).to_be_visible()
    expect(kept(page)).to_have_text("2 need attention")
    assert seen_by_all(page, "revoked") == []
    fill(page, "119")
    expect(kept(page)).to_have_text("3 need attention")
    assert brewery.server.entries("117", "filled") == []

    office(owners, "Held for you")
    expect(owners.get_by_role("heading", name="Bob's phone 3")).to_be_visible()
    for does, number in [("Take in", "117"), ("Put aside", "118"), ("Take in", "119")]:
        owners.get_by_role("button", name=re.compile(f"^{does} {number}: Filled")).tap()
        said(owners, "1 entry taken in." if does == "Take in" else "1 entry put aside.")
        expect(owners.get_by_text(f"{number}: Filled")).to_be_hidden()
    shown(owners, "Nothing is held.")
    assert [recorded_by(brewery, number) for number in ("117", "118", "119")] == [
        ["Bob"],
        [],
        ["Bob"],
    ]

    page.goto(f"{phone.address}/#/office/entries")
    tap(page, "Send and fetch now")
    expect(kept(page)).to_have_text("1 needs attention")
    shown(page, "An owner has looked at it and put it aside.")


def test_a_phone_that_was_signed_out_records_on_and_sends_when_it_is_in_again(
    owners: Page, owners_phone: Phone, brewery: Brewery
) -> None:
    """Its cookie is gone, as after months in a drawer. The strip says what to do."""
    rack_from(owners, "901")
    all_at_the_brewery(owners)
    owners_phone.context.clear_cookies()
    fill(owners, "117")
    expect(owners.get_by_text("This phone is not signed in.")).to_be_visible()
    on_this_phone(owners, 1)
    owners_phone.kill()
    owners_phone.start(offline=True)
    page = owners_phone.open()
    fill(page, "118")
    on_this_phone(page, 2)
    assert seen_by_all(page, "signed out") == []
    owners_phone.find_signal()
    sign_in(page, "Ann")
    all_at_the_brewery(page)
    expect(page.get_by_text("This phone is not signed in.")).to_be_hidden()
    assert [recorded_by(brewery, number) for number in ("117", "118")] == [["Ann"], ["Ann"]]


def test_the_entries_of_a_dead_phone_are_carried_to_another_as_a_file(
    owners: Page, get_stranger: GetPhone, brewery: Brewery, tmp_path: Path
) -> None:
    """They stay their author's, and stand once though read in twice and sent by both phones."""
    add(owners, BOB)
    phone = get_stranger()
    page = phone.open()
    pair(page, link_for(owners, "Bob"), "Bob's phone")
    rack_from(page, "901")
    all_at_the_brewery(page)
    phone.lose_signal()
    fill(page, "117")
    fill(page, "118")
    kept(page).tap()
    tap(page, "Make a file of 2 entries")
    with page.expect_download() as download:
        page.get_by_role("link", name=re.compile("^Save ")).tap()
    file = tmp_path / "entries.json"
    download.value.save_as(file)
    phone.close()

    owners.goto(f"{phone.address}/#/office/entries")
    for words in ("2 entries read in.", "Nothing new. 2 entries were here already."):
        owners.get_by_label("Read a file in").set_input_files(file)
        said(owners, words)
        all_at_the_brewery(owners)
    assert [recorded_by(brewery, number) for number in ("117", "118")] == [["Bob"], ["Bob"]]

    phone.start()
    all_at_the_brewery(phone.open())
    assert [recorded_by(brewery, number) for number in ("117", "118")] == [["Bob"], ["Bob"]]
