"""The names and addresses of this machine, and where the app is reached by them."""

import socket
from ipaddress import IPv4Address, IPv6Address, ip_address, ip_network
from typing import NamedTuple

from cellarapp.config import Config

IPAddress = IPv4Address | IPv6Address

PRIVATE = [
    ip_network(network) for network in ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "fc00::/7")
]
"""Addresses of networks that are nobody else's (RFC 1918, RFC 4193)."""
LOOPBACK = [ip_network("127.0.0.0/8"), ip_network("::1/128")]
NOBODY = "192.0.2.1"
"""For documentation only (RFC 5737): nothing is ever sent there."""


class Machine(NamedTuple):
    """What this machine is called, and its addresses on private networks, best known first."""

    names: list[str]
    addresses: list[IPAddress]


def this_machine() -> Machine:
    """As it is now: addresses come and go."""
    import ifaddr  # only where the network is served; the extra may not be there

    name = socket.gethostname().lower()
    names = [name] if "." in name else [f"{name}.local", name]
    found = []
    for adapter in ifaddr.get_adapters():
        for one in adapter.ips:
            text = one.ip if isinstance(one.ip, str) else one.ip[0]
            address = ip_address(text)
            if any(address in network for network in PRIVATE):
                found.append(address)
    outward = _outward()
    return Machine(names, sorted(found, key=lambda one: (one != outward, one.version)))


def _outward() -> IPAddress | None:
    """The address by which this machine speaks to others; asking for it sends nothing."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect((NOBODY, 9))
        except OSError:  # no network at all
            return None
        return ip_address(probe.getsockname()[0])


def reached_at(config: Config, machine: Machine | None = None) -> list[str]:
    """Where the app is reached, as phones have to write it; the first is the one to give to them.

    The address of the settings if there is one, since only it is known outside a proxy; on the
    brewery's own network those of this machine; otherwise the address that is listened at.
    """
    if config.address:
        return [config.address]
    if not config.lan:
        return [f"http://{_shown(config.host)}:{config.port}"]
    if config.host not in ("0.0.0.0", "::"):
        return [f"https://{_shown(config.host)}:{config.port}"]
    names, addresses = machine or this_machine()
    heard = [one for one in addresses if one.version == 4 or config.host == "::"]
    hosts = [*(_shown(str(one)) for one in heard), names[0]]
    return [f"https://{host}:{config.port}" for host in hosts]


def _shown(host: str) -> str:
    """As it is written within an address."""
    if host in ("0.0.0.0", "::"):
        return "localhost"
    return f"[{host}]" if ":" in host else host
