"""The colours that carry words stand 7:1 or better on everything that they are put on."""

import re
from itertools import product
from pathlib import Path

import pytest

SHEET = Path(__file__).parents[3] / "static" / "src" / "ui" / "style" / "colours.css"
BLOCK = re.compile(r"color-scheme: (\w+);(.*?)\}", re.DOTALL)
COLOUR = re.compile(r"--([a-z-]+): (#[0-9a-f]{6});")

BLOCKS = [(found[1], dict(COLOUR.findall(found[2]))) for found in BLOCK.finditer(SHEET.read_text())]
WORDS = ("chalk", "dust", "brass", "hop", "oxide")
GROUNDS = ("slate", "board", "raise")


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_contrast_is_reckoned_right() -> None:
    """Black on white is 21:1 by definition."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


def test_light_is_the_same_by_wish_and_by_switch() -> None:
    """The sheet holds the light list twice."""
    schemes = [scheme for scheme, _ in BLOCKS]
    assert schemes == ["dark", "light", "light"]
    assert BLOCKS[1] == BLOCKS[2]
    assert BLOCKS[0][1].keys() == BLOCKS[1][1].keys()


@pytest.mark.parametrize("colours", [BLOCKS[0][1], BLOCKS[1][1]], ids=["slate", "board"])
@pytest.mark.parametrize(("word", "ground"), list(product(WORDS, GROUNDS)))
def test_words_are_read_in_poor_light(colours: dict[str, str], word: str, ground: str) -> None:
    assert contrast(colours[word], colours[ground]) >= 7


@pytest.mark.parametrize("colours", [BLOCKS[0][1], BLOCKS[1][1]], ids=["slate", "board"])
def test_other_pairs_that_meet(colours: dict[str, str]) -> None:
    """A number over beer, the demo's banner, and the edges of what can be touched (3:1)."""
    assert contrast(colours["chalk"], colours["beer-behind"]) >= 7
    assert contrast(colours["brass"], colours["slate"]) >= 7
    assert min(contrast(colours["rim"], colours[ground]) for ground in GROUNDS) >= 3
