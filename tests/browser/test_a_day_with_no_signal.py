"""The whole of it: installed in the yard, used in the cellar, shared when the signal is back."""

from playwright.sync_api import expect

from .brewery import Brewery
from .conftest import GetPhone
from .doings import all_at_the_brewery, fill, look_at, on_this_phone, rack_from, taps
from .phone import Phone

TWENTY = [str(number) for number in range(101, 121)]


def test_twenty_casks_filled_with_no_signal_reach_another_phone(
    phone: Phone, get_phone: GetPhone, brewery: Brewery
) -> None:
    """Number and one tap each, on a phone that was started with no network at all."""
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    phone.lose_signal()
    phone.kill()

    phone.start(offline=True)
    page = phone.open()
    fill(page, TWENTY[0])
    with taps(page) as touched:
        for number in TWENTY[1:]:
            fill(page, number)
    assert touched == [key for n in TWENTY[1:] for key in [*n, f"Fill{n}"]]
    on_this_phone(page, 20)
    assert brewery.server.entries(TWENTY[0], "filled") == []

    phone.find_signal()
    all_at_the_brewery(page)
    other = get_phone().open("cellar")
    expect(other.get_by_role("heading", name="Ready next")).to_contain_text("20")
    look_at(other, TWENTY[-1])
    expect(other.get_by_text("Oystercatcher, gyle 901, 40.9 L")).to_be_visible()
