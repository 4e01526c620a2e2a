"""Finings with no signal: jars are set up and read, the rate set, and a cask fined from a lot."""

import re
from typing import Any

from playwright.sync_api import Page, expect

from ..making import made_id
from .brewery import Brewery, ago, days_ago, gyle_id
from .doings import all_at_the_brewery, choose, rack_from, said, shown, tap, type_number
from .phone import Phone
from .server import Server

BEER = made_id("Oystercatcher")
OLD, NEW = made_id("lot IF1"), made_id("lot IF2")


def jars(*isinglass_pt: int) -> list[dict[str, Any]]:
    """With no auxiliary."""
    return [{"isinglass_centipt": 100 * pt, "auxiliary_centipt": 0} for pt in isinglass_pt]


def fined_brewery(brewery: Brewery) -> None:
    """Two lots of isinglass, of which the older was used last, and jars that were fined at noon."""
    note = brewery.office.entry
    dose = {"what": "isinglass", "amount_ml": 348, "lot": OLD}
    lot = {"what": "isinglass", "stored_temp_decidegc": 40}
    brewery.tell(
        [
            note("beer", BEER, at=ago(days=5), isinglass_ml_per_hl=850, auxiliary="none"),
            note("lot", OLD, at=ago(days=5), name="IF1", received_on=days_ago(30), **lot),
            note("lot", NEW, at=ago(days=5), name="IF2", received_on=days_ago(6), **lot),
            brewery.office.filled("130", gyle=gyle_id("901"), at=ago(days=2), doses=[dose]),
            note(
                "trial", made_id("trial"), at=ago(hours=5), gyle=gyle_id("901"), sample_ml=500,
                samples=jars(2, 3, 4), started_at=ago(hours=4.5), isinglass_lot=OLD,
            ),
        ]
    )  # fmt: skip


def record(server: Server, kind: str, subject: str) -> dict[str, Any]:
    """A record as the brewery has it."""
    rows = server.get("/api/snapshot/pages?after=&limit=1000")["rows"]
    [doc] = [row["doc"] for row in rows if (row["type"], row["id"]) == (kind, subject)]
    found: dict[str, Any] = doc
    return found


def score(page: Page, *scores: str) -> None:
    """One tap for each jar."""
    for n, one in enumerate(scores, start=1):
        jar = page.get_by_role("group", name=re.compile(f"^Jar {n}:"))
        jar.get_by_role("radio", name=one).tap()


def set_one_up(page: Page) -> None:
    """Two jars; the finings go in, and it may be left."""
    page.get_by_role("link", name="Finings trials of this beer").tap()
    page.get_by_role("link", name="Set a trial up").tap()
    page.get_by_label("Isinglass, pints").fill("2 3")
    page.get_by_label("Auxiliary, pints").fill("0.5")
    choose(page, "Silica")
    tap(page, "Set it up")
    shown(page, "Jar 1: 0.87 mL auxiliary, then 3.47 mL isinglass")
    shown(page, "Jar 2: 0.87 mL auxiliary, then 5.21 mL isinglass")
    tap(page, "The auxiliary is in")
    tap(page, "The isinglass is in")
    shown(page, "The finings went in 0 min ago.")


def test_a_trial_is_read_its_rate_set_and_a_cask_fined_from_a_lot(
    phone: Phone, brewery: Brewery
) -> None:
    """TRIAL-1, TRIAL-2, LIFE-17: with no signal, and at the brewery once there is one."""
    fined_brewery(brewery)
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    phone.lose_signal()

    page.get_by_role("link", name="Plan").tap()
    set_one_up(page)
    page.go_back()
    page.get_by_role("link", name=re.compile("3 jars, to be read")).tap()
    shown(page, "Nothing was read 4 to 5 h after the finings, which decides.")
    score(page, "3", "4", "5")
    page.reload()
    choose(page, "Shaken")
    score(page, "3", "4", "5")
    tap(page, "Keep these readings")
    said(page, "The readings are kept.")
    shown(page, "3 pt of isinglass and no auxiliary a barrel")
    tap(page, "Set Oystercatcher to this")
    shown(page, "These are Oystercatcher's rates now.")
    shown(page, "Isinglass lot IF1.")

    page.get_by_role("navigation", name="Places").get_by_role("link", name="Bench").tap()
    page.get_by_role("link", name="Lots: isinglass IF1").tap()
    choose(page, "IF2")
    page.get_by_role("link", name="To the pad").tap()
    expect(page.get_by_role("link", name="Lots: isinglass IF2")).to_be_visible()
    page.get_by_role("button", name=re.compile("^isinglass")).tap()
    panel = page.get_by_role("dialog", name="Isinglass")
    expect(panel).to_contain_text("The rate was set with lot IF1, and this is lot IF2")
    expect(panel).to_contain_text("500 mg/L, the highest published")
    panel.get_by_role("button", name="Close").tap()
    type_number(page, "117")
    tap(page, "Fill 117")
    said(page, "117 filled.")

    phone.find_signal()
    all_at_the_brewery(page)
    [dose] = brewery.server.standing("117")["contents"]["doses"]
    assert (dose["what"], dose["amount_ml"], dose["lot"]) == ("isinglass", 426, NEW)
    assert record(brewery.server, "beer", BEER)["fields"]["isinglass_ml_per_hl"] == 1042
    [reading] = record(brewery.server, "trial", made_id("trial"))["readings"]
    assert [jar["clarity_tenths"] for jar in reading["jars"]] == [30, 40, 50]
    assert [jar["resettled_tenths"] for jar in reading["jars"]] == [30, 40, 50]
    page.goto(f"{phone.address}/#/c/117")
    shown(page, "426 mL of isinglass IF2")
