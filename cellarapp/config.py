"""Settings, read once from CELLAR_* variables and checked at start.

Owns the names of the variables and what they may hold.
"""

import os
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from ipaddress import IPv4Network, IPv6Network, ip_network
from pathlib import Path
from urllib.parse import urlsplit

from cellarapp.logs import LogForm

DATABASE_FILE = "cellarapp.sqlite"
DEMO_FILE = "demo.sqlite"
"""A made-up brewery never gets into the file of a real one."""


Network = IPv4Network | IPv6Network


class ConfigError(Exception):
    """A setting cannot be used; the message says which one and what it should be."""


@dataclass(frozen=True)
class Config:
    """What a running server needs to know."""

    data: Path
    """Folder for the database file and the copies kept beside it."""
    database_url: str
    """SQLAlchemy address of the database."""
    host: str = "127.0.0.1"
    port: int = 8080
    workers: int = 1
    """Processes that answer requests. SQLite has one writer at a time, and needs no more."""
    lan: bool = False
    """Whether phones on the brewery's own network are served, over HTTPS."""
    trust_port: int = 8081
    """Where a phone gets the authority's certificate, over plain HTTP; only with `lan`."""
    address: str = ""
    """Where the app is reached from outside, if a proxy stands before it: https://..."""
    proxies: tuple[Network, ...] = ()
    """The proxies that are believed."""
    busy_ms: int = 15_000
    """How long a write waits for another one before it gives up, ms."""
    demo: bool = False
    """Whether this is a made-up brewery, so that every screen says so."""
    backups_folder: Path | None = None
    """Folder of the backups, if it is not within `data`."""
    keep: tuple[int, int, int] = (24, 14, 8)
    """How many hourly, daily and weekly backups are kept; none of any: none are made."""
    log: LogForm = "plain"
    """How the log is written."""
    least_free_mib: int = 200
    """With less room than this on its disk the server is not ready, MiB."""
    client: Path | None = None
    """Folder of the built client; None for the one that came with the package or the checkout."""

    @property
    def backups(self) -> Path:
        """Folder of the backups."""
        return self.backups_folder or self.data / "backups"

    @property
    def database_file(self) -> Path | None:
        """The SQLite file, or None when the database is a server."""
        kept_in_file = self.database_url.startswith("sqlite:///")
        return Path(self.database_url.removeprefix("sqlite:///")) if kept_in_file else None


def read_config(environ: Mapping[str, str] | None = None) -> Config:
    """The settings of this environment, `os.environ` unless another is given.

    Raises: ConfigError naming the variable that cannot be used.
    """
    given = os.environ if environ is None else environ
    data = Path(given.get("CELLAR_DATA") or default_data(given)).expanduser()
    demo = bool(given.get("CELLAR_DEMO"))
    file = data / (DEMO_FILE if demo else DATABASE_FILE)
    backups = given.get("CELLAR_BACKUPS")
    url = database_url(given.get("CELLAR_DATABASE", ""), file)
    lan = bool(given.get("CELLAR_LAN"))
    return Config(
        data=data,
        database_url=url,
        demo=demo,
        host=given.get("CELLAR_HOST") or ("0.0.0.0" if lan else Config.host),
        lan=lan,
        trust_port=_whole(given, "CELLAR_TRUST_PORT", Config.trust_port, low=1, high=65_535),
        address=_address(given.get("CELLAR_ADDRESS", "")),
        proxies=_networks(given.get("CELLAR_PROXIES", "")),
        port=_whole(given, "CELLAR_PORT", Config.port, low=1, high=65_535),
        workers=_workers(given, url),
        busy_ms=_whole(given, "CELLAR_BUSY_MS", Config.busy_ms, low=1, high=600_000),
        backups_folder=Path(backups).expanduser() if backups else None,
        keep=(
            _whole(given, "CELLAR_KEEP_HOURLY", Config.keep[0], low=0, high=10_000),
            _whole(given, "CELLAR_KEEP_DAILY", Config.keep[1], low=0, high=10_000),
            _whole(given, "CELLAR_KEEP_WEEKLY", Config.keep[2], low=0, high=10_000),
        ),
        log=_log(given.get("CELLAR_LOG", "")),
        least_free_mib=_whole(
            given, "CELLAR_LEAST_FREE_MIB", Config.least_free_mib, low=0, high=10**9
        ),
        client=_client(given.get("CELLAR_CLIENT", "")),
    )


