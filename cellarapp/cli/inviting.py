"""`cellarapp invite`: a link for an owner who is locked out, or for the first one."""

from datetime import UTC, datetime

from cellarapp.accounts.pairing import link_to_begin
from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.lan.addresses import reached_at


def invite(config: Config) -> int:
    """Print a link that makes an owner, or gives one a new passphrase."""
    with opened(config):
        made = link_to_begin(datetime.now(UTC))
    print("This link works once, within a day; an earlier one works no more. Whoever opens it")
    print("becomes an owner, or gives themselves a new passphrase by giving an owner's name:")
    print(f"{reached_at(config)[0]}/#begin={made.token}")
    return 0
