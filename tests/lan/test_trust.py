"""The page by which a phone comes to trust the authority."""

import re
import socket
from base64 import b64encode
from collections.abc import Iterator
from hashlib import sha256
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import pytest

from cellarapp.lan.trust import Offer, TrustPage

OFFER = Offer(b"\x30 a certificate", "AB:CD:EF", ["https://192.168.1.5:8080", "https://a&b:1"])


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


@pytest.fixture
def address() -> Iterator[str]:
    port = free_port()
    page = TrustPage("127.0.0.1", port, lambda: OFFER)
    page.start()
    yield f"http://127.0.0.1:{port}"
    page.stop()


def test_page_says_how_to_trust_and_where_to_go(address: str) -> None:
    """On both kinds of phone, with what to compare."""
    with urlopen(address, timeout=20) as answer:
        text = answer.read().decode()
    for words in ("Android", "iPhone", "CA certificate", "Certificate Trust Settings", "AB:CD:EF"):
        assert words in text
    assert 'href="https://192.168.1.5:8080"' in text
    assert 'href="https://a&amp;b:1"' in text


def test_certificate_is_given_as_phones_take_it(address: str) -> None:
    """Its type makes a phone offer to install it."""
    with urlopen(f"{address}/authority.crt", timeout=20) as answer:
        assert answer.headers["Content-Type"] == "application/x-x509-ca-cert"
        assert answer.read() == OFFER.certificate


@pytest.mark.parametrize("path", ["/api/pull", "/index.html", "/../lan/authority.pem", "//x"])
def test_there_is_nothing_else(address: str, path: str) -> None:
    """What is served without encryption is nothing of the brewery's."""
    with pytest.raises(HTTPError) as answer, urlopen(address + path, timeout=20):
        pass
    answer.value.close()
    assert answer.value.code == 404


def test_nothing_can_be_sent(address: str) -> None:
    """It only reads out."""
    with pytest.raises(HTTPError) as answer, urlopen(Request(address, b"x"), timeout=20):
        pass
    answer.value.close()
    assert answer.value.code == 501


def test_page_may_load_nothing_and_its_style_is_the_one_allowed(address: str) -> None:
    """The policy names the style by its hash."""
    with urlopen(address, timeout=20) as answer:
        policy = answer.headers["Content-Security-Policy"]
        style = re.search(r"<style>(.*)</style>", answer.read().decode(), re.DOTALL)
    assert style is not None
    digest = b64encode(sha256(style[1].encode()).digest()).decode()
    assert f"default-src 'none'; style-src 'sha256-{digest}';" in policy