def default_data(environ: Mapping[str, str]) -> Path:
    """Where data goes when nothing is said: the same place on every system."""
    return Path(environ.get("HOME") or Path.home(), ".local", "share", "cellarapp")


def database_url(wanted: str, usual: Path) -> str:
    """The address of the database that CELLAR_DATABASE names: a file, an address or nothing.

    Raises: ConfigError when it is an address that this release does not know.
    """
    if "://" not in wanted:
        file = Path(wanted).expanduser() if wanted else usual
        return f"sqlite:///{file.absolute()}"
    scheme, _, rest = wanted.partition("://")
    if scheme in ("postgresql", "postgresql+psycopg"):
        return _postgresql(rest)
    if scheme != "sqlite":
        raise ConfigError(
            f"CELLAR_DATABASE begins with {scheme}://, which is not known here. "
            "Give the path of a file, or an address that begins with postgresql+psycopg://."
        )
    if not Path(wanted.partition(":///")[2]).is_absolute():
        raise ConfigError(
            "CELLAR_DATABASE must name a file by its full path; "
            "a database in memory would be lost with the process."
        )
    return wanted


def _workers(environ: Mapping[str, str], url: str) -> int:
    workers = _whole(environ, "CELLAR_WORKERS", Config.workers, low=1, high=64)
    if workers > 1 and url.startswith("sqlite"):
        raise ConfigError(
            f"CELLAR_WORKERS is {workers}; more than one process needs a PostgreSQL database, "
            "because those that write to a file do not take turns."
        )
    return workers


def _address(wanted: str) -> str:
    parts = urlsplit(wanted)
    whole = parts.scheme in ("https", "http") and parts.hostname and parts.path in ("", "/")
    if wanted and (not whole or parts.query or parts.fragment):
        raise ConfigError(
            f"CELLAR_ADDRESS is {wanted!r}; it must be what phones open, such as "
            "https://casks.example, and nothing after that."
        )
    return wanted.rstrip("/")


def _networks(wanted: str) -> tuple[Network, ...]:
    found = []
    for one in wanted.replace(",", " ").split():
        try:
            found.append(ip_network(one))
        except ValueError as fault:
            raise ConfigError(
                f"CELLAR_PROXIES names {one!r}; give addresses or networks, such as "
                "127.0.0.1 or 10.0.0.0/24, with commas between them."
            ) from fault
    return tuple(found)


def _log(wanted: str) -> LogForm:
    forms: dict[str, LogForm] = {"": Config.log, "plain": "plain", "json": "json"}
    if wanted not in forms:
        raise ConfigError(f"CELLAR_LOG is {wanted!r}; it must be plain or json.")
    return forms[wanted]


def _postgresql(rest: str) -> str:
    if find_spec("psycopg") is None:
        raise ConfigError(
            "CELLAR_DATABASE names a PostgreSQL server, and the driver for it is not installed. "
            "Install it with: pip install 'cellarapp[postgres]'"
        )
    return f"postgresql+psycopg://{rest}"


def _client(wanted: str) -> Path | None:
    if not wanted:
        return None
    folder = Path(wanted).expanduser()
    if not (folder / "index.html").is_file():
        raise ConfigError(
            f"CELLAR_CLIENT is {wanted!r}, where no index.html is. "
            "Give the folder of a built client, or leave it out."
        )
    return folder


def _whole(environ: Mapping[str, str], name: str, fallback: int, *, low: int, high: int) -> int:
    text = environ.get(name, "").strip()
    if not text:
        return fallback
    if not text.isascii() or not text.isdigit() or not low <= int(text) <= high:
        raise ConfigError(f"{name} is {text!r}; it must be a whole number from {low} to {high}.")
    return int(text)
