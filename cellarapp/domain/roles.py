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


OWNER_ALONE: frozenset[Kind] = frozenset({"erased", "forgotten"})
"""What cannot be taken back."""


def may_record(role: Role, kind: Kind) -> bool:
    """Whether entries of this kind are taken from somebody in this role; others are held."""
    if role == "driver":
        return kind in DRIVER
    if role == "cellar":
        return kind not in OWNER_ALONE
    return role == "owner"


def may_put_right(role: Role, kind: Kind, *, own: bool) -> bool:
    """Whether somebody in this role may void or renumber an entry of this kind.

    Nobody undoes what they might not have recorded, and on the road nobody what another did.
    """
    return may_record(role, kind) and (own or role != "driver")
