"""Every screen can be read in poor light, touched with wet hands, and heard."""

from collections.abc import Callable

import pytest
from playwright.sync_api import ViewportSize

from .demo import DemoPhone
from .looking import (
    RULES,
    RULES_OF_COLOUR,
    Look,
    look_over,
    small_targets,
    too_wide,
    violations,
)
from .phone import HIGH, WIDE
from .screens import screens, states

SMALLEST: ViewportSize = {"width": 320, "height": 640}
AMONG_THEM = ["bench", "bench/done", "c/*", "out/back", "office/beers/*", "office/unregistered"]


@pytest.fixture(scope="session")
def looks(demo: DemoPhone) -> list[Look]:
    """Every screen of the demo, and every state of it, looked over once."""
    return [look_over(demo.page, name) for shown in (screens(demo), states(demo)) for name in shown]


def faults(looks: list[Look], of: Callable[[Look], list[str]]) -> dict[str, list[str]]:
    """What was found, by screen."""
    return {look.screen: of(look) for look in looks if of(look)}


def test_the_walk_has_seen_every_screen(looks: list[Look]) -> None:
    """A search that goes nowhere finds nothing."""
    names = [look.screen for look in looks]
    assert set(AMONG_THEM) <= set(names)
    assert len(names) > 40


def test_nothing_is_wrong_on_slate(looks: list[Look]) -> None:
    """By axe, with 7:1 for text and the size of targets."""
    assert faults(looks, lambda look: look.dark) == {}


def test_nothing_is_wrong_on_chalk(looks: list[Look]) -> None:
    """The colours of the light theme."""
    assert faults(looks, lambda look: look.light) == {}


def test_everything_to_touch_is_48_px(looks: list[Look]) -> None:
    """Each way, for a wet thumb."""
    assert faults(looks, lambda look: look.small) == {}


def test_no_screen_scrolls_sideways_at_320_px(looks: list[Look]) -> None:
    """And what is to be touched stays as large."""
    assert faults(looks, lambda look: look.wide) == {}


def test_with_letters_twice_as_large_no_place_scrolls_sideways(demo: DemoPhone) -> None:
    """Text at 200 % (WCAG 2.2, success criterion 1.4.4), on a usual phone and on the smallest."""
    for place in ("bench", "cellar", "bar", "out", "office"):
        page = demo.open(place)
        page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
        assert too_wide(page) == [], place
        page.set_viewport_size(SMALLEST)
        assert too_wide(page) == [], f"{place} at 320 px"
        page.set_viewport_size({"width": WIDE, "height": HIGH})


def test_with_letters_twice_as_large_the_pad_is_whole_on_the_smallest_phone(
    demo: DemoPhone,
) -> None:
    """Its lowest keys stand above the places, at 200 % and with nothing scrolled."""
    for place in ("bench", "out/back"):
        page = demo.open(place)
        page.set_viewport_size(SMALLEST)
        page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
        keys = page.get_by_role("group", name="Number pad").get_by_role("button").all()
        boxes = [key.bounding_box() for key in keys]
        places = page.get_by_role("navigation").bounding_box()
        assert len(boxes) > 12
        assert places is not None
        assert all(box and box["y"] + box["height"] <= places["y"] for box in boxes), place
        assert small_targets(page) == [], place
        page.set_viewport_size({"width": WIDE, "height": HIGH})


def test_headings_and_parts_tell_ears_where_they_are(looks: list[Look]) -> None:
    """One first heading, no level left out, a head line, a main part and the places."""
    for look in looks:
        assert look.headings[0] == 1, look.screen
        assert look.headings.count(1) == 1, look.screen
        steps = zip(look.headings, look.headings[1:], strict=False)
        assert all(after - before <= 1 for before, after in steps), look.screen
        assert {"header", "main", "nav"} <= set(look.landmarks), look.screen
        assert look.title.endswith("cellarapp"), look.screen


def test_a_planted_fault_is_found(demo: DemoPhone) -> None:
    """The searches above can fail."""
    page = demo.phone.context.new_page()
    page.set_content(
        """<html lang="en"><title>x</title><main><h1>x</h1>
        <p style="color: #666; background: #fff">grey</p>
        <button style="width: 40px; height: 60px">x</button>
        <div style="width: 3000px">x</div></main></html>"""
    )
    for rules in (RULES, RULES_OF_COLOUR):
        found = [fault.split(":")[0] for fault in violations(page, rules)]
        assert found == ["color-contrast-enhanced"]
    assert len(small_targets(page)) == 1
    assert too_wide(page) != []
    page.close()
