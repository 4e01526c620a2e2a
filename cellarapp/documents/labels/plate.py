"""The plate that a container carries for life: its number, whose it is, and a code to scan.

It says nothing of beer: that changes, and the plate does not.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from cellarapp.documents.labels.drawing import Area
from cellarapp.documents.labels.stock import Stock, print_labels
from cellarapp.domain.asset_number import asset_number, link_to


@dataclass(frozen=True)
class Plate:
    """What stands on a plate. `web` is an address such as https://casks.example.

    With a company prefix of GS1 the code is a GS1 Digital Link, else a short link of our own.
    """

    number: str
    kind: str
    kind_name: str
    brewery: str
    web: str
    company_prefix: str = ""

    @property
    def asset(self) -> str | None:
        """The GRAI. Raises: NotAnAssetNumber when the prefix leaves no room for the kind."""
        if not self.company_prefix:
            return None
        return asset_number(self.company_prefix, self.kind, self.number)

    @property
    def short_link(self) -> str:
        """What a person without a scanner types."""
        return f"{self.web}/f/{self.number}"

    @property
    def link(self) -> str:
        """What the code says."""
        asset = self.asset
        return self.short_link if asset is None else link_to(self.web, asset)


def plates(stock: Stock, all_plates: Iterable[Plate], *, used: int = 0) -> bytes:
    """A PDF of plates. Raises: NotAnAssetNumber."""
    drawing = (partial(_draw, one) for one in all_plates)
    return print_labels(stock, "Container plates", drawing, used=used)


def _draw(plate: Plate, area: Area) -> None:
    area.part(54, 4, 42, 42).qr(plate.link)
    words = area.part(4, 4, 50, 42)
    words.write(plate.brewery, 12, bold=True)
    words.write(plate.number, 60, bold=True, down_mm=8)
    words.write(plate.kind_name, 11, down_mm=27)
    words.write("Found it? Scan, or look here:", 8, down_mm=33)
    words.write(plate.short_link.removeprefix("https://"), 9, down_mm=36.5)
    if plate.asset is not None:
        words.write(f"(8003){plate.asset}", 7, down_mm=40)
