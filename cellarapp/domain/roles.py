"""Who may record what."""

from typing import Literal, get_args

from cellarapp.domain.entries import Kind

Role = Literal["owner", "cellar", "driver", "reader"]

ROLES: tuple[Role, ...] = get_args(Role)

DRIVER: frozenset[Kind] = frozenset(
    {
        "sent", "returned", "moved", "missing", "found", "noted", "reported", "told", "chased",
        "linked", "drop", "voided", "renumbered",
    }
)  # fmt: skip
"""What happens on the road, and the way back from a slip of one's own."""


OWNER_ALONE: frozenset[Kind] = frozenset({"erased"})
"""What cannot be taken back."""


def may_record(role: Role, kind: Kind) -> bool:
    """Whether entries of this kind are taken from somebody in this role; others are held."""
    if role == "driver":
        return kind in DRIVER
    if role == "cellar":
        return kind not in OWNER_ALONE
    return role == "owner"
