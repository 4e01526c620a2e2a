"""Figures, cautions and ranges: each with its source, each used, and none in the code instead."""

import ast
import re
from pathlib import Path
from typing import Any

import pytest

from cellarapp.domain.cautions import CAUTIONS
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import FIGURES, setting, setting_list
from cellarapp.domain.inputs import RANGES

ROOT = Path(__file__).parents[2]
KINDS = {"published", "common practice", "from memory"}
SETTABLE = {name: known for name, known in FIGURES.items() if "low" in known}
SETTINGS = {name: known for name, known in SETTABLE.items() if "least" not in known}
LISTS = {name: known for name, known in SETTABLE.items() if "least" in known}
NO_SETTINGS = {
    "plato_curve": "four numbers of one fit that belong together, which nobody measures",
    "model_cask_mm": "who measures a cask enters it with that cask",
}
"""What is not published and no setting either, and why; their remarks tell the brewer so."""


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_says_what_it_is_and_where_it_comes_from(name: str) -> None:
    """By a name of its own. What is published names its source; what is not says why it is so."""
    known = FIGURES[name]
    assert known["kind"] in KINDS
    assert known["unit"]
    assert [known["name"] == other["name"] for other in FIGURES.values()].count(True) == 1
    if known["kind"] == "published":
        assert known["source"]
    else:
        assert known["remark"]


@pytest.mark.parametrize("name", FIGURES)
def test_what_is_not_published_is_a_setting_of_the_brewery(name: str) -> None:
    """But for the few that are named with their reason, which their remark gives too."""
    known = FIGURES[name]
    if name in NO_SETTINGS:
        assert "low" not in known
        assert "No setting: " in known["remark"]
    elif known["kind"] != "published":
        assert "low" in known
        assert "high" in known


def test_a_figure_that_nobody_may_set_is_one_of_ours() -> None:
    """An exception that is none any more is taken off the list."""
    assert [name for name in NO_SETTINGS if FIGURES[name]["kind"] == "published"] == []


@pytest.mark.parametrize("name", LISTS)
def test_a_list_lies_within_its_own_range(name: str) -> None:
    """By the rule that a brewery's own list is held to."""
    assert setting_list(name, {name: FIGURES[name]["value"]}) == setting_list(name, None)


def wrong_lists(name: str) -> list[object]:
    """No list, too few, too many, beyond the range, no numbers, and falling."""
    known = FIGURES[name]
    low, high, least = known["low"], known["high"], known["least"]
    falling = [[high, *[low] * (least - 1)]] if least > 1 else [[high, low]]
    fits = [low] * max(0, least - 1)
    return [
        "12", 12, True, {}, [low] * (least - 1) if least else 3, [low] * (known["most"] + 1),
        *falling, *([*fits, one] for one in ("12", True, float("nan"), high + 1)),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "own"), [(name, own) for name in LISTS for own in wrong_lists(name)]
)
def test_a_list_that_cannot_be_is_refused(name: str, own: object) -> None:
    """In its count, its range and its order."""
    with pytest.raises(OutOfRange) as refused:
        setting_list(name, {name: own})
    assert refused.value.facts["field"] == name


@pytest.mark.parametrize("name", SETTINGS)
def test_a_setting_lies_within_its_own_range(name: str) -> None:
    known = SETTINGS[name]
    assert known["low"] <= known["value"] <= known["high"]


@pytest.mark.parametrize("own", ["12", True, float("nan"), float("inf"), 1e12, -1e12])
@pytest.mark.parametrize("name", SETTINGS)
def test_a_setting_beyond_its_range_is_refused(name: str, own: object) -> None:
    """With the figure's own range and unit."""
    with pytest.raises(OutOfRange) as refused:
        setting(name, {name: own})
    assert refused.value.facts["field"] == name
    assert refused.value.facts["low"] == SETTINGS[name]["low"]


def test_a_brewery_that_sets_nothing_has_the_figure() -> None:
    assert setting("resettles_most", None) == FIGURES["resettles_most"]["value"]
    assert setting("resettles_most", {"resettles_most": None}) == setting("resettles_most", {})
    assert setting("resettles_most", {"resettles_most": 5}) == 5


def code() -> str:
    """All that could use a figure."""
    files = [*(ROOT / "cellarapp").rglob("*.py"), *(ROOT / "static/src").rglob("*.ts*")]
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


def test_every_range_and_caution_is_used() -> None:
    """What nobody asks for misleads whoever reads the file."""
    text = code()
    assert [name for name in [*RANGES, *CAUTIONS] if not re.search(rf"\b{name}\b", text)] == []


def test_every_caution_has_words() -> None:
    assert [name for name, caution in CAUTIONS.items() if not caution["words"].endswith(".")] == []


