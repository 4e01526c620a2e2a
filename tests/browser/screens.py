"""Every screen of the app, found by following its links, and the states that only a touch shows."""

import re
from collections.abc import Callable, Iterator

from playwright.sync_api import Page

from .demo import DemoPhone
from .doings import choose, pad, tap, tap_though_dim, type_number

PLACES = [
    "bench",
    "bench/place",
    "cellar",
    "bar",
    "out",
    "office",
    "find",
    "who",
    "sign-in",
    "begin",
    "pair",
]
ID = re.compile(r"[0-9a-f]{8}-[0-9a-f-]{27}")


def screens(demo: DemoPhone) -> Iterator[str]:
    """The names of all screens, one of each kind; each is open while it is handed out."""
    found = {shape(place): place for place in PLACES}
    done: set[str] = set()
    while new := [kind for kind in found if kind not in done]:
        for kind in new:
            demo.open(found[kind])
            done.add(kind)
            for other in linked(demo.page):
                found.setdefault(shape(other), other)
            yield kind


def shape(screen: str) -> str:
    """What kind of screen it is: a container's page is one kind, however many there are."""
    place, *rest = screen.split("/")
    if place == "c":
        return "c/*"
    if place == "office" and len(rest) == 2 and rest[1] != "new":
        return f"office/{rest[0]}/*"
    return ID.sub("*", screen)


def linked(page: Page) -> list[str]:
    """The screens that this one leads to."""
    hrefs: list[str] = page.locator("a[href^='#/']").evaluate_all(
        "(links) => links.map((link) => decodeURIComponent(link.hash.slice(2)))"
    )
    return hrefs


Doing = Callable[[Page, DemoPhone], None]


def states(demo: DemoPhone) -> Iterator[str]:
    """What a screen shows half way through something; each is shown while it is handed out."""
    for name, (screen, do) in STATES.items():
        do(demo.open(screen.format(full=demo.numbers["full"][1])), demo)
        yield f"{screen}, {name}"


def _typing(sort: str) -> Doing:
    return lambda page, demo: type_number(page, demo.numbers[sort][1])


def _typed(typed: str) -> Doing:
    return lambda page, _demo: type_number(page, typed)


def _unknown(typed: str) -> Doing:
    """What it is, is asked by a part that comes when it is needed."""

    def do(page: Page, _demo: DemoPhone) -> None:
        type_number(page, typed)
        page.get_by_label("Kind").wait_for()

    return do


def _touch(name: str) -> Doing:
    return lambda page, _demo: page.get_by_role("button", name=re.compile(name)).first.tap()


def _link(way: str) -> Doing:
    return lambda page, _demo: page.evaluate(f"location.hash = '{way}=of-no-use'")


def _spent_link(page: Page, demo: DemoPhone) -> None:
    _link("pair")(page, demo)
    tap(page, "Pair this phone")
    page.get_by_role("alert").filter(visible=True).wait_for()


def _litres(page: Page, demo: DemoPhone) -> None:
    type_number(page, demo.numbers["empty"][1])
    pad(page).get_by_role("button", name="Litres").tap()
    type_number(page, "12.5")


def _saved(page: Page, demo: DemoPhone) -> None:
    number = demo.numbers["empty"][2]
    type_number(page, number)
    tap(page, f"Fill {number}")


def _fails_inspection(page: Page, demo: DemoPhone) -> None:
    choose(page, "Inspect")
    type_number(page, demo.numbers["empty"][1])
    pad(page).get_by_role("button", name="Fail").tap()
    page.get_by_text("leaks").wait_for()


def _form_with_a_fault(page: Page, _demo: DemoPhone) -> None:
    page.get_by_text("More that can happen to it").tap()
    tap(page, "Set aside")
    page.get_by_role("button", name="Set aside", exact=True).last.tap()


def _call(page: Page, _demo: DemoPhone) -> None:
    page.get_by_role("main").get_by_role("link").first.tap()
    page.get_by_text("Note a call").tap()
    choose(page, "Another day")
    tap(page, "Keep this note")


STATES: dict[str, tuple[str, Doing]] = {
    "an empty one": ("bench", _typing("empty")),
    "a full one": ("bench", _typing("full")),
    "nobody's number": ("bench", _unknown("9999")),
    "a run": ("bench", _unknown("9990-9999")),
    "letters": ("bench", _touch("^Letters$")),
    "litres": ("bench", _litres),
    "just saved": ("bench", _saved),
    "failed inspection": ("bench", _fails_inspection),
    "where to": ("cellar", _touch("^Move:")),
    "why off": ("bar", _touch("^Take off:")),
    "a dip": ("bar", _touch("^Dip:")),
    "one that is out": ("out/back", _typing("out")),
    "nothing typed": ("out/back", lambda page, _demo: tap_though_dim(page, "Take back")),
    "a call": ("out/call", _call),
    "a digit": ("find", _typed("1")),
    "a form with a fault": ("c/{full}", _form_with_a_fault),
    "a PIN": ("who/Somebody", _typed("1234")),
    "a link for the first owner": ("begin", _link("begin")),
    "a link that works no more": ("pair", _spent_link),
    "nothing typed of somebody": ("office/people/new", _touch("^Add$")),
    "faults": ("office/beers/new", _touch("^Enter this beer$")),
    "another number": ("office/questions", _touch("was another number$")),
}
