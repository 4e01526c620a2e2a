"""Only the proxies that are named are believed."""

from collections.abc import Iterable
from ipaddress import ip_network
from typing import TYPE_CHECKING

import pytest
from werkzeug.test import Client
from werkzeug.wrappers import Request, Response

from cellarapp.api.proxies import FromProxies
from cellarapp.config import ConfigError, read_config

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIEnvironment

SAID = {
    "X-Forwarded-For": "203.0.113.7",
    "X-Forwarded-Proto": "https",
    "X-Forwarded-Host": "casks.example",
    "X-Forwarded-Prefix": "/x",
    "Forwarded": "for=203.0.113.7",
}


def tell(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
    """What the application believes of a request."""
    asked = Request(environ)
    said = ",".join(name for name in SAID if name in asked.headers)
    body = f"{asked.remote_addr} {asked.scheme} {asked.host} {asked.root_path} {said}"
    return Response(body)(environ, start_response)


def believed(peer: str, headers: dict[str, str] = SAID) -> list[str]:
    application = FromProxies(tell, [ip_network("10.0.0.0/24"), ip_network("::1")])
    environ = {"REMOTE_ADDR": peer}
    answer = Client(application).get("/", headers=headers, environ_overrides=environ)
    return answer.text.split(" ")


@pytest.mark.parametrize("proxy", ["10.0.0.1", "10.0.0.254", "::1"])
def test_proxy_that_is_named_is_believed(proxy: str) -> None:
    """Who asked, by https, and for which name; but not where in the site we are."""
    assert believed(proxy)[:4] == ["203.0.113.7", "https", "casks.example", ""]


@pytest.mark.parametrize("peer", ["10.0.1.1", "203.0.113.9", "127.0.0.1", "", "unix:"])
def test_nobody_else_is_believed(peer: str) -> None:
    """And what they say is not even seen further on."""
    assert believed(peer) == [peer, "http", "localhost", "", ""]


def test_address_that_the_proxy_itself_saw_counts() -> None:
    """What the phone wrote before it is only what the phone says."""
    headers = SAID | {"X-Forwarded-For": "198.51.100.1, 203.0.113.7"}
    assert believed("10.0.0.1", headers)[0] == "203.0.113.7"


def test_application_believes_the_proxies_of_its_settings() -> None:
    """With commas or blanks between them."""
    config = read_config({"CELLAR_PROXIES": "127.0.0.1, 10.0.0.0/24 ::1"})
    assert [str(one) for one in config.proxies] == ["127.0.0.1/32", "10.0.0.0/24", "::1/128"]
    assert read_config({}).proxies == ()


@pytest.mark.parametrize("wrong", ["proxy", "10.0.0.1/24", "300.1.1.1", "*"])
def test_proxy_that_is_no_address_is_refused(wrong: str) -> None:
    """Everybody is no proxy."""
    with pytest.raises(ConfigError, match="CELLAR_PROXIES names"):
        read_config({"CELLAR_PROXIES": wrong})


@pytest.mark.parametrize("wrong", ["casks.example", "https://casks.example/app", "ftp://x"])
def test_address_that_phones_cannot_open_is_refused(wrong: str) -> None:
    """It goes into links and codes as it is."""
    with pytest.raises(ConfigError, match="CELLAR_ADDRESS is"):
        read_config({"CELLAR_ADDRESS": wrong})
