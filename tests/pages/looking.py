"""A page as a reader has it: its words, and what its forms would send."""

from html.parser import HTMLParser

from typing_extensions import override
from werkzeug.test import TestResponse

OURS = {"Origin": "http://localhost", "Sec-Fetch-Site": "same-origin"}
"""What a browser says of a form that is sent from a page of this site."""


class Words(HTMLParser):
    """The text of a page, and the names of its elements."""

    def __init__(self) -> None:
        super().__init__()
        self.heard: list[str] = []
        self.elements: set[str] = set()

    @override
    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.add(tag)

    @override
    def handle_data(self, data: str) -> None:
        self.heard += data.split()


def read(page: TestResponse) -> Words:
    """Read a page of HTML."""
    assert page.content_type == "text/html; charset=utf-8"
    words = Words()
    words.feed(page.text)
    return words


def words_of(page: TestResponse) -> str:
    """Its text."""
    return " ".join(read(page).heard)
