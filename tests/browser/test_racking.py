"""A racking with primings and finings, from the plan to the last fill, with no signal at all."""

import re

from playwright.sync_api import Page, expect

from ..making import made_id
from .brewery import Brewery, ago, gyle_id, place_id
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
    "keg_co2_centivols": 240,
}
MEASURED = {
    "volume_ml": 145_000,
    "loss_ml": 20_000,
    "original_gravity_e4": 10_420,
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


def plan_it(page: Page) -> None:
    """What to fill, what goes into each, and what to expect of it."""
    page.get_by_role("link", name="Plan").tap()
    expect(page.get_by_text("3 firkins: 122.7 L in all.")).to_be_visible()
    expect(page.get_by_text("2.3 L left over: short of a pin")).to_be_visible()
    tap(page, "Wish one 30 L keg more")
    expect(page.get_by_text(re.compile("1 firkin, 2 . 30 L keg, 1 pin"))).to_be_visible()
    # The published chart: 2.4 volumes at 4 °C.
    expect(page.get_by_text("Carbonate 30 L keg")).to_be_visible()
    tap(page, "Wish one 30 L keg less")
    batch = re.compile(r"Dissolve \d+ g of sucrose and make up to 500 mL .* are left over")
    expect(page.get_by_text(batch)).to_be_visible()
    expect(page.get_by_text("more from sugar")).to_contain_text("4.2 % on the label is within")
    expect(page.get_by_text(re.compile("Closed: .* bar on a dray at 30"))).to_be_visible()
    tap(page, "Why: Strength")
    panel = page.get_by_role("dialog")
    expect(panel.get_by_text("Expected = thinned + rise")).to_be_visible()
    panel.get_by_role("button", name="Close").tap()
    page.get_by_role("link", name="To the pad").tap()


def give_instead(page: Page, typed: str, worked_out: int) -> None:
    """Behind the dose is how it was worked out, and what is given instead."""
    page.get_by_role("button", name=re.compile("^primings")).tap()
    panel = page.get_by_role("dialog")
    expect(panel.get_by_text("Sugar = CO2 from sugar")).to_be_visible()
    expect(panel.get_by_text("Published").first).to_be_visible()
    expect(panel.get_by_text(f"Worked out: {worked_out} mL.")).to_be_visible()
    amount = panel.get_by_label(re.compile("^Into the firkin"))
    amount.fill("2000")
    expect(panel.get_by_text("That reaches the pressure").first).to_be_visible()
    amount.fill(typed)
    panel.get_by_role("button", name="Close").tap()
    expect(panel).to_have_count(0)
    expect(page.get_by_text(f"not {worked_out}")).to_be_visible()


def test_racking_from_plan_to_last_fill(phone: Phone, brewery: Brewery) -> None:
    """125 L to rack; each container gets its own doses, or what was really given of them."""
    tell_of_doses(brewery, **MEASURED)
    pin = {"kind": "pin", "capacity_ml": 20_457}
    office = brewery.office
    brewery.tell(
        [
            office.registered("141", at=ago(days=50), **pin),
            office.entry("washed", "141", at=ago(days=40)),
        ]
    )
    page = offline_bench(phone)
    plan_it(page)

    type_number(page, "117")
    expect(page.get_by_role("link", name="Then to Cold room")).to_be_visible()
    syrup, auxiliary = dose(page, "primings"), dose(page, "auxiliary")
    assert (syrup > 12, auxiliary) == (True, 71)
    give_instead(page, "12", syrup)
    tap(page, "Fill 117")
    said(page, "117 filled.")

    type_number(page, "11")
    old, page = page, phone.open_in_new_tab()
    old.close()
    type_number(page, "8")
    assert dose(page, "primings") == syrup
    tap(page, "Fill 118")
    said(page, "118 filled.")

    type_number(page, "140-141")
    half = round(syrup / 2)
    both = page.get_by_role(
        "button", name=f"primings {syrup} mL in a firkin, {half} mL in a pin: how it is worked out"
    )
    expect(both).to_be_visible()
    tap(page, "Fill all 2")
    said(page, "140 and 141 filled.")
    on_this_phone(page, 4)

    type_number(page, "K12")
    pressure = page.get_by_role("button", name=re.compile("^Pressure"))
    expect(pressure).to_contain_text("2.4 vol at 4 °C")
    for _ in "K12":
        tap(page, "Delete")

    choose(page, "Fine")
    page.keyboard.type("117")  # as a scanner does, with the job still in focus
    tap_though_dim(page, "Fine 117")
    expect(page.get_by_text("no isinglass until").first).to_be_visible()

    phone.find_signal()
    all_at_the_brewery(page)
    given = {"117": (12, 71), "118": (syrup, 71), "140": (syrup, 71), "141": (half, 36)}
    for number, amounts in given.items():
        standing = brewery.server.standing(number)
        doses = {one["what"]: one["amount_ml"] for one in standing["contents"]["doses"]}
        assert doses == dict(zip(("primings", "auxiliary_alginate"), amounts, strict=True))
        assert standing["place"]["at"] == place_id("Cold room")


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
    """The dose is no nought; the way to enter it is one tap, and leads back to the bench."""
    tell_of_doses(brewery, volume_ml=145_000)
    page = offline_bench(phone)
    missing = page.get_by_role("link", name=re.compile("For primings enter the gyle's"))
    expect(missing).to_contain_text("gravity now and warmest temperature")
    missing.tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("901")
    page.get_by_label("Gravity now").fill("1010")
    page.get_by_label("Warmest since fermentation ended").fill("20")
    tap(page, "Keep the changes")
    expect(page.get_by_role("heading", level=1)).to_have_text("Bench")
    expect(missing).to_have_count(0)
