"""The authority and the certificate: who believes them, for what, and until when."""

import ssl
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

import pytest
from cryptography.x509 import Certificate, load_der_x509_certificate

from cellarapp.lan.addresses import Machine
from cellarapp.lan.authority import (
    AUTHORITY_LASTS,
    CERTIFICATE_LASTS,
    AuthorityUnreadable,
    Kept,
    keep,
    make_certificate,
    read_pair,
    write_pair,
)

NOW = datetime.now(UTC)
"""The other side of a handshake goes by the real clock."""
MACHINE = Machine(["cellar.local", "cellar"], [ip_address("192.168.1.5")])


def handshake(kept: Kept, name: str, *, file: Path | None = None) -> str:
    """Meet as a client that trusts the authority and nobody else; answer the protocol."""
    serving = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    serving.load_cert_chain(file or kept.file)
    asking = ssl.create_default_context(cadata=kept.to_install)
    to_server, to_client = ssl.MemoryBIO(), ssl.MemoryBIO()
    server = serving.wrap_bio(to_server, to_client, server_side=True)
    client = asking.wrap_bio(to_client, to_server, server_hostname=name)
    for side in (client, server, client, server):
        try:
            side.do_handshake()
        except ssl.SSLWantReadError:
            continue
    return client.version() or ""


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    return keep(tmp_path / "lan", MACHINE, NOW)


@pytest.mark.parametrize(
    "name", ["cellar.local", "cellar", "localhost", "192.168.1.5", "127.0.0.1", "::1"]
)
def test_whoever_trusts_the_authority_reaches_the_server_by(kept: Kept, name: str) -> None:
    """Every name and address of this machine."""
    assert handshake(kept, name) == "TLSv1.3"


def test_nobody_else_believes_it(kept: Kept) -> None:
    """A machine that was not told to."""
    stranger = kept._replace(authority=another_authority(kept))
    with pytest.raises(ssl.SSLCertVerificationError, match="certificate verify failed"):
        handshake(stranger, "cellar.local")


def another_authority(kept: Kept) -> Certificate:
    return keep(kept.file.parent.with_name("another"), MACHINE, NOW).authority


@pytest.mark.parametrize(
    ("names", "addresses"),
    [(["bank.example"], []), (["evilcellar.local"], []), (["cellar"], ["203.0.113.7"])],
)
def test_authority_cannot_vouch_for_others(
    kept: Kept, tmp_path: Path, names: list[str], addresses: Iterable[str]
) -> None:
    """Stolen, its key opens no bank: what it signs for others is believed by nobody."""
    authority = read_pair(kept.file.with_name("authority.pem"))
    assert authority is not None
    forged = make_certificate(authority, names, [ip_address(one) for one in addresses], NOW)
    write_pair(tmp_path / "forged.pem", forged)
    with pytest.raises(ssl.SSLCertVerificationError, match="permitted subtree violation"):
        handshake(kept, [*addresses, *names][0], file=tmp_path / "forged.pem")


def test_keys_are_their_owners_only(kept: Kept) -> None:
    """Folder and files, whatever the umask."""
    folder = kept.file.parent
    modes = {path.name: path.stat().st_mode & 0o777 for path in [folder, *folder.iterdir()]}
    assert modes == {"lan": 0o700, "authority.pem": 0o600, "server.pem": 0o600}


def test_what_phones_install_holds_no_key(kept: Kept) -> None:
    """The certificate alone, as it stands in the file beside the key."""
    assert b"PRIVATE" in kept.file.with_name("authority.pem").read_bytes()
    assert load_der_x509_certificate(kept.to_install) == kept.authority
    assert ssl.DER_cert_to_PEM_cert(kept.to_install).count("-----BEGIN") == 1


def later(kept: Kept, **how_long: int) -> Kept:
    return keep(kept.file.parent, MACHINE, NOW + timedelta(**how_long))


def test_certificate_is_kept_while_it_is_good(kept: Kept) -> None:
    """A start does not make another one."""
    before = kept.file.read_bytes()
    again = later(kept, days=CERTIFICATE_LASTS.days - 11)
    assert (again.changed, again.new_authority) == (False, False)
    assert kept.file.read_bytes() == before


def test_certificate_is_renewed_before_it_ends(kept: Kept) -> None:
    """By the same authority, so that phones notice nothing."""
    again = later(kept, days=CERTIFICATE_LASTS.days - 10)
    assert (again.changed, again.new_authority) == (True, False)
    assert again.fingerprint == kept.fingerprint


def test_certificate_is_renewed_when_the_machine_has_another_address(kept: Kept) -> None:
    """As after the router gave it one; also this is nothing to the phones."""
    moved = MACHINE._replace(addresses=[ip_address("192.168.1.77")])
    again = keep(kept.file.parent, moved, NOW)
    assert (again.changed, again.new_authority) == (True, False)
    assert handshake(again, "192.168.1.77") == "TLSv1.3"


def test_another_name_needs_another_authority(kept: Kept) -> None:
    """The first one may not vouch for it."""
    again = keep(kept.file.parent, MACHINE._replace(names=["barn.local", "barn"]), NOW)
    assert (again.changed, again.new_authority) == (True, True)
    assert handshake(again, "barn.local") == "TLSv1.3"


def test_authority_is_renewed_before_it_ends(kept: Kept) -> None:
    """With two months for the phones to be told."""
    assert not later(kept, days=AUTHORITY_LASTS.days - 61).new_authority
    assert later(kept, days=AUTHORITY_LASTS.days - 60).new_authority


def test_authority_that_cannot_be_read_is_told_and_left_alone(kept: Kept) -> None:
    """A new one would have to be trusted by every phone; a copy may be better."""
    file = kept.file.with_name("authority.pem")
    file.write_text("half of a key")
    with pytest.raises(AuthorityUnreadable, match=r"authority\.pem cannot be read"):
        keep(kept.file.parent, MACHINE, NOW)
    assert file.read_text() == "half of a key"
