"""A dip with the rod at the bar, with no signal: what is left, until when, what comes next."""

from playwright.sync_api import expect

from .brewery import Brewery, ago, gyle_id
from .doings import all_at_the_brewery, said, tap, type_number
from .phone import Phone

CASK = "117 Winter Lamp"
WEEK = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]


def on_sale(brewery: Brewery) -> None:
    """One cask on sale since yesterday, and the next one of its beer on the stillage."""
    brewery.fill("117", "118", gyle="902", at=ago(days=5))
    stillaged = [brewery.office.entry("stillaged", n, at=ago(days=3)) for n in ("117", "118")]
    vented = brewery.office.entry("vented", "117", at=ago(days=2), spile="hard")
    tapped = brewery.office.entry("tapped", "117", at=ago(hours=20))
    brewery.tell([*stillaged, vented, tapped])


def test_a_dip_leads_to_venting_the_next_one(phone: Phone, brewery: Brewery) -> None:
    """From the wet part of the rod to a soft spile in the next cask."""
    on_sale(brewery)
    page = phone.open("bar")
    expect(page.get_by_text(CASK)).to_be_visible()
    phone.lose_signal()
    tap(page, f"Dip: {CASK}")
    tap(page, "Pints instead")
    tap(page, "Wet mm instead")
    type_number(page, "300")
    expect(page.get_by_text("pints to sell above the sediment")).to_be_visible()
    expect(page.get_by_text("By a model of its size")).to_be_visible()
    tap(page, "Dip 117")
    said(page, "117 dipped:")
    expect(page.get_by_text("Would run out about")).to_be_visible()
    expect(page.get_by_text("nights counted too: it has to be off before that")).to_be_visible()
    expect(page.get_by_text("Vent the next one, 118, by")).to_be_visible()
    tap(page, "Vent 118")
    said(page, "118: soft spile in.")
    expect(page.get_by_text("The next one is 118: change to a hard spile")).to_be_visible()

    phone.find_signal()
    all_at_the_brewery(page)
    [dip] = brewery.server.entries("117", "dipped")
    assert dip["facts"]["wet_mm"] == 300
    assert 30_000 < dip["facts"]["left_ml"] < 36_000
    assert brewery.server.standing("118")["serving"]["vented"]["spile"] == "soft"

    page.goto(f"{phone.address}/#/office/figures/bar_hours")
    page.get_by_label("Monday").fill("noon to late")
    for day in WEEK[1:]:
        page.get_by_label(day).fill("00-24")
    tap(page, "Keep it")
    expect(page.get_by_text("Times such as 12-23")).to_be_visible()
    expect(page.get_by_label("Monday")).to_be_focused()
    page.get_by_label("Monday").fill("00-24")
    tap(page, "Keep it")
    said(page, "The bar: Monday to Sunday 00:00 to 24:00.")
    page.get_by_role("navigation", name="Places").get_by_role("link", name="Bar").tap()
    expect(page.get_by_text("it has to be off before that")).to_be_visible()
    expect(page.get_by_text("nights counted too")).to_have_count(0)


def test_a_tilted_cask_is_not_dipped_with_the_rod(phone: Phone, brewery: Brewery) -> None:
    """It says why, and takes litres by hand."""
    on_sale(brewery)
    page = phone.open("bar")
    tap(page, f"Stoop: {CASK}")
    said(page, "117 is tilted.")
    tap(page, f"Dip: {CASK}")
    tap(page, "Pints instead")
    tap(page, "Wet mm instead")
    type_number(page, "90")
    expect(page.get_by_role("alert").filter(visible=True)).to_contain_text("It is tilted")
    for unit in ("Wet cm", "Upright", "Weight", "Litres"):
        tap(page, f"{unit} instead")
    tap(page, "Clear")
    type_number(page, "7.5")
    tap(page, "Dip 117")
    said(page, "117 dipped: 7.5 L, 13 pints left.")
    all_at_the_brewery(page)
    standing = brewery.server.standing("117")
    assert (standing["contents"]["left_ml"], standing["queries"]) == (7_500, [])


def test_a_tilted_cask_is_weighed(phone: Phone, brewery: Brewery) -> None:
    """With no signal: by its own tare and the gravity of its gyle."""
    facts = {"kind": "firkin", "capacity_ml": 40_915, "tare_g": 9_600}
    gravity = {"present_gravity_e4": 10_100}
    brewery.tell(
        [
            brewery.office.entry("registered", "117", at=ago(days=10), **facts),
            brewery.office.entry("gyle", gyle_id("902"), at=ago(days=5), **gravity),
        ]
    )
    on_sale(brewery)
    page = phone.open("bar")
    expect(page.get_by_text(CASK)).to_be_visible()
    phone.lose_signal()
    tap(page, f"Stoop: {CASK}")
    said(page, "117 is tilted.")
    tap(page, f"Dip: {CASK}")
    for unit in ("Pints", "Wet mm", "Wet cm", "Upright", "Weight"):
        tap(page, f"{unit} instead")
    type_number(page, "30.3")
    expect(page.get_by_text("By weight, 9.6 kg of it")).to_be_visible()
    tap(page, "Dip 117")
    said(page, "117 dipped: 20.5 L")
    phone.find_signal()
    all_at_the_brewery(page)
    contents = brewery.server.standing("117")["contents"]
    assert contents["left_ml"] // 100 == 205


def test_dips_of_other_phones_tell_when_it_runs_out(phone: Phone, brewery: Brewery) -> None:
    """This phone never dipped it; a fast evening noted elsewhere counts."""
    on_sale(brewery)
    dips = [(ago(hours=9), 39_000), (ago(hours=5), 20_000)]
    brewery.tell([brewery.office.entry("dipped", "117", at=at, left_ml=ml) for at, ml in dips])
    page = phone.open("bar")
    expect(page.get_by_text("At the pace of its last dips it is empty now.")).to_be_visible()
    expect(page.get_by_text("Vent the next one, 118, at once")).to_be_visible()
