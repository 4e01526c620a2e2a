"""Parts of addresses that name a thing. An address that cannot name one is not found."""

from werkzeug.routing import BaseConverter

from cellarapp.ledger.fields import ID_PATTERN


class IdPath(BaseConverter):
    """An id."""

    regex = ID_PATTERN


class HashPath(BaseConverter):
    """The hash of what an entry holds."""

    regex = "[0-9a-f]{64}"
