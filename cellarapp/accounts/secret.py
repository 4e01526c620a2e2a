"""Secrets: made at random, kept as hashes, compared in constant time."""

import hashlib
import hmac
import secrets
from base64 import b64decode, b64encode
from functools import cache

from argon2 import PasswordHasher
from argon2.exceptions import VerifyMismatchError

from cellarapp.accounts.refusal import Refusal
from cellarapp.storage.people import PinCheck

LEAST_CHARACTERS = 12
"""Of a passphrase. Long ones are easy to remember and hard to guess, whatever they are made of."""
LEAST_DIFFERENT = 5
"""Different characters in a passphrase."""
PIN_ITERATIONS = 600_000
"""Of PBKDF2 with SHA-256; what OWASP asks for (Password Storage Cheat Sheet, from memory)."""
SALT_BYTES = 16

HASHER = PasswordHasher(time_cost=2, memory_cost=19_456, parallelism=1)
"""Argon2id with 19 MiB: the least that OWASP asks for (from memory), since a brewery's server may
be small and eight people may sign in at once."""


@cache
def nobodys_hash() -> str:
    """Checked where there is no passphrase, so that it takes as long to find out."""
    return HASHER.hash(secrets.token_urlsafe(32))


def new_secret() -> str:
    """256 random bits for a cookie or a link."""
    return secrets.token_urlsafe(32)


def digest(secret: str) -> str:
    """What is kept of a secret that nobody can guess: SHA-256, hexadecimal."""
    return hashlib.sha256(secret.encode()).hexdigest()


def passphrase_hash(passphrase: str, name: str) -> str:
    """What is kept of a passphrase. Raises: Refusal when it would be guessed too soon."""
    if len(set(passphrase.casefold())) < LEAST_DIFFERENT:
        raise Refusal(
            "malformed-request",
            f"passphrase must have at least {LEAST_DIFFERENT} different characters.",
            field="passphrase",
        )
    if passphrase.casefold().strip() in (name.casefold(), name.casefold() * 2):
        raise Refusal("malformed-request", "passphrase must not be the name.", field="passphrase")
    return HASHER.hash(passphrase)


def passphrase_fits(kept: str | None, passphrase: str) -> bool:
    """Whether this is the passphrase. Takes as long when there is none."""
    try:
        HASHER.verify(kept or nobodys_hash(), passphrase)
    except VerifyMismatchError:
        return False
    return kept is not None


def pin_check(pin: str) -> PinCheck:
    """What is kept of a PIN, here and on the devices where it was given."""
    salt = secrets.token_bytes(SALT_BYTES)
    return {
        "salt": b64encode(salt).decode(),
        "iterations": PIN_ITERATIONS,
        "hash": b64encode(_pin_hash(pin, salt, PIN_ITERATIONS)).decode(),
    }


def pin_fits(kept: PinCheck | None, pin: str) -> bool:
    """Whether this is the PIN. Takes as long when there is none."""
    check = kept or {"salt": "", "iterations": PIN_ITERATIONS, "hash": ""}
    found = _pin_hash(pin, b64decode(check["salt"]), check["iterations"])
    return hmac.compare_digest(found, b64decode(check["hash"])) and kept is not None


def _pin_hash(pin: str, salt: bytes, iterations: int) -> bytes:
    return hashlib.pbkdf2_hmac("sha256", pin.encode(), salt, iterations)
