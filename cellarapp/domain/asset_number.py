"""GRAI: the number by which the whole world may know a container, GS1 application identifier 8003.

One nought, then thirteen digits (company prefix, a number for the kind of container, check digit),
then the container's own number. Only a brewery with a company prefix of GS1 has such numbers.
Source: GS1 Barcode Syntax Dictionary, entry 8003 (N1,zero N13,csum,gcppos1 [X..16]).
"""

import re
from typing import NamedTuple
from urllib.parse import quote, unquote

from cellarapp.domain.errors import NotAnAssetNumber
from cellarapp.domain.numbers import normal_number

ASSET_TYPES = {
    "pin": 1, "firkin": 2, "ten": 3, "eleven": 4, "kilderkin": 5, "twenty_two": 6, "barrel": 7,
    "hogshead": 8, "keg_20": 21, "keg_30": 22, "keg_50": 23, "other_cask": 91, "other_keg": 92,
}  # fmt: skip
"""Our number for each kind of container. Plates last for years: one once given stays."""

PREFIX = re.compile(r"[0-9]{4,12}")
WRITTEN = re.compile(r"0[0-9]{13}[!%-?A-Z_a-z\"]{0,16}")
LINK = re.compile(r"https?://[^/?#]*(?:/[^?#]*)?/8003/([^/?#]+)/?(?:[?#].*)?", re.IGNORECASE)
PRINTED = re.compile(r"^(?:\]Q3|\]C1)?(?:8003|\(8003\))(?=0)")
BASE_DIGITS = 12


class AssetNumber(NamedTuple):
    """A GRAI taken apart. `asset_type` is its thirteen digits, company prefix first."""

    asset_type: str
    serial: str


def check_digit(digits: str) -> str:
    """GRAI-1: weights 3 and 1 in turn from the right; what is missing to the next ten.

    Source: GS1 General Specifications, 7.9.
    """
    weighted = sum(int(d) * (3 if n % 2 == 0 else 1) for n, d in enumerate(reversed(digits)))
    return str(-weighted % 10)


def asset_number(company_prefix: str, kind: str, number: str) -> str:
    """GRAI-2: a container's GRAI, without its application identifier.

    Args:
        company_prefix: 4 to 12 digits, as GS1 gave them.
        kind: a container kind.
        number: the container's number, which is the serial.

    Raises: NotAnAssetNumber when the prefix leaves no room for the kind.
    """
    reference, room = str(ASSET_TYPES[kind]), BASE_DIGITS - len(company_prefix)
    if PREFIX.fullmatch(company_prefix) is None or len(reference) > room:
        raise NotAnAssetNumber(text=company_prefix)
    base = company_prefix + reference.zfill(room)
    return f"0{base}{check_digit(base)}{normal_number(number)}"


def take_apart(text: str) -> AssetNumber:
    """GRAI-3: a GRAI as it is printed, "(8003)0061…", scanned, "80030061…", or in a link.

    Raises: NotAnAssetNumber for anything else, a wrong check digit included.
    """
    link = LINK.fullmatch(text)
    plain = PRINTED.sub("", text, count=1) if link is None else unquote(link[1])
    if WRITTEN.fullmatch(plain) is None or check_digit(plain[1:13]) != plain[13]:
        raise NotAnAssetNumber(text=text)
    return AssetNumber(plain[1:14], plain[14:])


def link_to(base: str, asset: str) -> str:
    """GRAI-4: the GRAI as a GS1 Digital Link. `base` is an address such as https://casks.example.

    Source: GS1 Digital Link Standard, URI Syntax: in the path the identifier, then the value.
    """
    return f"{base.rstrip('/')}/8003/{quote(asset, safe='')}"
