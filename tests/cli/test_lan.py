"""`cellarapp serve --lan` as a process of its own, reached as a phone reaches it."""

import json
import os
import signal
import socket
import ssl
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest
from typing_extensions import override

from cellarapp.cli.own_network import FOLDER, OwnNetwork
from cellarapp.config import read_config

COMMAND = [sys.executable, "-c", "import sys; from cellarapp.cli import main; sys.exit(main())"]
NO_EXTRA = (
    "import sys; sys.modules['cryptography'] = None; from cellarapp.cli import main; "
    "sys.exit(main(['serve', '--lan']))"
)
PATIENCE_S = 60


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


class Lan:
    """A server on two ports."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.port, self.trust_port = free_port(), free_port()

    @property
    def environment(self) -> dict[str, str]:
        ports = {"CELLAR_PORT": str(self.port), "CELLAR_TRUST_PORT": str(self.trust_port)}
        return {"CELLAR_DATA": str(self.folder), "CELLAR_LAN": "yes"} | ports

    @contextmanager
    def served(self) -> Iterator["subprocess.Popen[str]"]:
        process = subprocess.Popen(
            [*COMMAND, "serve"],
            env=os.environ | self.environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            start_new_session=True,
        )
        try:
            self._wait(process)
            yield process
        finally:
            process.terminate()
            try:
                process.communicate(timeout=PATIENCE_S)
            finally:
                if process.poll() is None:
                    os.killpg(process.pid, signal.SIGKILL)

    def _wait(self, process: "subprocess.Popen[str]") -> None:
        for _ in range(PATIENCE_S * 20):
            try:
                socket.create_connection(("127.0.0.1", self.port), 1).close()
                return
            except OSError:
                assert process.poll() is None, process.communicate()[0]
                try:
                    process.wait(timeout=0.05)
                except subprocess.TimeoutExpired:
                    continue

    def certificate(self) -> bytes:
        """The authority's, as a phone gets it."""
        address = f"http://127.0.0.1:{self.trust_port}/authority.crt"
        with urlopen(address, timeout=PATIENCE_S) as answer:
            found: bytes = answer.read()
            return found

    def health(self, context: ssl.SSLContext | None = None) -> str:
        address = f"https://localhost:{self.port}/api/health"
        with urlopen(address, timeout=PATIENCE_S, context=context) as answer:
            return str(json.load(answer)["status"])

    def serial(self, context: ssl.SSLContext) -> str:
        """Of the certificate that the server shows now; none while one worker follows another."""
        try:
            with (
                socket.create_connection(("127.0.0.1", self.port), PATIENCE_S) as line,
                context.wrap_socket(line, server_hostname="localhost") as secure,
            ):
                shown = secure.getpeercert()
        except (ConnectionError, ssl.SSLError):
            return ""
        assert shown is not None
        return str(shown["serialNumber"])


@pytest.fixture
def lan(tmp_path: Path) -> Lan:
    return Lan(tmp_path)


def test_server_is_believed_by_whoever_got_its_certificate_and_nobody_else(lan: Lan) -> None:
    """It says its addresses, and the fingerprint to compare."""
    with lan.served() as process:
        with pytest.raises(URLError, match="certificate verify failed"):
            lan.health()
        assert lan.health(ssl.create_default_context(cadata=lan.certificate())) == "ok"
        process.terminate()
        said = process.communicate(timeout=PATIENCE_S)[0]
        assert process.returncode == 0
    assert f":{lan.port}" in said
    assert "SHA-256 fingerprint" in said
    kept = sorted(path.name for path in (lan.folder / FOLDER).iterdir())
    assert kept == ["authority.pem", "server.pem"]


def test_renewed_certificate_is_shown_without_a_stop(lan: Lan) -> None:
    """A server that runs for months outlives its certificates; a look at the page makes it look."""
    with lan.served() as process:
        context = ssl.create_default_context(cadata=lan.certificate())
        before = lan.serial(context)
        assert before
        (lan.folder / FOLDER / "server.pem").unlink()
        lan.certificate()
        while lan.serial(context) in ("", before):
            assert process.poll() is None
        assert lan.health(context) == "ok"


class Terminal(StringIO):
    @override
    def isatty(self) -> bool:
        return True


def test_code_to_scan_is_drawn_in_a_terminal_only(lan: Lan) -> None:
    """In a log it would be a page of rubbish."""
    network = OwnNetwork(read_config(lan.environment))
    terminal, log = Terminal(), StringIO()
    network.tell(terminal)
    network.tell(log)
    assert "█" in terminal.getvalue()
    assert "█" not in log.getvalue()
    assert f":{lan.trust_port}" in log.getvalue()


def test_change_of_the_certificate_is_noticed(lan: Lan) -> None:
    """And that there was none, too: the server is not made to begin anew every minute."""
    network, changes = OwnNetwork(read_config(lan.environment)), []
    network.start(when_changed=lambda: changes.append("changed"))
    try:
        network.look_again()
        assert changes == []
        network.file.unlink()
        network.look_again()
        network.look_again()
    finally:
        network.stop()
    assert changes == ["changed"]


def test_missing_extra_is_told_with_how_to_install_it(lan: Lan) -> None:
    """In a sentence, before anything listens."""
    run = [sys.executable, "-c", NO_EXTRA]
    done = subprocess.run(run, env=os.environ | lan.environment, capture_output=True, text=True)
    assert done.returncode == 2
    assert "serve --lan needs cryptography, which is not installed" in done.stderr
    assert "pip install 'cellarapp[lan]'" in done.stderr
    assert "Traceback" not in done.stderr


def test_authority_that_cannot_be_read_stops_the_start(lan: Lan) -> None:
    """With what to do about it."""
    (lan.folder / FOLDER).mkdir()
    (lan.folder / FOLDER / "authority.pem").write_text("half of a key")
    run = [*COMMAND, "serve"]
    done = subprocess.run(run, env=os.environ | lan.environment, capture_output=True, text=True)
    assert done.returncode == 2
    assert "authority.pem cannot be read" in done.stderr
    assert "Traceback" not in done.stderr
