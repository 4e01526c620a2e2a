"""GAUGE: the inside of a cask, and how much of it lies below a surface.

The cask is the middle frustum of a spheroid, the first of the four varieties that gaugers tell
apart: its radius at x from the middle is r(x) = sqrt(R² - (R² - r²) (2x / L)²). Millimetres inside.
"""

import math
from typing import NamedTuple

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.inputs import number_in
from cellarapp.domain.working import Working

MEASURES = ("bung_diameter_mm", "head_diameter_mm", "length_mm")
MM3_PER_ML = 1000
SLICES = 1000
"""Of Simpson's rule: even, and so many that the last millilitre is right."""


class Inside(NamedTuple):
    """Diameters at bung and head, and the length from head to head."""

    bung_mm: float
    head_mm: float
    length_mm: float

    def full_ml(self) -> float:
        """GAUGE-1: pi L (2 R² + r²) / 3."""
        squares = 2 * (self.bung_mm / 2) ** 2 + (self.head_mm / 2) ** 2
        return math.pi * self.length_mm * squares / 3 / MM3_PER_ML

    def lying_ml(self, wet_mm: float) -> float:
        """GAUGE-2: beer in a cask that lies level, from the wet dip at the bung.

        Above the middle it is the full contents less what lies above the surface, so that a dip
        and its counterpart make the whole.
        """
        if wet_mm > self.bung_mm / 2:
            return self.full_ml() - self._below_ml(self.bung_mm - wet_mm)
        return self._below_ml(wet_mm)

    def standing_ml(self, wet_mm: float) -> float:
        """GAUGE-3: beer in a cask that stands on its head, from the wet dip along its length."""
        half = self.length_mm / 2
        big, small = (self.bung_mm / 2) ** 2, (self.head_mm / 2) ** 2
        cubes = ((wet_mm - half) ** 3 + half**3) / (3 * half**2)
        return math.pi * (big * wet_mm - (big - small) * cubes) / MM3_PER_ML

    def scaled(self, volume_ratio: float) -> "Inside":
        """A cask of the same shape that holds so many times as much."""
        grown = volume_ratio ** (1 / 3)
        return Inside(self.bung_mm * grown, self.head_mm * grown, self.length_mm * grown)

    def _below_ml(self, wet_mm: float) -> float:
        """Circular segments, summed along the cask; the surface lies at or below its axis.

        With x = a sin u the sum runs smoothly into the point where the beer ends.
        """
        big, small = (self.bung_mm / 2) ** 2, (self.head_mm / 2) ** 2
        to_axis = self.bung_mm / 2 - wet_mm
        reach, falls = self.length_mm / 2, big - small
        share = min(1.0, math.sqrt((big - to_axis**2) / falls)) if falls > 0 else 1.0
        total = 0.0
        for n in range(SLICES + 1):
            turn = math.pi / 2 * n / SLICES
            square = max(big - falls * (share * math.sin(turn)) ** 2, to_axis**2)
            weight = 1 if n in (0, SLICES) else 4 if n % 2 else 2
            total += weight * _segment(square, to_axis) * math.cos(turn)
        return 2 * reach * share * total * (math.pi / 2) / SLICES / 3 / MM3_PER_ML


def _segment(square: float, to_axis: float) -> float:
    radius = math.sqrt(square)
    angle = math.acos(min(1.0, to_axis / radius))
    return square * angle - to_axis * math.sqrt(max(0.0, square - to_axis**2))


def asked_inside(work: Working, asked: CellarAsked) -> tuple[Inside, float]:
    """The cask's inside, and what its contents are scaled by to agree with what it holds.

    Where no measures are given the model of its size stands for it. Measures that are far from
    what the container holds are refused: one of them is mistaken.
    """
    holds_ml = asked.maybe_number("holds_ml")
    if holds_ml is not None and not any(asked.has(name) for name in MEASURES):
        work.caution("model_cask_used")
        model = work.figure("model_cask_mm")
        inside = Inside(*(float(model[name]) for name in MEASURES))
        inside = inside.scaled(holds_ml / model["holds_ml"])
        return inside, holds_ml / inside.full_ml()
    bung_mm = asked.number("bung_diameter_mm")
    head_mm = number_in(
        "head_diameter_mm", asked.number("head_diameter_mm"), None, bung_mm, "mm",
        "A cask is widest at its bung.",
    )  # fmt: skip
    inside = Inside(bung_mm, head_mm, asked.number("length_mm"))
    if holds_ml is None:
        return inside, 1.0
    full_ml, off = inside.full_ml(), work.setting("measures_off_permille") / 1000
    if not full_ml * (1 - off) <= holds_ml <= full_ml * (1 + off):
        raise OutOfRange(
            field="holds_ml", given=holds_ml, low=math.ceil(full_ml * (1 - off)),
            high=math.floor(full_ml * (1 + off)), unit="mL",
            why="The inside measures give other contents: one of them is mistaken.",
        )  # fmt: skip
    return inside, holds_ml / full_ml
