"""The page by which a phone comes to trust the authority, over plain HTTP on a port of its own.

It comes before any trust, so it cannot be HTTPS. It serves the authority's certificate and what to
do with it, and nothing of the brewery. Somebody on the network could put another page in its place:
therefore the fingerprint, to be compared with the one at the server.
"""

from base64 import b64encode
from collections.abc import Callable
from hashlib import sha256
from html import escape
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from typing import NamedTuple

from typing_extensions import override

PATIENCE_S = 10
"""For a request that does not come to its end."""

STYLE = """
body { margin: 0 auto; max-width: 36rem; padding: 1rem; font: 1.125rem/1.5 system-ui, sans-serif;
  color: #f2efe6; background: #23282b; }
a { display: block; min-height: 48px; padding: 0.75rem 1rem; box-sizing: border-box;
  margin: 0.5rem 0; border: 2px solid; border-radius: 8px; color: #f2efe6;
  text-decoration: none; font-weight: bold; }
li { margin: 0.5rem 0; } code { overflow-wrap: anywhere; }
"""

PAGE = """<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>cellarapp: trust this brewery</title>
<style>{style}</style>
<h1>Trust this brewery</h1>
<p>cellarapp runs on a computer of the brewery, and your phone does not know it yet. Tell it once,
and the app then works on this phone, also with no signal.</p>
<a href="/authority.crt">1. Get the certificate</a>
<h2>Android</h2>
<ol>
<li>Open this page in Chrome and get the certificate; it goes to the downloads.</li>
<li>Open the phone's Settings and search there for <b>CA certificate</b>. It is under Security and
privacy, then Encryption and credentials, then Install a certificate.</li>
<li>The phone warns that somebody could watch what you do. This certificate cannot be used for that:
it is good for the brewery's computer and for private networks, and for no site on the internet.
Choose to install it all the same, and pick the file.</li>
</ol>
<h2>iPhone and iPad</h2>
<ol>
<li>Open this page in Safari, get the certificate and allow it.</li>
<li>Open Settings: <b>Profile Downloaded</b> stands at the top (or look under General, VPN and
Device Management). Install it.</li>
<li>Then go to General, About, <b>Certificate Trust Settings</b>, and switch this one on.</li>
</ol>
<p>Menus differ a little from phone to phone.</p>
<h2>Is it the right one?</h2>
<p>The phone can show the certificate's SHA-256 fingerprint. It must be the one that the brewery's
computer shows where cellarapp was started:</p>
<p><code>{fingerprint}</code></p>
<h2>Then</h2>
{links}
<p>Add it to the home screen from the browser's menu, and use it from there.</p>
</html>
"""


class Offer(NamedTuple):
    """What the page has to say and to give."""

    certificate: bytes
    """In DER."""
    fingerprint: str
    addresses: list[str]


def page(offer: Offer) -> str:
    """The page as HTML."""
    links = "\n".join(
        f'<a href="{escape(address)}">Open {escape(address)}</a>' for address in offer.addresses
    )
    return PAGE.format(style=STYLE, fingerprint=escape(offer.fingerprint), links=links)


STYLE_HASH = b64encode(sha256(STYLE.encode()).digest()).decode()
HEADERS = {
    "Content-Security-Policy": f"default-src 'none'; style-src 'sha256-{STYLE_HASH}'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
    "Connection": "close",
}


class TrustPage:
    """The page on its port, from `start` to `stop`; asks anew for what to offer each time."""

    def __init__(self, host: str, port: int, offer: Callable[[], Offer]) -> None:
        class Handler(_Handler):
            offered = staticmethod(offer)

        self._place = (host, port)
        self._handler = Handler
        self._server: ThreadingHTTPServer | None = None

    def start(self) -> None:
        self._server = ThreadingHTTPServer(self._place, self._handler)
        Thread(target=self._server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()


class _Handler(BaseHTTPRequestHandler):
    timeout = PATIENCE_S
    server_version, sys_version = "cellarapp", ""
    offered: Callable[[], Offer]

    def do_GET(self) -> None:
        offer = self.offered()
        path = self.path.partition("?")[0]
        if path == "/":
            self._send(page(offer).encode(), "text/html; charset=utf-8")
        elif path == "/authority.crt":
            self._send(offer.certificate, "application/x-x509-ca-cert")
        else:
            self._send(b"Nothing here.", "text/plain; charset=utf-8", HTTPStatus.NOT_FOUND)

    def _send(self, body: bytes, content_type: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        self.send_response(status)
        self.send_header("Content-Type", content_type)
        self.send_header("Content-Length", str(len(body)))
        for name, value in HEADERS.items():
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(body)

    @override
    def log_message(self, format: str, *args: object) -> None:
        """Who looks at the page is nobody's business."""
