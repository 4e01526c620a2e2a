"""GRAI-1 to GRAI-4: the number by which the whole world may know a container."""

import pytest
from biip.checksums import gs1_standard_check_digit
from biip.gs1_digital_link_uris import GS1DigitalLinkURI
from biip.gs1_messages import GS1Message
from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.asset_number import (
    ASSET_TYPES,
    asset_number,
    check_digit,
    link_to,
    take_apart,
)
from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.errors import NotAnAssetNumber

kinds = st.sampled_from(sorted(CONTAINER_KINDS))
prefixes = st.from_regex(r"952[0-9]{1,7}", fullmatch=True)
"""GS1's own examples use 952; nobody's containers carry it."""
numbers = st.from_regex(r"[A-Z]{0,3}[0-9]{1,5}", fullmatch=True)


@pytest.mark.parametrize(
    ("digits", "check"),
    [
        ("629104150021", "3"),  # GS1 Hong Kong, check digit calculator
        ("950110153100", "0"),  # GS1 General Specifications 7.9.1, as biip cites it
        ("061414112345", "2"),  # EPC Tag Data Standard, GRAI example
    ],
)
def test_check_digit_as_published(digits: str, check: str) -> None:
    assert check_digit(digits) == check


@given(digits=st.from_regex(r"[0-9]{12}", fullmatch=True))
def test_check_digit_as_another_library_works_it_out(digits: str) -> None:
    """Outside reference: biip."""
    assert check_digit(digits) == str(gs1_standard_check_digit(digits))


def test_every_kind_has_a_number_of_its_own() -> None:
    assert ASSET_TYPES.keys() == CONTAINER_KINDS.keys()
    assert len(set(ASSET_TYPES.values())) == len(ASSET_TYPES)


def test_a_firkin_of_the_demonstration_prefix() -> None:
    """Worked by hand: 952114100002, weights from the right 3,1: 6+0+0+0+0+1+12+1+3+2+15+9 = 49."""
    assert asset_number("9521141", "firkin", "f 117") == "09521141000021F117"


@given(prefix=prefixes, kind=kinds, number=numbers)
def test_what_is_made_is_read_again(prefix: str, kind: str, number: str) -> None:
    """By us, and as GS1 says by another library, as an element string and as a link."""
    asset = asset_number(prefix, kind, number)
    link = link_to("https://casks.example/", asset)
    for written in (asset, f"(8003){asset}", f"8003{asset}", link):
        assert take_apart(written) == (asset[1:14], number)
    [element] = GS1Message.parse(f"8003{asset}").element_strings
    assert (element.ai.ai, element.value) == ("8003", asset)
    [element] = GS1DigitalLinkURI.parse(link).element_strings
    assert (element.ai.ai, element.value) == ("8003", asset)


@pytest.mark.parametrize(
    ("prefix", "kind"),
    [
        ("952", "firkin"),
        ("9521141x", "firkin"),
        ("952114112345", "firkin"),
        ("95211411234", "keg_50"),
    ],
)
def test_there_is_not_always_one(prefix: str, kind: str) -> None:
    """Too short, not digits, or so long that no figure is left for the kind."""
    with pytest.raises(NotAnAssetNumber):
        asset_number(prefix, kind, "117")
