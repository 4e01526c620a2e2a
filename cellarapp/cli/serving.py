"""`cellarapp serve`: one process, or several, that answers requests with eight threads."""

import multiprocessing
import socket
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from granian import Granian
from granian.constants import Interfaces, SSLProtocols
from granian.log import LogLevels

from cellarapp.accounts.pairing import is_set_up, link_to_begin
from cellarapp.api.client import client_folder
from cellarapp.app import opened
from cellarapp.cli.filling import fill
from cellarapp.cli.schedule import Schedule
from cellarapp.config import Config, ConfigError
from cellarapp.lan.addresses import reached_at
from cellarapp.storage.copies import close_for_good
from cellarapp.storage.errors import StorageError

if TYPE_CHECKING:
    from cellarapp.cli.own_network import OwnNetwork

THREADS = 8
LEAVE_S = 10
"""So long a worker that is stopped may finish what it was asked.

One that is stopped while it starts, as when a new certificate and the end come together, may not
hear of it, and would be waited for without end.
"""
CONNECTIONS = 256
"""Of connections, not of requests: kept ones count too, so this is far above the threads."""


def serve(config: Config, *, demo_seed: int | None) -> int:
    """Serve until stopped.

    The database is brought up to date here, before anything listens, so that a fault is told
    plainly and once.
    """
    taken = _why_not_free(config.host, config.port, "--port")
    if taken is None and config.lan:
        taken = _why_not_free(config.host, config.trust_port, "--trust-port")
    if taken is not None:
        print(f"cellarapp: {taken}", file=sys.stderr)
        return 1
    now = datetime.now(UTC)
    with opened(config):
        begin = None if config.demo or is_set_up() else link_to_begin(now)
    network = _own_network(config) if config.lan else None
    if demo_seed is not None:
        fill(config, now=now, seed=demo_seed)
    if client_folder(config.client) is None:
        print("The client is not built; the pages will say how to build it.")
    if network is None:
        print(f"cellarapp is at {reached_at(config)[0]}  (stop with Ctrl-C)")
    else:
        network.tell(sys.stdout)
    if begin is not None:
        print("Nobody is here yet. Become the owner by opening this link, which works once:")
        print(f"{reached_at(config)[0]}/#begin={begin.token}")
    sys.stdout.flush()
    backups = Schedule(config)
    if not config.demo and config.database_file is not None:
        backups.start()
    if network is not None:
        # A worker is started anew with each certificate. Forked from a process with threads, it
        # could wait for ever for a lock that one of them held at that moment.
        multiprocessing.set_start_method("spawn")
    # The worker makes its own application, from the environment.
    server = Granian(
        "cellarapp:create_app",
        factory=True,
        address=config.host,
        port=config.port,
        interface=Interfaces.WSGI,
        workers=config.workers,
        blocking_threads=THREADS,
        backpressure=CONNECTIONS,
        workers_kill_timeout=LEAVE_S,
        websockets=False,
        log_level=LogLevels.error,
        ssl_cert=network.file if network else None,
        ssl_key=network.file if network else None,
        ssl_protocol_min=SSLProtocols.tls12,  # phones of before 2019 know nothing newer
    )
    if network is not None:
        network.start(when_changed=server.signal_handler_reload)
    try:
        server.serve()
    finally:
        backups.stop()
        if network is not None:
            network.stop()
    if config.database_file is not None:
        _close_for_good(config.database_file)
    return 0


def _close_for_good(database_file: Path) -> None:
    """Bring what is still in SQLite's log into the file, so that one file is all of it.

    It comes after the last request, when nobody has the database open any more.
    """
    try:
        close_for_good(database_file)
    except StorageError as fault:
        said = f"the database could not be closed ({fault!r}); if it is in two files, keep both."
        print(f"cellarapp: {said}", file=sys.stderr)


def _own_network(config: Config) -> "OwnNetwork":
    try:
        from cellarapp.cli.own_network import OwnNetwork  # needs the extra, and nothing else does
    except ModuleNotFoundError as fault:
        raise ConfigError(
            f"serve --lan needs {fault.name}, which is not installed. "
            "Install it with: pip install 'cellarapp[lan]'"
        ) from fault
    return OwnNetwork(config)


def _why_not_free(host: str, port: int, option: str) -> str | None:
    """Why nothing can listen there. Granian itself would share the port in silence."""
    try:
        family, kind, proto, _, address = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0]
    except socket.gaierror:
        return f"{host} is no address of this machine; choose another one with --host."
    with socket.socket(family, kind, proto) as probe:
        if sys.platform != "win32":
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(address)
        except PermissionError:
            return f"port {port} needs more rights than you have; choose another one with {option}."
        except OSError as fault:
            return (
                f"port {port} at {host} cannot be used ({fault.strerror}): perhaps cellarapp runs "
                f"already. Stop the other program, or choose another port with {option}."
            )
    return None
