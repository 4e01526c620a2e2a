"""Returned containers go over the same pad: washed, looked into, set aside."""

from playwright.sync_api import expect

from .brewery import Brewery
from .doings import all_at_the_brewery, choose, pad, said, tap, type_number
from .phone import Phone


def test_a_returned_cask_is_washed_inspected_or_set_aside(phone: Phone, brewery: Brewery) -> None:
    """With no gyle chosen: none is needed."""
    page = phone.open()
    all_at_the_brewery(page)
    choose(page, "Wash")
    type_number(page, "201-203")
    tap(page, "Wash all 3")
    said(page, "201 to 203 washed, 3 in all.")

    choose(page, "Inspect")
    type_number(page, "201")
    tap(page, "Pass 201")
    said(page, "201 inspected, passed.")
    type_number(page, "202")
    pad(page).get_by_role("button", name="Fail").tap()
    expect(page.get_by_text("Set 202 aside. Why?")).to_be_visible()
    tap(page, "keystone bush worn")
    said(page, "202 set aside: keystone bush worn.")
    type_number(page, "203")
    pad(page).get_by_role("button", name="Fail").tap()
    page.get_by_label("Another reason").fill("hoop loose")
    tap(page, "Set aside")
    said(page, "203 set aside: hoop loose.")

    all_at_the_brewery(page)
    states = {n: brewery.server.standing(n)["clean"]["state"] for n in ["201", "202", "203"]}
    assert states == {"201": "passed", "202": "failed", "203": "failed"}
    assert brewery.server.entries("203", "inspected")[0]["facts"]["why"] == "hoop loose"
