"""The brewery's records are put back from a backup while a phone is ahead of it."""

from playwright.sync_api import expect

from .brewery import Brewery
from .doings import all_at_the_brewery, ask_the_brewery, fill, rack_from
from .phone import Phone


def run(brewery: Brewery, *command: str) -> None:
    done = brewery.server.run(*command)
    assert done.returncode == 0, done.stderr


def test_phone_sends_again_what_the_backup_lacks(phone: Phone, brewery: Brewery) -> None:
    """It was told that 102 is safe at the brewery; so it is, though the server forgot it."""
    server = brewery.server
    page = phone.open()
    rack_from(page, "901")
    fill(page, "101")
    all_at_the_brewery(page)
    run(brewery, "backup")
    fill(page, "102")
    all_at_the_brewery(page)
    before = server.entries("102", "filled")
    assert len(before) == 1

    phone.lose_signal()
    server.stop()
    [backup] = (server.folder / "backups").iterdir()
    run(brewery, "restore", str(backup))
    server.start()
    assert len(server.entries("101", "filled")) == 1
    assert server.entries("102", "filled") == []

    phone.find_signal()
    ask_the_brewery(page)
    expect(page.get_by_text("The brewery's records were restored from a copy.")).to_be_visible()
    all_at_the_brewery(page)
    assert len(server.entries("101", "filled")) == 1
    assert [one["id"] for one in server.entries("102", "filled")] == [before[0]["id"]]
    run(brewery, "check")
