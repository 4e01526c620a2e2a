"""The containers that a dose is worked out for: so many of so many millilitres each."""

from collections.abc import Sequence
from dataclasses import dataclass

from cellarapp.domain.inputs import Asked
from cellarapp.domain.rounding import half_up_whole

MOST_ROWS = 200


@dataclass(frozen=True)
class Filling:
    """Containers filled alike."""

    volume_ml: int
    count: int

    def row(self) -> dict[str, int]:
        """As it was asked, to stand before the doses in the answer."""
        return {"volume_ml": self.volume_ml, "count": self.count}


def asked_fillings(asked: Asked, field: str = "containers") -> list[Filling]:
    """The rows asked about, each with volume_ml and count."""
    fillings = []
    for index, row in enumerate(asked.parts(field, MOST_ROWS, "rows")):
        part = Asked(row, "volume_ml", "count", at=f"{field}[{index}].")
        fillings.append(Filling(part.whole("volume_ml"), part.whole("count")))
    return fillings


def total_ml(fillings: list[Filling]) -> int:
    """All of them together."""
    return sum(filling.volume_ml * filling.count for filling in fillings)


def in_all(fillings: Sequence[Filling], doses: Sequence[float]) -> float:
    """What to draw: the sum of the doses as they are given, in mL or g to one decimal.

    By the litres of all together it would come out short wherever the doses are rounded up.
    Twin: static/src/domain/bench/fillings.ts#inAll.
    """
    given = sum(
        filling.count * half_up_whole(dose * 10)
        for filling, dose in zip(fillings, doses, strict=True)
    )
    return given / 10
