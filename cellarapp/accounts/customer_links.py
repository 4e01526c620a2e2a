"""Links to the page of a customer: whoever holds one needs no sign-in.

A link carries the customer's id and a secret, made on the phone that prints it: it works with no
network, and the ledger holds only the SHA-256 of it (LINK-1). Stopping all links of a customer is
an entry too.
"""

import hmac
import json
import re
from base64 import urlsafe_b64decode
from uuid import UUID

from cellarapp.accounts.secret import digest
from cellarapp.storage.work import reading

ID_BYTES = 16
SECRET_BYTES = 20
TOKEN = re.compile("[A-Za-z0-9_-]{48}")
"""Both together in base64url, which comes out even."""


def customer_of(token: str) -> str | None:
    """Whose page a link leads to, or None where it was never made or is stopped.

    Takes as long for a customer whose links do not fit as for one that there is not.
    """
    if TOKEN.fullmatch(token) is None:
        return None
    customer = str(UUID(bytes=urlsafe_b64decode(token)[:ID_BYTES]))
    hashed, fits = digest(token), False
    for one in _hashes(customer) or [digest("")]:
        fits |= hmac.compare_digest(one, hashed)
    return customer if fits else None


def _hashes(customer: str) -> list[str]:
    """Of the links of a customer that work."""
    key = ("customer", customer)
    with reading() as work:
        row = work.rows.load([key]).get(key)
    return [] if row is None else [link["hash"] for link in json.loads(row.doc).get("links", [])]
