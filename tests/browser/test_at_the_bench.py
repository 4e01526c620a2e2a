"""Racking: runs of numbers, numbers nobody has entered, other litres, and what is odd."""

from playwright.sync_api import Page

from ..making import made_id
from .brewery import Brewery, ago, in_days
from .doings import (
    all_at_the_brewery,
    fill,
    pad,
    said,
    shown,
    tap,
    tap_though_dim,
    type_number,
)


def test_a_run_of_numbers_is_filled_with_one_tap(bench: Page, brewery: Brewery) -> None:
    """121 to 124, and the gyle counts down by four firkins."""
    shown(bench, "2000 L left")
    type_number(bench, "121-124")
    shown(bench, "Nothing odd about any of them.")
    tap(bench, "Fill all 4")
    said(bench, "121 to 124 filled, 4 in all.")
    shown(bench, "4 firkins filled")
    shown(bench, "1836.3 L left")
    all_at_the_brewery(bench)
    assert all(brewery.server.standing(str(n))["contents"] for n in range(121, 125))
    tap(bench, "Undo all 4")
    shown(bench, "None filled yet")


def test_a_number_nobody_entered_is_registered_on_the_spot(bench: Page, brewery: Brewery) -> None:
    """What it is, then one tap for both."""
    type_number(bench, "301")
    shown(bench, "is not on record. What is it?")
    bench.get_by_label("Kind").select_option(label="Kilderkin")
    tap(bench, "Enter & fill 301")
    said(bench, "301 filled. At the brewery.")
    standing = brewery.server.standing("301")
    assert (standing["kind"], standing["contents"]["volume_ml"]) == ("kilderkin", 81_830)


def test_other_litres_than_the_nominal_ones(bench: Page, brewery: Brewery) -> None:
    """They hold for one fill only."""
    type_number(bench, "117")
    pad(bench).get_by_role("button", name="Litres").tap()
    type_number(bench, "36.5")
    tap(bench, "Set 36.5 L")
    shown(bench, "takes 36.5 L")
    tap(bench, "Fill 117")
    said(bench, "117 filled. At the brewery.")
    fill(bench, "118")
    all_at_the_brewery(bench)
    assert brewery.server.standing("117")["contents"]["volume_ml"] == 36_500
    assert brewery.server.standing("118")["contents"]["volume_ml"] == 40_915


def test_more_than_it_holds_is_refused_in_words(bench: Page, brewery: Brewery) -> None:
    """5 % over is steel and foam, more is a slip; what was typed stays to be put right."""
    type_number(bench, "117")
    pad(bench).get_by_role("button", name="Litres").tap()
    type_number(bench, "43")
    tap(bench, "Set 43 L")
    tap_though_dim(bench, "Fill 117")
    shown(bench, "43 L does not go into 117: a firkin takes 42.9 L at the very most.")
    pad(bench).get_by_role("button", name="Litres").tap()
    type_number(bench, "42.9")
    tap(bench, "Set 42.9 L")
    tap(bench, "Fill 117")
    said(bench, "117 filled. At the brewery.")
    assert brewery.server.standing("117")["contents"]["volume_ml"] == 42_900


def test_the_number_as_typed_is_meant_and_a_keg_of_its_digits_a_tap_away(
    bench: Page, brewery: Brewery
) -> None:
    """Cask 12 and keg K12: 12 is one tap to fill, K12 one more."""
    brewery.tell([brewery.office.registered("12")])
    bench.reload()
    type_number(bench, "12")
    tap(bench, "Fill 12")
    said(bench, "12 filled. At the brewery.")
    type_number(bench, "12")
    tap(bench, "or K12")
    tap(bench, "Fill K12")
    said(bench, "K12 filled. At the brewery.")


def test_what_is_odd_is_said_before_it_is_filled(bench: Page, brewery: Brewery) -> None:
    """A dirty cask, and one that is down as out: nothing is refused, all of it is said."""
    type_number(bench, "201")
    shown(bench, "Not washed: empty and dirty since")
    for _ in "201":
        tap(bench, "Delete")
    brewery.send("102", to="Lantern", days=1)
    bench.reload()
    type_number(bench, "102")
    shown(bench, "Still down as out at Lantern")
    tap(bench, "Fill 102")
    said(bench, "102 filled. At the brewery.")
    assert brewery.server.standing("102")["trip"] is None


def test_a_letter_is_typed_and_the_digits_come_back(bench: Page, brewery: Brewery) -> None:
    """K13."""
    fill(bench, "K13")
    all_at_the_brewery(bench)
    assert brewery.server.standing("K13")["contents"]["volume_ml"] == 30_000


def test_a_keg_of_a_beer_with_no_window_gets_the_brewerys_for_kegs(
    bench: Page, brewery: Brewery
) -> None:
    """SHELF-1: the container and the brewery's own figure decide, where the beer says nothing."""
    office, beer = brewery.office, made_id("Oystercatcher")
    brewery.tell(
        [
            office.entry("beer", beer, at=ago(minutes=1), best_before_days=None),
            office.entry(
                "setting", "keg_window_days", at=ago(minutes=1), value_millionths=70 * 10**6
            ),
        ]
    )
    bench.reload()
    all_at_the_brewery(bench)
    fill(bench, "K13")
    all_at_the_brewery(bench)
    assert brewery.server.standing("K13")["contents"]["best_before"] == in_days(70).isoformat()
