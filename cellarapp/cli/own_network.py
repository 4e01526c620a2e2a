"""`cellarapp serve --lan`: keeps the certificate good, and says how phones get to the app."""

import logging
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from threading import Event, Lock, Thread
from typing import TextIO

import segno

from cellarapp.config import Config
from cellarapp.lan.addresses import Machine, reached_at, this_machine
from cellarapp.lan.authority import Kept, keep
from cellarapp.lan.trust import Offer, TrustPage

LOOK_EVERY_S = 60
"""For other addresses, and for the end of the certificate."""
FOLDER = "lan"

logger = logging.getLogger(__name__)


class OwnNetwork:
    """The certificate, the page to trust it by, and what to print; from `start` to `stop`."""

    def __init__(self, config: Config) -> None:
        """Raises: AuthorityUnreadable."""
        self._config = config
        self._machine = this_machine()
        self._kept = self._look(self._machine)
        self._page = TrustPage(config.host, config.trust_port, self._offer)
        self._when_changed: Callable[[], object] = lambda: None
        self._looking = Lock()
        self._stopped = Event()

    @property
    def file(self) -> Path:
        """Certificate and key, for the server."""
        return self._kept.file

    def tell(self, out: TextIO) -> None:
        """Say how phones get here; with a code to scan, where it is a terminal that is told."""
        addresses = self._addresses()
        trust = f"http://{_host(addresses[0])}:{self._config.trust_port}"
        print("cellarapp is at", *(f"  {address}" for address in addresses), sep="\n", file=out)
        print(f"\nA phone that does not know this computer yet opens {trust}", file=out)
        if out.isatty():
            segno.make(trust, micro=False).terminal(out, compact=True)
        halves = [self._kept.fingerprint[:47], self._kept.fingerprint[48:]]
        print(
            "The certificate that it gets there must have this SHA-256 fingerprint:",
            *(f"  {half}" for half in halves),
            "\nGive this computer a fixed address in your router: a phone keeps its records for "
            "the address\nat which the app was opened.  (stop with Ctrl-C)",
            sep="\n",
            file=out,
        )

    def start(self, when_changed: Callable[[], object]) -> None:
        """Serve the page, and call this whenever the certificate has become another one."""
        self._when_changed = when_changed
        self._page.start()
        Thread(target=self._keep_looking, daemon=True).start()

    def stop(self) -> None:
        self._stopped.set()
        self._page.stop()

    def look_again(self) -> None:
        """Renew what has to be: the end may be near, or the machine may have another address."""
        with self._looking:
            self._machine = this_machine()
            self._kept = self._look(self._machine)
            if self._kept.changed:
                logger.info("the certificate is renewed; the app is at %s", self._addresses())
                self._when_changed()

    def _keep_looking(self) -> None:
        while not self._stopped.wait(LOOK_EVERY_S):
            try:
                self.look_again()
            except Exception:  # the certificate there is serves on; it is tried again
                logger.exception("the certificate could not be looked after")

    def _look(self, machine: Machine) -> Kept:
        kept = keep(self._config.data / FOLDER, machine, datetime.now(UTC))
        if kept.new_authority:
            logger.info("there is a new authority; each phone has to be told once to trust it")
        return kept

    def _offer(self) -> Offer:
        """Anew each time: somebody who cannot get in any more comes to the page first."""
        self.look_again()
        return Offer(self._kept.to_install, self._kept.fingerprint, self._addresses())

    def _addresses(self) -> list[str]:
        return reached_at(self._config, self._machine)


def _host(address: str) -> str:
    """Of https://host:port."""
    return address.removeprefix("https://").rpartition(":")[0]
