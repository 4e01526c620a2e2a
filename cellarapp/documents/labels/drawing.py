"""Words and QR codes on a label."""

import unicodedata
from dataclasses import dataclass
from itertools import groupby
from typing import Any

import segno
from reportlab.lib.units import mm  # type: ignore[import-untyped]
from reportlab.pdfbase.pdfmetrics import stringWidth  # type: ignore[import-untyped]

PLAIN, BOLD = "Helvetica", "Helvetica-Bold"
LEAST_PT = 5
QUIET_MODULES = 4
"""The empty border without which a QR code is not found. Source: DENSO WAVE, qrcode.com."""


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle to draw in; lengths in points, from its lower left corner."""

    canvas: Any
    left: float
    bottom: float
    width: float
    height: float

    def part(self, left_mm: float, bottom_mm: float, width_mm: float, height_mm: float) -> "Area":
        """A rectangle within."""
        left, bottom = self.left + left_mm * mm, self.bottom + bottom_mm * mm
        return Area(self.canvas, left, bottom, width_mm * mm, height_mm * mm)

    def write(self, words: str, size_pt: float, *, bold: bool = False, down_mm: float = 0) -> None:
        """One line from the top, at most this large and as small as it takes to fit the width."""
        font, text = BOLD if bold else PLAIN, printable(words)
        size, text = fitted(text, font, size_pt, self.width)
        self.canvas.setFont(font, size)
        top = self.bottom + self.height - down_mm * mm
        self.canvas.drawString(self.left, top - size * 0.8, text)

    def qr(self, text: str) -> None:
        """A QR code that fills the area's height. A quarter of it may be scratched away."""
        code = segno.make(text, error="q", boost_error=False, micro=False)
        rows = [list(row) for row in code.matrix]
        module = self.height / (len(rows) + 2 * QUIET_MODULES)
        for n, row in enumerate(rows):
            y = self.bottom + self.height - (QUIET_MODULES + n + 1) * module
            at = QUIET_MODULES
            for dark, run in groupby(row):
                length = len(list(run))
                if dark:
                    x = self.left + at * module
                    self.canvas.rect(x, y, length * module, module, stroke=0, fill=1)
                at += length


def fitted(text: str, font: str, size_pt: float, width: float) -> tuple[float, str]:
    """The size at which a line fits, and the line, cut with an ellipsis where none is enough."""
    size = min(size_pt, size_pt * width / max(stringWidth(text, font, size_pt), 1e-9))
    if size >= LEAST_PT:
        return size, text
    while text and stringWidth(f"{text}…", font, LEAST_PT) > width:
        text = text[:-1]
    return LEAST_PT, f"{text}…"


def printable(text: str) -> str:
    """The text in letters that the built-in fonts have: others lose their accent, or become "?"."""
    return "".join(map(_printable, text))


def _printable(letter: str) -> str:
    if _has(letter):
        return letter
    plain = "".join(filter(_has, unicodedata.normalize("NFKD", letter)))
    return plain or "?"


def _has(letter: str) -> bool:
    return letter.isprintable() and letter.encode("cp1252", "ignore") != b""
