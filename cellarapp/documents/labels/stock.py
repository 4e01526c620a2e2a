"""What labels are printed on, and where on it each one lies."""

import io
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from reportlab.lib.units import mm  # type: ignore[import-untyped]
from reportlab.pdfgen.canvas import Canvas  # type: ignore[import-untyped]

from cellarapp.documents.labels.drawing import Area

DRAWN_HIGH_MM = 50
"""What is drawn is this high, in the middle of a label that is higher."""


@dataclass(frozen=True)
class Stock:
    """A page of so many labels. Lengths in mm; `left_mm` and `top_mm` lead to the first label."""

    title: str
    page_mm: tuple[float, float]
    label_mm: tuple[float, float]
    columns: int = 1
    rows: int = 1
    left_mm: float = 0
    top_mm: float = 0

    @property
    def a_page(self) -> int:
        """How many labels a page holds."""
        return self.columns * self.rows

    def area(self, canvas: Canvas, place: int) -> Area:
        """The label at a place of the page, from 0, along the rows."""
        row, column = divmod(place, self.columns)
        wide, high = self.label_mm
        left = self.left_mm + column * wide
        bottom = self.page_mm[1] - self.top_mm - (row + 1) * high
        inset_mm = (high - DRAWN_HIGH_MM) / 2
        return Area(canvas, left * mm, bottom * mm, wide * mm, high * mm).part(
            0, inset_mm, wide, DRAWN_HIGH_MM
        )


STOCKS = {
    "roll": Stock("Label printer, 100 by 50 mm", (100, 50), (100, 50)),
    "a4": Stock("A4 sheet, 2 by 5", (210, 297), (99, 57), 2, 5, left_mm=6, top_mm=6),
}


def print_labels(
    stock: Stock, title: str, draw: Iterable[Callable[[Area], None]], *, used: int = 0
) -> bytes:
    """A PDF with a label for each of `draw`; the first `used` places of the first sheet stay empty.

    Args:
        stock: one of STOCKS.
        title: of the file.
        draw: each draws one label.
        used: from 0 to one less than a page holds.
    """
    written = io.BytesIO()
    width, height = stock.page_mm
    # invariant: the same labels make the same file, byte for byte.
    canvas = Canvas(written, pagesize=(width * mm, height * mm), invariant=True)
    canvas.setTitle(title)
    for count, one in enumerate(draw, start=used):
        if count > used and count % stock.a_page == 0:
            canvas.showPage()
        one(stock.area(canvas, count % stock.a_page))
    canvas.save()
    return written.getvalue()
