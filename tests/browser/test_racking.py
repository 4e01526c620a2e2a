"""A racking with primings and finings, from the plan to the last fill, with no signal at all."""

import re

from playwright.sync_api import Page, expect

from ..making import made_id
from .brewery import Brewery, ago, gyle_id
from .doings import (
    all_at_the_brewery,
    choose,
    on_this_phone,
    rack_from,
    said,
    tap,
    tap_though_dim,
    type_number,
)
from .phone import Phone

RECIPE = {
    "target_co2_centivols": 150,
    "priming_sugar": "sucrose",
    "priming_yield": "full",
    "syrup_g_per_l": 800,
    "limit_gravity_e4": 10_090,
    "auxiliary": "auxiliary_alginate",
    "auxiliary_ml_per_hl": 174,
    "isinglass_ml_per_hl": 1042,
}
MEASURED = {
    "volume_ml": 145_000,
    "loss_ml": 20_000,
    "present_gravity_e4": 10_100,
    "highest_temp_decidegc": 200,
}


def tell_of_doses(brewery: Brewery, **measured: int) -> None:
    """The beer of gyle 901 gets its recipe, and the gyle what was measured of it."""
    office = brewery.office
    brewery.tell(
        [
            office.entry("beer", made_id("Oystercatcher"), at=ago(days=5), **RECIPE),
            office.entry("gyle", gyle_id("901"), at=ago(hours=5), **measured),
        ]
    )


def offline_bench(phone: Phone) -> Page:
    """The gyle is chosen while there is a signal; then there is none."""
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    page.wait_for_function("() => navigator.serviceWorker.controller?.state === 'activated'")
    phone.lose_signal()
    return page


def dose(page: Page, name: str) -> int:
    """The big number of a dose."""
    cell = page.get_by_role("button", name=re.compile(f"^{name} .*how it is worked out"))
    found = re.search(r"\d+", cell.get_attribute("aria-label") or "")
    assert found, f"{name} has no number"
    return int(found[0])


def test_racking_from_plan_to_last_fill(phone: Phone, brewery: Brewery) -> None:
    """125 L to rack are three firkins; each gets its syrup and its auxiliary."""
    tell_of_doses(brewery, **MEASURED)
    page = offline_bench(phone)

    page.get_by_role("link", name="Plan").tap()
    expect(page.get_by_text("3 firkins: 122.7 L in all.")).to_be_visible()
    expect(page.get_by_text("2.3 L left over")).to_be_visible()
    tap(page, "Wish one 30 L keg more")
    expect(page.get_by_text(re.compile("2 firkins, 1 . 30 L keg"))).to_be_visible()
    tap(page, "Wish one 30 L keg less")
    expect(page.get_by_text(re.compile("Dissolve .* g of sugar and make up to"))).to_be_visible()
    page.get_by_role("link", name="To the pad").tap()

    syrup, auxiliary = dose(page, "primings"), dose(page, "auxiliary")
    assert (syrup > 0, auxiliary) == (True, 71)
    page.get_by_role("button", name=re.compile("^primings")).tap()
    panel = page.get_by_role("dialog")
    expect(panel.get_by_text("Sugar = CO2 from sugar")).to_be_visible()
    expect(panel.get_by_text("Published").first).to_be_visible()
    panel.get_by_role("button", name="Close").tap()
    expect(panel).to_have_count(0)

    for number in ("117", "118", "119"):
        type_number(page, number)
        tap(page, f"Fill {number}")
        said(page, f"{number} filled.")
    on_this_phone(page, 3)

    choose(page, "Fine")
    type_number(page, "117")
    tap_though_dim(page, "Fine 117")
    expect(page.get_by_text("no isinglass until").first).to_be_visible()

    phone.find_signal()
    all_at_the_brewery(page)
    for number in ("117", "118", "119"):
        given = brewery.server.standing(number)["contents"]["doses"]
        amounts = {one["what"]: one["amount_ml"] for one in given}
        assert amounts == {"primings": syrup, "auxiliary_alginate": auxiliary}


def test_isinglass_goes_in_once_the_interval_is_over(phone: Phone, brewery: Brewery) -> None:
    """One number and one tap."""
    tell_of_doses(brewery, **MEASURED)
    auxiliary = [{"what": "auxiliary_alginate", "amount_ml": 71}]
    facts = {"gyle": gyle_id("901"), "volume_ml": 40_915, "best_before": None}
    brewery.tell(
        [brewery.office.entry("filled", "120", at=ago(hours=4.5), doses=auxiliary, **facts)]
    )
    page = offline_bench(phone)
    choose(page, "Fine")
    type_number(page, "120")
    assert dose(page, "isinglass") == 426
    tap(page, "Fine 120")
    said(page, "120 fined.")
    phone.find_signal()
    all_at_the_brewery(page)
    last = brewery.server.standing("120")["contents"]["doses"][-1]
    assert (last["what"], last["amount_ml"]) == ("isinglass", 426)


def test_a_gyle_not_measured_says_what_is_missing(phone: Phone, brewery: Brewery) -> None:
    """The dose is no nought, and the way to enter it is one tap."""
    tell_of_doses(brewery, volume_ml=145_000)
    page = offline_bench(phone)
    missing = page.get_by_role("link", name=re.compile("For primings enter the gyle's"))
    expect(missing).to_contain_text("gravity now and warmest temperature")
    missing.tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("901")
