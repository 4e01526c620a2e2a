"""A sale is planned in the cellar with no signal, and its first job is there today."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from playwright.sync_api import Locator, Page, expect

from .brewery import Brewery, ago
from .doings import all_at_the_brewery, go_to, on_this_phone, said, tap
from .phone import Phone

CASK, NEXT = "117 Winter Lamp", "118 Winter Lamp"
LONDON = ZoneInfo("Europe/London")


def in_hours(hours: float) -> datetime:
    return (datetime.now(UTC) + timedelta(hours=hours)).astimezone(LONDON)


def written(sale: datetime) -> str:
    """As the ledger keeps it."""
    return sale.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:00.000Z")


def pick_for(page: Page, cask: str, sale: datetime) -> None:
    """Put the sale's day and hour in, and take the cask for it."""
    page.get_by_label("On sale by").fill(sale.strftime("%Y-%m-%d"))
    page.get_by_label("Time").fill(sale.strftime("%H:%M"))
    tap(page, f"Pick: {cask}")
    said(page, f"{cask.split()[0]} is picked for")
    expect(page.get_by_role("button", name=f"Take back: {cask}")).to_be_visible()


def list_of(page: Page, heading: str) -> Locator:
    return page.locator("section").filter(has=page.get_by_role("heading", name=heading))


def test_a_plan_for_a_sale_gives_todays_jobs(phone: Phone, brewery: Brewery) -> None:
    """Saturday is offered; other times are chosen, casks are picked, and each job is one tap.

    Venting comes 36 hours before a sale and tapping 24: both are due now, whatever the hour.
    """
    brewery.fill("117", "118", gyle="902", at=ago(days=5))
    office = brewery.office
    stillaged = [office.entry("stillaged", n, at=ago(days=3)) for n in ("117", "118")]
    brewery.tell([*stillaged, office.entry("vented", "118", at=ago(days=2), spile="hard")])
    page = phone.open("cellar")
    expect(page.get_by_text(CASK)).to_be_visible()
    phone.lose_signal()
    page.get_by_role("link", name="Plan a sale").tap()
    day, clock = page.get_by_label("On sale by"), page.get_by_label("Time")
    offered = datetime.fromisoformat(f"{day.input_value()}T{clock.input_value()}")
    assert (offered.strftime("%A %H:%M")) == "Saturday 13:00"

    vented_for, tapped_for = in_hours(38), in_hours(24.2)
    pick_for(page, CASK, vented_for)
    pick_for(page, NEXT, tapped_for)

    go_to(page, "Cellar")
    jobs = list_of(page, "Today's jobs")
    expect(jobs.get_by_text("Vent with a soft spile")).to_be_visible()
    expect(jobs.get_by_text("Tap now")).to_be_visible()
    jobs.get_by_role("button", name=f"Vent: {CASK}").tap()
    said(page, "117: soft spile in.")
    jobs.get_by_role("button", name=f"Tap: {NEXT}").tap()
    said(page, "118 tapped for")
    expect(jobs.get_by_text("Vent with a soft spile")).to_be_hidden()
    expect(jobs.get_by_text("Tap now")).to_be_hidden()
    on_this_phone(page, 4)

    phone.find_signal()
    all_at_the_brewery(page)
    first, second = (brewery.server.standing(number) for number in ("117", "118"))
    assert first["planned"]["sale_at"] == written(vented_for)
    assert first["serving"]["vented"]["spile"] == "soft"
    assert second["planned"]["sale_at"] == written(tapped_for)
    assert second["serving"]["tapped"] is not None


def test_a_pick_is_taken_back(phone: Phone, brewery: Brewery) -> None:
    """Then nothing is to do for it any more."""
    brewery.fill("117", gyle="902", at=ago(days=5))
    sale_at = ago(hours=-20)
    brewery.tell([brewery.office.entry("planned", "117", at=ago(hours=1), sale_at=sale_at)])
    page = phone.open("cellar")
    expect(page.get_by_role("heading", name="Today's jobs")).to_be_visible()
    page = phone.open("cellar/plan")
    tap(page, f"Take back: {CASK}")
    said(page, "117 is not picked any more.")
    go_to(page, "Cellar")
    expect(page.get_by_role("heading", name="Today's jobs")).to_be_hidden()
    all_at_the_brewery(page)
    assert brewery.server.standing("117")["planned"] is None


def test_temperatures_by_hand_and_from_a_loggers_file(phone: Phone, brewery: Brewery) -> None:
    """With no signal; the cellar says the last one, and the reasons of a cask heed it."""
    brewery.fill("117", gyle="902", at=ago(days=5))
    page = phone.open("cellar")
    expect(page.get_by_text(CASK)).to_be_visible()
    phone.lose_signal()
    page.get_by_role("link", name="Temperatures: none noted yet").tap()
    room = page.get_by_role("region", name="Cold room")
    room.get_by_label("The thermometer shows, °C").fill("11.8")
    room.get_by_role("button", name="Note it").tap()
    said(page, "Cold room: 11.8 °C.")
    stillage = page.get_by_role("region", name="Stillage")
    stillage.get_by_text("Logger's file, usual temperature").tap()
    log = "Time,Temperature (°C)\n2026-11-01 08:00,12.1\n2026-11-01 09:00,12.4\nnothing,1\n"
    stillage.get_by_label("Read a logger's file (CSV)").set_input_files(
        {"name": "stillage.csv", "mimeType": "text/csv", "buffer": log.encode()}
    )
    expect(stillage.get_by_text("2 readings,")).to_be_visible()
    expect(stillage.get_by_text("Lines that could not be read: 1.")).to_be_visible()
    stillage.get_by_role("button", name="Take them in").tap()
    said(page, "Stillage: 2 readings taken in.")
    go_to(page, "Cellar")
    expect(page.get_by_role("link", name="Cold room 11.8 °C at")).to_be_visible()
    on_this_phone(page, 2)
    page.get_by_role("button", name="Ready since").tap()
    expect(page.get_by_text("The beer is at about")).to_be_visible()
    tap(page, "How it is worked out")
    expect(page.get_by_role("dialog").get_by_text("Figures used")).to_be_visible()
