"""`cellarapp unit`: prints a unit for systemd, so that the service starts with the machine."""

import getpass
import os
import shutil
import sys
from pathlib import Path

from cellarapp.config import Config

UNIT = """\
# cellarapp as a service of this machine. Save it, and start it now and with the machine:
#   cellarapp unit | sudo tee /etc/systemd/system/cellarapp.service
#   sudo systemctl daemon-reload
#   sudo systemctl enable --now cellarapp
# Options of `serve`, such as --lan, go to the end of ExecStart.

[Unit]
Description=cellarapp, the casks of the brewery
After=network-online.target
Wants=network-online.target

[Service]
ExecStart={command} serve
Environment={environment}
{identity}
Restart=on-failure
RestartSec=5
# Requests in flight are finished and the database is closed before it ends.
TimeoutStopSec=60
UMask=0077

# It needs its data, the network and nothing else of this machine.
NoNewPrivileges=yes
ProtectSystem=strict
{home}
PrivateTmp=yes
PrivateDevices=yes
ProtectClock=yes
ProtectControlGroups=yes
ProtectHostname=yes
ProtectKernelLogs=yes
ProtectKernelModules=yes
ProtectKernelTunables=yes
ProtectProc=invisible
LockPersonality=yes
RestrictAddressFamilies=AF_INET AF_INET6 AF_UNIX AF_NETLINK
RestrictNamespaces=yes
RestrictRealtime=yes
RestrictSUIDSGID=yes
RemoveIPC=yes
CapabilityBoundingSet={capabilities}
AmbientCapabilities={capabilities}
SystemCallArchitectures=native
SystemCallFilter=@system-service
SystemCallFilter=~@privileged

[Install]
WantedBy=multi-user.target
"""

OWN_USER = """\
# A user of its own, made by systemd; its data are in /var/lib/cellarapp.
DynamicUser=yes
StateDirectory=cellarapp
StateDirectoryMode=0700"""

THIS_USER = """\
User={user}
ReadWritePaths={data}"""

HOMES = ("/home", "/root")


def unit(config: Config) -> int:
    """Print the unit: for a user of its own when called by root, else for the user who calls."""
    command = Path(shutil.which(sys.argv[0]) or sys.argv[0]).absolute()
    by_root = os.geteuid() == 0
    if by_root and any(command.is_relative_to(home) for home in HOMES):
        print(
            f"cellarapp: the service will not be able to read {command}, which is in somebody's "
            "home. Install cellarapp elsewhere (/opt/cellarapp, say) and call its `unit` there.",
            file=sys.stderr,
        )
    print(_unit(config, command, by_root=by_root), end="")
    return 0


def _unit(config: Config, command: Path, *, by_root: bool) -> str:
    data = "/var/lib/cellarapp" if by_root else str(config.data.absolute())
    this_user = THIS_USER.format(user=getpass.getuser(), data=data)
    return UNIT.format(
        command=command,
        environment=f'"CELLAR_DATA={data}"',
        identity=OWN_USER if by_root else this_user,
        home="ProtectHome=yes" if by_root else "ProtectHome=read-only",
        # Below 1024 a port is not everybody's to listen at.
        capabilities="CAP_NET_BIND_SERVICE" if config.port < 1024 else "",
    )
