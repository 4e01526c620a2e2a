"""Where the app is reached."""

from ipaddress import ip_address

import pytest

from cellarapp.config import read_config
from cellarapp.lan.addresses import LOOPBACK, PRIVATE, Machine, reached_at, this_machine

MACHINE = Machine(["cellar.local", "cellar"], [ip_address("192.168.1.5"), ip_address("fd00::2")])


@pytest.mark.parametrize(
    ("settings", "addresses"),
    [
        ({}, ["http://127.0.0.1:8080"]),
        ({"CELLAR_HOST": "0.0.0.0", "CELLAR_PORT": "80"}, ["http://localhost:80"]),
        ({"CELLAR_LAN": "yes"}, ["https://192.168.1.5:8080", "https://cellar.local:8080"]),
        (
            {"CELLAR_LAN": "yes", "CELLAR_HOST": "::"},
            ["https://192.168.1.5:8080", "https://[fd00::2]:8080", "https://cellar.local:8080"],
        ),
        ({"CELLAR_LAN": "yes", "CELLAR_HOST": "10.0.0.9"}, ["https://10.0.0.9:8080"]),
        ({"CELLAR_ADDRESS": "https://casks.example/"}, ["https://casks.example"]),
    ],
)
def test_app_is_reached_at(settings: dict[str, str], addresses: list[str]) -> None:
    """The first is the one to give to phones."""
    config = read_config({"CELLAR_DATA": "x"} | settings)
    assert reached_at(config, MACHINE) == addresses


def test_machine_has_a_name_and_only_addresses_that_the_authority_may_vouch_for() -> None:
    """Those of the internet are left out; without a network there are none."""
    found = this_machine()
    assert found.names[0]
    assert [one for one in found.addresses if not any(one in network for network in PRIVATE)] == []
    assert [one for one in found.addresses if any(one in network for network in LOOPBACK)] == []
