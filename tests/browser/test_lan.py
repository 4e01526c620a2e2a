"""A phone reaches the app over the brewery's own HTTPS, by the name of the computer."""

import shutil
import ssl
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.request import urlopen

import pytest
from playwright.sync_api import Error, Playwright
from typing_extensions import override

from cellarapp.lan.addresses import this_machine

from .phone import Phone
from .server import Server, free_port

READY = "() => navigator.serviceWorker.ready.then((one) => one.active !== null)"
CONTROLLED = "() => navigator.serviceWorker.controller?.state === 'activated'"


class LanServer(Server):
    """Serves over HTTPS, under this machine's own name."""

    def __init__(self, folder: Path, client: Path) -> None:
        self.trust_port = free_port()
        super().__init__(folder, client, "--lan", "--trust-port", str(self.trust_port))
        self.name = this_machine().names[0]
        self.address = f"https://{self.name}:{self.port}"

    def certificate(self) -> bytes:
        """The authority's, as a phone gets it."""
        address = f"http://127.0.0.1:{self.trust_port}/authority.crt"
        with urlopen(address, timeout=20) as answer:
            found: bytes = answer.read()
            return found

    @override
    def get(self, path: str) -> Any:
        context = ssl.create_default_context(cadata=self.certificate())
        with urlopen(f"https://localhost:{self.port}{path}", timeout=20, context=context) as answer:
            return answer.read()


@pytest.fixture
def lan(tmp_path: Path, client: Path) -> Iterator[LanServer]:
    server = LanServer(tmp_path / "server", client)
    server.start()
    yield server
    server.stop()


def trust(home: Path, certificate: bytes) -> None:
    """Put the authority among those that the browsers of this home trust."""
    certutil = shutil.which("certutil")
    assert certutil, "certutil is not on the path: run .ci/test, which installs it"
    store = home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    (home / "authority.crt").write_bytes(certificate)
    for options in (
        ["-N", "--empty-password"],
        ["-A", "-t", "C,,", "-n", "brewery", "-i", str(home / "authority.crt")],
    ):
        run = [certutil, "-d", f"sql:{store}", *options]
        subprocess.run(run, check=True, stdin=subprocess.DEVNULL, timeout=60)


@pytest.fixture
def phone(playwright: Playwright, tmp_path: Path, lan: LanServer) -> Iterator[Phone]:
    """A phone on the network, where the computer's name is known."""
    phone = Phone(playwright, tmp_path / "phone", lan)
    yield phone
    phone.close()
    assert phone.faults == []


def test_phone_that_trusts_the_authority_keeps_the_app_for_use_with_no_signal(
    phone: Phone, lan: LanServer, tmp_path: Path
) -> None:
    """Before that it is warned; with trust it has a secure page and a service worker."""
    named = [f"--host-resolver-rules=MAP {lan.name} 127.0.0.1"]
    home = tmp_path / "home"
    home.mkdir()
    phone.start(options=named, home=home)
    with pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"):
        phone.context.pages[0].goto(lan.address)
    phone.close()

    trust(home, lan.certificate())
    phone.start(options=named, home=home)
    page = phone.context.pages[0]
    page.goto(lan.address)
    assert page.evaluate("() => window.isSecureContext")
    assert page.evaluate(READY)
    page.wait_for_function(CONTROLLED)
    phone.lose_signal()
    page.reload()
    page.wait_for_function(CONTROLLED)
    assert page.title() != ""
    assert page.url.startswith(lan.address)
