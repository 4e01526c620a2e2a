"""All style sheets become one, so a class that two of them name by itself is two things at once."""

import re
from collections import Counter

from .sources import ROOT, text_of

LOOKS = ROOT / "static" / "src" / "ui"
COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
SELECTORS = re.compile(r"([^{}]+)\{")


def classes_of(text: str) -> set[str]:
    """The classes that a sheet gives their looks, wherever they stand."""
    heads = SELECTORS.findall(COMMENT.sub("", text))
    parts = {part.strip() for head in heads for part in head.split(",")}
    return {part for part in parts if re.fullmatch(r"\.[\w-]+", part)}


def test_a_class_has_its_looks_from_one_sheet() -> None:
    """One that lays out a chart must not reach into the bar."""
    sheets = [classes_of(text_of(sheet)) for sheet in LOOKS.rglob("*.css")]
    named = Counter(name for sheet in sheets for name in sheet)
    assert len(named) > 50
    assert [name for name, times in named.items() if times > 1] == []


def test_a_class_is_found_wherever_it_stands() -> None:
    """Among others, behind a comment, within a media rule; not as a part of another's."""
    found = classes_of("/* .no {} */ .one, .two { } @media print { .three { } } .one .four { }")
    assert found == {".one", ".two", ".three"}
