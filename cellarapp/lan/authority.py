"""The brewery's own authority, and the certificate that it gives to this machine.

Whoever has an authority's key can pose as anything the authority may vouch for. So it may vouch for
next to nothing: web servers, under this machine's own names and on private networks (RFC 5280,
4.2.1.10), through no other authority. Its key is readable by its owner only.
"""

import os
from collections.abc import Sequence
from datetime import datetime, timedelta
from ipaddress import ip_address, ip_network
from pathlib import Path
from typing import NamedTuple

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from cellarapp.config import ConfigError
from cellarapp.lan.addresses import LOOPBACK, PRIVATE, IPAddress, Machine

AUTHORITY_LASTS = timedelta(days=3650)
AUTHORITY_RENEWED = timedelta(days=60)
"""Before its end by so much: every phone has to be told to trust the next one."""
CERTIFICATE_LASTS = timedelta(days=30)
CERTIFICATE_RENEWED = timedelta(days=10)
BACKDATED = timedelta(days=1)
"""For phones whose clocks are behind."""
OWNER_ONLY = 0o600

SERVERS = x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH])


class AuthorityUnreadable(ConfigError):
    """What is kept of the authority cannot be used."""


class Pair(NamedTuple):
    """A certificate and the key that belongs to it."""

    certificate: x509.Certificate
    key: ec.EllipticCurvePrivateKey


class Kept(NamedTuple):
    """What the server needs, as it is kept on the disk."""

    authority: x509.Certificate
    file: Path
    """Certificate and key of the server in one, so that they cannot get apart."""
    changed: bool
    """Whether the certificate is a new one."""
    new_authority: bool
    """Whether the authority is a new one, which no phone trusts yet."""

    @property
    def fingerprint(self) -> str:
        """Of the authority, as phones show it: SHA-256, in pairs."""
        return self.authority.fingerprint(hashes.SHA256()).hex(":").upper()

    @property
    def to_install(self) -> bytes:
        """The authority's certificate, as phones take it."""
        return self.authority.public_bytes(serialization.Encoding.DER)


def keep(folder: Path, machine: Machine, now: datetime) -> Kept:
    """The authority and the certificate for this machine; made or renewed if need be.

    Raises: AuthorityUnreadable.
    """
    folder.mkdir(parents=True, exist_ok=True)
    folder.chmod(0o700)
    names = [*machine.names, "localhost"]
    addresses = [*machine.addresses, ip_address("127.0.0.1"), ip_address("::1")]
    authority = read_pair(folder / "authority.pem")
    new_authority = authority is None or not _may_go_on(authority.certificate, names, now)
    if authority is None or new_authority:
        authority = _make_authority(names, now)
        write_pair(folder / "authority.pem", authority)
    file = folder / "server.pem"
    server = read_pair(file)
    changed = server is None or not _still_good(
        server.certificate, authority.certificate, names, addresses, now
    )
    if changed:
        write_pair(file, make_certificate(authority, names, addresses, now))
    return Kept(authority.certificate, file, changed, new_authority)


def _make_authority(names: Sequence[str], now: datetime) -> Pair:
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"cellarapp on {names[0]}"[:64])])
    networks = [x509.IPAddress(ip_network(network)) for network in (*PRIVATE, *LOOPBACK)]
    allowed = [*(x509.DNSName(one) for one in names), *networks]
    usage = _usage(signs_certificates=True)
    certificate = (
        _builder(name, name, key, now, AUTHORITY_LASTS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(usage, critical=True)
        .add_extension(SERVERS, critical=False)
        .add_extension(x509.NameConstraints(allowed, None), critical=True)
        .sign(key, hashes.SHA256())
    )
    return Pair(certificate, key)


def make_certificate(
    authority: Pair, names: Sequence[str], addresses: Sequence[IPAddress], now: datetime
) -> Pair:
    """A server's certificate under these names and addresses, whether or not it may have them."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, names[0][:64])])
    said = [*(x509.DNSName(one) for one in names), *(x509.IPAddress(one) for one in addresses)]
    issuer = authority.certificate
    certificate = (
        _builder(name, issuer.subject, key, now, CERTIFICATE_LASTS)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_usage(signs_certificates=False), critical=True)
        .add_extension(SERVERS, critical=False)
        .add_extension(x509.SubjectAlternativeName(said), critical=False)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_public_key(authority.key.public_key()),
            critical=False,
        )
        .sign(authority.key, hashes.SHA256())
    )
    return Pair(certificate, key)


def _builder(
    subject: x509.Name,
    issuer: x509.Name,
    key: ec.EllipticCurvePrivateKey,
    now: datetime,
    lasts: timedelta,
) -> x509.CertificateBuilder:
    public = key.public_key()
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(issuer)
        .public_key(public)
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - BACKDATED)
        .not_valid_after(now + lasts)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(public), critical=False)
    )


def _usage(*, signs_certificates: bool) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=not signs_certificates,
        key_cert_sign=signs_certificates,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        crl_sign=False,
        encipher_only=False,
        decipher_only=False,
    )


def _may_go_on(authority: x509.Certificate, names: Sequence[str], now: datetime) -> bool:
    constraints = authority.extensions.get_extension_for_class(x509.NameConstraints).value
    allowed = {one.value for one in constraints.permitted_subtrees or []}
    return set(names) <= allowed and now < authority.not_valid_after_utc - AUTHORITY_RENEWED


def _still_good(
    certificate: x509.Certificate,
    authority: x509.Certificate,
    names: Sequence[str],
    addresses: Sequence[IPAddress],
    now: datetime,
) -> bool:
    """Made by this authority, for these names and addresses, and good for a while."""
    said = certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    by = certificate.extensions.get_extension_for_class(x509.AuthorityKeyIdentifier).value
    of = authority.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
    return (
        by.key_identifier == of.key_identifier
        and set(said.get_values_for_type(x509.DNSName)) == set(names)
        and set(said.get_values_for_type(x509.IPAddress)) == set(addresses)
        and certificate.not_valid_before_utc <= now
        and now < certificate.not_valid_after_utc - CERTIFICATE_RENEWED
    )


def read_pair(file: Path) -> Pair | None:
    """What is kept in a file, if it is there. Raises: AuthorityUnreadable."""
    if not file.exists():
        return None
    try:
        text = file.read_bytes()
        certificate = x509.load_pem_x509_certificate(text)
        key = serialization.load_pem_private_key(text, password=None)
    except (OSError, ValueError) as fault:
        raise AuthorityUnreadable(
            f"{file} cannot be read ({fault}). Put it back from a copy, or remove the folder "
            f"{file.parent}: then every phone has to be told to trust a new authority."
        ) from fault
    if not isinstance(key, ec.EllipticCurvePrivateKey):
        raise AuthorityUnreadable(f"{file} holds a key of another kind than ours.")
    return Pair(certificate, key)


def write_pair(file: Path, pair: Pair) -> None:
    """Keep it in a file, which only its owner can read from the first moment on."""
    text = pair.certificate.public_bytes(serialization.Encoding.PEM) + pair.key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,  # the one form that the server takes
        serialization.NoEncryption(),
    )
    part = file.with_name(f"{file.name}.part")
    part.unlink(missing_ok=True)
    with os.fdopen(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY), "wb") as out:
        out.write(text)
        out.flush()
        os.fsync(out.fileno())
    part.replace(file)
