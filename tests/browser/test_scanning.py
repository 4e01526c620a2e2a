"""Plates are scanned with the phone's camera, one after another, with no network."""

import io
from pathlib import Path

import pypdfium2  # type: ignore[import-untyped]
from PIL import Image, ImageFilter
from playwright.sync_api import expect

from cellarapp.documents.labels import STOCKS, Plate, plates

from .brewery import Brewery
from .doings import all_at_the_brewery, said, tap
from .phone import Phone

A_SECOND = 20
"""Pictures: the film is shown by its frames, whatever its speed."""


def film(folder: Path, *shown: bytes) -> Path:
    """What a camera sees of these papers, each held before it a little askew for three seconds."""
    path = folder / "plates.mjpeg"
    frames = b"".join(frame(paper) * (3 * A_SECOND) for paper in shown)
    path.write_bytes(frames)
    return path


def frame(paper: bytes) -> bytes:
    plate = pypdfium2.PdfDocument(paper)[0].render(scale=2.2).to_pil().convert("RGB")
    table = Image.new("RGB", (1280, 720), (70, 66, 60))
    table.paste(plate, ((1280 - plate.width) // 2, (720 - plate.height) // 2))
    seen = table.rotate(7, fillcolor=(70, 66, 60)).filter(ImageFilter.GaussianBlur(0.8))
    taken = io.BytesIO()
    seen.save(taken, "JPEG", quality=80)
    return taken.getvalue()


def plate(number: str, company_prefix: str = "") -> bytes:
    about = (number, "firkin", "Firkin", "Sallowick Brewery", "https://casks.example")
    return plates(STOCKS["roll"], [Plate(*about, company_prefix)])


def test_casks_come_back_by_scanning_their_plates(
    phone: Phone, brewery: Brewery, tmp_path: Path
) -> None:
    """With a short link of ours and with a GS1 asset number; typing goes on working."""
    brewery.send("101", "102", "103", to="Ferry House", days=20)
    phone.close()
    phone.start(sees=film(tmp_path, plate("101"), plate("102", "9521141")))
    page = phone.open("out/back")
    all_at_the_brewery(page)
    phone.lose_signal()
    tap(page, "Scan")
    for number in ("101", "102"):
        tap(page, f"Take back {number}")
        said(page, f"{number} came back. On this phone.")
    tap(page, "Type")
    page.keyboard.type("103")
    tap(page, "Take back 103")
    said(page, "103 came back. On this phone.")


def test_a_phone_that_may_not_use_its_camera_says_so(phone: Phone, brewery: Brewery) -> None:
    """And what to do instead."""
    page = phone.open("find")
    tap(page, "Scan")
    expect(page.get_by_role("status").filter(has_text="number")).to_be_visible()
    tap(page, "Type")
    expect(page.get_by_role("button", name="7", exact=True)).to_be_visible()
