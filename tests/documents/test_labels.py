"""Labels: printed, read back by other programs, and never without what has to stand on them."""

from typing import Any

import pypdfium2  # type: ignore[import-untyped]
import pytest
import zxingcpp
from flask.testing import FlaskClient

from cellarapp.domain.asset_number import take_apart
from cellarapp.ledger.take_in import take_in

from ..making import Phone, batch, made_id

POINTS_A_MM = 72 / 25.4
PRINTER_DPI = 203
"""The coarsest label printer in use (from memory)."""


@pytest.fixture
def phone(client: FlaskClient) -> Phone:
    """A brewery with casks 117 and 118 filled, K3 empty and 9 not registered."""
    phone = Phone()
    beer, gyle = made_id("beer"), made_id("gyle 1")
    barley = {"cereals": ["barley", "oats"], "milk": False}
    firkin: dict[str, Any] = {"gyle": gyle, "best_before": "2026-12-24", "volume_ml": 40_900}
    isinglass = {"what": "isinglass", "amount_ml": 350}
    take_in(
        batch(
            [
                phone.entry(
                    "brewery", "brewery", name="Sallowick Brewery", address="2 Ropewalk, Sallowick",
                    web="https://casks.example",
                ),
                phone.entry("beer", beer, name="Łódź Ember", abv_tenths=38, **barley),
                phone.entry("gyle", gyle, number="0412", beer=beer),
                phone.registered("117"),
                phone.registered("K3", "keg_50", capacity_ml=50_000),
                phone.filled("117", **firkin, doses=[isinglass]),
                phone.filled("118", **firkin),
                phone.entry("washed", "9"),
            ]
        )
    )  # fmt: skip
    return phone


def pages(client: FlaskClient, path: str) -> list[Any]:
    answer = client.get(f"/api/labels/{path}")
    assert answer.content_type == "application/pdf", answer.json
    return list(pypdfium2.PdfDocument(answer.data))


def text_on(page: Any) -> str:
    return " ".join(page.get_textpage().get_text_range().split())


def codes_on(page: Any, dpi: int = 300) -> list[str]:
    """What an independent decoder reads off the page as it comes out of a printer."""
    found = zxingcpp.read_barcodes(page.render(scale=dpi / 72).to_pil())
    return sorted(one.text for one in found)


def test_plates_are_read_back_by_another_decoder(client: FlaskClient, phone: Phone) -> None:
    """On a sheet, and on a roll at the resolution of a label printer."""
    [sheet] = pages(client, "plates.pdf?numbers=117,k 3")
    links = ["https://casks.example/f/117", "https://casks.example/f/K3"]
    assert codes_on(sheet) == links
    for part in ("Sallowick Brewery", "117", "Firkin", "50 L keg", "casks.example/f/K3"):
        assert part in text_on(sheet)
    rolls = pages(client, "plates.pdf?numbers=117,K3&stock=roll")
    assert [codes_on(page, PRINTER_DPI) for page in rolls] == [[link] for link in links]
    assert [one / POINTS_A_MM for one in rolls[0].get_size()] == pytest.approx([100, 50])


def test_plate_with_a_gs1_asset_number(client: FlaskClient, phone: Phone) -> None:
    """The code is a GS1 Digital Link, and the number stands beside it as GS1 prints it."""
    take_in(batch([phone.entry("brewery", "brewery", company_prefix="9521141")]))
    [plate] = pages(client, "plates.pdf?numbers=117&stock=roll")
    [link] = codes_on(plate, PRINTER_DPI)
    assert take_apart(link).serial == "117"
    assert f"(8003){link.rpartition('/')[2]}" in text_on(plate)


@pytest.mark.parametrize(("used", "places"), [(0, [10, 2]), (7, [3, 9]), (9, [1, 10, 1])])
def test_a_sheet_that_is_partly_used_is_used_up(
    client: FlaskClient, phone: Phone, used: int, places: list[int]
) -> None:
    numbers = [str(n) for n in range(201, 213)]
    take_in(batch([phone.registered(number) for number in numbers]))
    sheets = pages(client, f"plates.pdf?numbers={','.join(numbers)}&used={used}")
    assert [len(codes_on(sheet)) for sheet in sheets] == places


def test_what_stands_on_the_label_of_a_fill(client: FlaskClient, phone: Phone) -> None:
    """The date as the law writes it; letters that the printer lacks lose their accent only."""
    fined, unsaid = map(text_on, pages(client, "fills.pdf?numbers=117,118&stock=roll"))
    for part in (
        "?ódz Ember", "117", "Alc. 3.8 % vol", "Best before 24 December 2026", "Lot L0412-251126",
        "Racked 25 Nov 2026", "40.9 L", "Contains barley (gluten), oats (gluten)",
        "Fined with isinglass", "Sallowick Brewery, 2 Ropewalk, Sallowick",
    ):  # fmt: skip
        assert part in fined
    assert "ined" not in unsaid.replace("Contained", "")


def test_a_label_names_sulphites_that_finings_carry_in(client: FlaskClient, phone: Phone) -> None:
    """900 mL of isinglass at 500 mg/L are 11 mg/L in a firkin: over 10 is declared."""
    isinglass = {"what": "isinglass", "amount_ml": 900}
    take_in(batch([phone.entry("dosed", "118", **isinglass)]))
    fined, more = map(text_on, pages(client, "fills.pdf?numbers=117,118&stock=roll"))
    assert "sulphites" not in fined
    assert "Contains barley (gluten), oats (gluten), sulphites" in more


@pytest.mark.parametrize(
    ("path", "part"),
    [
        ("plates.pdf?numbers=9", "enter its kind first"),
        ("plates.pdf?numbers=999", "no 999 on record"),
        ("fills.pdf?numbers=K3", "nothing to label"),
        ("fills.pdf?numbers=barrel", "numbers with commas"),
        ("fills.pdf?numbers=117&stock=wall", "stock"),
        ("fills.pdf?numbers=117&used=10", "from 0 to 9"),
        ("fills.pdf?numbers=" + ",".join(map(str, range(301))), "one to 300"),
        ("fills.pdf", "numbers"),
    ],
)
def test_what_is_missing_is_said(client: FlaskClient, phone: Phone, path: str, part: str) -> None:
    answer: Any = client.get(f"/api/labels/{path}")
    assert answer.status_code == 422
    assert part in answer.json["detail"]


def test_labels_before_the_brewery_has_said_who_it_is(client: FlaskClient) -> None:
    """A plate lasts for years, so nothing on it may be made up."""
    phone = Phone()
    take_in(batch([phone.registered("117")]))
    answer: Any = client.get("/api/labels/plates.pdf?numbers=117")
    assert "brewery's name first" in answer.json["detail"]
    take_in(batch([phone.entry("brewery", "brewery", name="Sallowick Brewery")]))
    answer = client.get("/api/labels/plates.pdf?numbers=117")
    assert "address on the web first" in answer.json["detail"]
