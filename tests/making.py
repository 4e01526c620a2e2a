"""Makes what the tests push: entries as a phone writes them, and whole requests."""

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any
from uuid import NAMESPACE_URL, uuid5

from cellarapp.ledger.verdicts import Batch

NOW = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
"""When the tests' requests arrive, where that matters."""
MORNING = "2026-11-25T09:00:00.000Z"


def made_id(name: str) -> str:
    """An id for a name: the same one every time."""
    return str(uuid5(NAMESPACE_URL, name))


class Phone:
    """A device: numbers its entries one after the other."""

    def __init__(self, name: str = "bench") -> None:
        self.name = name
        self.device = made_id(f"device {name}")
        self.seq = 0

    def entry(
        self, kind: str, subject: str, /, *, at: str = MORNING, **facts: Any
    ) -> dict[str, Any]:
        """The next entry."""
        self.seq += 1
        return {
            "id": made_id(f"{self.name} {self.seq}"),
            "device": self.device,
            "seq": self.seq,
            "kind": kind,
            "subject": subject,
            "happened_at": at,
            "person": "Ash",
            "facts": facts,
            "rules": 1,
        }

    def filled(
        self, number: str, *, gyle: str = "", at: str = MORNING, **facts: Any
    ) -> dict[str, Any]:
        """A fill of a firkin from a gyle, the brewery's first unless another is named."""
        usual = {"gyle": gyle or made_id("gyle 1"), "volume_ml": 40_000, "best_before": None}
        return self.entry("filled", number, at=at, **(usual | facts))

    def registered(self, number: str, kind: str = "firkin", **facts: Any) -> dict[str, Any]:
        """A container joins the brewery."""
        usual = {"kind": kind, "capacity_ml": 40_915}
        return self.entry("registered", number, **(usual | facts))


def batch(
    elements: Sequence[object], *, received_at: datetime = NOW, sent_at: datetime | None = None
) -> Batch:
    """A batch from a device whose clock is right, unless it says it sent at another time."""
    sender = made_id("device bench")
    return Batch(sender, sent_at or received_at, received_at, list(elements))


def push_body(entries: Sequence[object], /, **other: Any) -> dict[str, Any]:
    """The body of a push."""
    usual = {
        "proto": 1,
        "app": "test",
        "epoch": None,
        "sent_at": "2026-11-25T12:00:00.000Z",
        "device": made_id("device bench"),
        "entries": list(entries),
    }
    return usual | other
