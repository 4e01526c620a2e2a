"""Looks a screen over for what keeps people from reading, touching or hearing it."""

from dataclasses import dataclass
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, ViewportSize

from .phone import HIGH, WIDE

NARROW = 320
# So high that neither the head line nor the places lie over anything.
WHOLE: ViewportSize = {"width": WIDE, "height": 8000}
COLOURS = ["color-contrast", "color-contrast-enhanced"]
RULES = {"rules": {"target-size": {"enabled": True}, "color-contrast-enhanced": {"enabled": True}}}
# In the other theme only the colours are others.
RULES_OF_COLOUR = {"runOnly": {"type": "rule", "values": COLOURS}}

LEAST_PX = 48
SMALL_TARGETS = """
(least) => {
    const touchable = "a[href], button, input, select, textarea, summary, [role=button]";
    const small = [];
    for (const one of document.querySelectorAll(touchable)) {
        if (!one.checkVisibility() || one.closest(".unseen")) continue;
        const { width, height } = (one.closest("label") ?? one).getBoundingClientRect();
        // Half a pixel is the browser's rounding.
        if (width < least - 0.5 || height < least - 0.5) {
            small.push(`${Math.round(width)}x${Math.round(height)} ${one.outerHTML.slice(0, 120)}`);
        }
    }
    return small;
}
"""
TOO_WIDE = """
() => {
    const room = document.documentElement.clientWidth;
    const over = document.scrollingElement.scrollWidth - room;
    if (over <= 0) return [];
    return [...document.querySelectorAll("body *")]
        .filter((one) => one.getBoundingClientRect().right > room + 0.5)
        .map((one) => `${over} px: ${one.outerHTML.slice(0, 120)}`);
}
"""


@dataclass
class Look:
    """What was found on one screen."""

    screen: str
    dark: list[str]
    light: list[str]
    small: list[str]
    wide: list[str]
    headings: list[int]
    landmarks: list[str]
    title: str


def look_over(page: Page, screen: str) -> Look:
    """Look at it in both themes, at its size and at the narrowest."""
    page.set_viewport_size(WHOLE)
    dark = violations(page)
    page.emulate_media(color_scheme="light")
    light = violations(page, RULES_OF_COLOUR)
    page.emulate_media(color_scheme="dark")
    small = small_targets(page)
    page.set_viewport_size({"width": NARROW, "height": HIGH})
    wide = [*small_targets(page), *too_wide(page)]
    page.set_viewport_size({"width": WIDE, "height": HIGH})
    return Look(screen, dark, light, small, wide, headings(page), landmarks(page), page.title())


def violations(page: Page, rules: dict[str, Any] = RULES) -> list[str]:
    """What axe finds wrong, and where."""
    answer: dict[str, Any] = Axe().run(page, options=rules).response
    return [
        f"{rule['id']}: {node['html'][:160]}"
        for rule in answer["violations"]
        for node in rule["nodes"]
    ]


def small_targets(page: Page) -> list[str]:
    """What a thumb would miss."""
    found: list[str] = page.evaluate(SMALL_TARGETS, LEAST_PX)
    return found


def too_wide(page: Page) -> list[str]:
    """What makes the page scroll sideways."""
    found: list[str] = page.evaluate(TOO_WIDE)
    return found


def headings(page: Page) -> list[int]:
    """The levels of the headings in their order."""
    levels: list[int] = page.locator("h1, h2, h3, h4").evaluate_all(
        "(all) => all.filter((h) => h.checkVisibility()).map((h) => Number(h.tagName[1]))"
    )
    return levels


def landmarks(page: Page) -> list[str]:
    """The parts of the page that ears can jump to."""
    names: list[str] = page.locator(".shell > *").evaluate_all(
        "(all) => all.filter((part) => part.checkVisibility()).map((part) => part.localName)"
    )
    return names
