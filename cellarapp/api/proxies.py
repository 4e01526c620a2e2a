"""Believes what a proxy says of a request, if it is a proxy that the settings name.

Anybody can write X-Forwarded-For. Believed from everybody, it would let each request choose the
address by which tries are counted, and call itself secure.
"""

from collections.abc import Iterable, Sequence
from ipaddress import IPv4Network, IPv6Network, ip_address
from typing import TYPE_CHECKING

from werkzeug.middleware.proxy_fix import ProxyFix

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

SAID_BY_PROXIES = (
    "HTTP_X_FORWARDED_FOR", "HTTP_X_FORWARDED_PROTO", "HTTP_X_FORWARDED_HOST",
    "HTTP_X_FORWARDED_PORT", "HTTP_X_FORWARDED_PREFIX", "HTTP_FORWARDED",
)  # fmt: skip


class FromProxies:
    """An application behind proxies: the last of them, next to us, is asked and no other."""

    def __init__(
        self, application: "WSGIApplication", proxies: Sequence[IPv4Network | IPv6Network]
    ) -> None:
        self._application = application
        self._believing = ProxyFix(application, x_for=1, x_proto=1, x_host=1)
        self._proxies = proxies

    def __call__(
        self, environ: "WSGIEnvironment", start_response: "StartResponse"
    ) -> Iterable[bytes]:
        """Answer as the application does."""
        if self._is_proxy(environ.get("REMOTE_ADDR", "")):
            return self._believing(environ, start_response)
        for name in SAID_BY_PROXIES:
            environ.pop(name, None)
        return self._application(environ, start_response)

    def _is_proxy(self, text: str) -> bool:
        try:
            address = ip_address(text)
        except ValueError:  # not from the network at all
            return False
        return any(address in network for network in self._proxies)