# Digits to round to, tens, and the minutes of an hour: mathematics and units, not the trade.
PLAIN = {*range(11), 60, *(10**n for n in range(2, 7))}
# How long a list may be, or how large a number can be believed, is no figure of the trade.
BOUNDS = re.compile(r"MOST_|LARGEST_")
# Exact by definition.
UNITS = "units.py"


def constants_in(source: str) -> list[Any]:
    """Numbers in a file that are neither plain, nor bounds on what is asked."""
    tree = ast.parse(source)
    bounds = {
        id(part)
        for node in tree.body
        if isinstance(node, ast.Assign)
        and isinstance(node.targets[0], ast.Name)
        and BOUNDS.match(node.targets[0].id)
        for part in ast.walk(node)
    }
    return [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and node.value not in PLAIN
        and id(node) not in bounds
    ]


TEXT = re.compile(r'"[^"\n]*"|`[^`]*`|/\*.*?\*/|//[^\n]*', re.DOTALL)
REGULAR_EXPRESSION = re.compile(r"(?<=[=(:,] )/[^/\n ][^/\n]*/[a-z]*|(?<=\()/[^/\n ][^/\n]*/[a-z]*")
NUMBER = re.compile(r"(?<![\w.])((?:\d[\d_]*\.?\d*|\.\d+)(?:e[-+]?\d+)?)n?(?![\w.])")


def worked_within(text: re.Match[str]) -> str:
    """Of a text nothing but what is worked out within it."""
    parts = re.findall(r"\$\{([^}]*)\}", text[0]) if text[0][0] == "`" else []
    return " ".join(TEXT.sub("", part) for part in parts)


def constants_in_typescript(source: str) -> list[float]:
    """The same of a file of the phone's rules."""
    lines = TEXT.sub(worked_within, REGULAR_EXPRESSION.sub("", source)).splitlines()
    asked = [line for line in lines if not re.match(r"const (MOST_|LARGEST_)", line)]
    found = [float(one.replace("_", "")) for line in asked for one in NUMBER.findall(line)]
    # Bits of a hexadecimal digit and of a word, in the racking plan.
    return [number for number in found if number not in PLAIN | {16, 31}]


FOLDERS = ["bench", "cellar", "fleet"]
PHONE_RULES = [
    path
    for folder in FOLDERS
    for path in sorted((ROOT / "static/src/domain" / folder).glob("*.ts"))
]


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_figure_of_the_trade_stands_in_the_code(folder: str) -> None:
    """It would have no source, and no brewery could set it."""
    files = [*(ROOT / "cellarapp/domain" / folder).glob("*.py")]
    assert files
    found = {
        path.name: constants_in(path.read_text(encoding="utf-8"))
        for path in files
        if path.name != UNITS
    }
    assert {name: numbers for name, numbers in found.items() if numbers} == {}


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_figure_of_the_trade_stands_in_the_phones_code(folder: str) -> None:
    files = [*(ROOT / "static/src/domain" / folder).glob("*.ts")]
    assert files
    found = {
        path.name: constants_in_typescript(path.read_text(encoding="utf-8"))
        for path in files
        if path.stem != Path(UNITS).stem
    }
    assert {name: numbers for name, numbers in found.items() if numbers} == {}


@pytest.mark.parametrize(
    "planted", ["0.81", "2.0665", "3.0378", "1e-3", "568.26125", "273", "40_915"]
)
def test_a_planted_constant_is_found(planted: str) -> None:
    """The two searches above can fail."""
    assert constants_in(f"MOST_ROWS = 200\nx = y * {planted}\n") == [float(planted)]
    line = f'const MOST_ROWS = 200;\nconst x = y * {planted}; // "9.9"\n'
    assert constants_in_typescript(line) == [float(planted)]


@pytest.mark.parametrize("planted", ["0.81", ".81"])
@pytest.mark.parametrize("line", ["const x = y * {};", "const x = `${{y * {}}} L`;"])
@pytest.mark.parametrize("path", PHONE_RULES, ids=lambda path: path.stem)
def test_a_constant_planted_anywhere_in_the_phones_code_is_found(
    path: Path, line: str, planted: str
) -> None:
    """Between any two parts of any file: no text, comment or pattern before it hides it."""
    lines = path.read_text(encoding="utf-8").splitlines()
    ends = [n for n, text in enumerate(lines, start=1) if text in ("}", "};")]
    before = constants_in_typescript("\n".join(lines))
    for at in [0, *ends, len(lines)]:
        source = "\n".join([*lines[:at], line.format(planted), *lines[at:]])
        found = constants_in_typescript(source)
        assert len(found) == len(before) + 1, at
        assert float(planted) in found
