"""The network breaks where it hurts most: after the brewery has acted, before the phone hears."""

from playwright.sync_api import Route

from .brewery import Brewery
from .doings import all_at_the_brewery, fill, on_this_phone, rack_from, said, tap, type_number
from .phone import Phone


def test_an_entry_whose_answer_was_lost_is_not_doubled(phone: Phone, brewery: Brewery) -> None:
    """The brewery has it, the phone does not know, and sends it once more."""
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    lost: list[int] = []

    def lose_the_answer(route: Route) -> None:
        lost.append(route.fetch().status)
        route.abort()

    phone.context.route("**/api/push", lose_the_answer, times=1)
    fill(page, "117")
    said(page, "117 filled. On this phone.")
    all_at_the_brewery(page)
    assert lost == [200]
    assert len(brewery.server.entries("117", "filled")) == 1


def test_a_server_killed_while_it_is_sent_to_loses_and_doubles_nothing(
    phone: Phone, brewery: Brewery
) -> None:
    """Killed as the entries arrive, and again as the answer leaves; all is there once."""
    server = brewery.server
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    phone.lose_signal()
    type_number(page, "101-140")
    tap(page, "Fill all 40")
    said(page, "101 to 140 filled, 40 in all. On this phone.")

    server.freeze()
    with page.expect_request("**/api/push"):
        phone.find_signal()
    server.kill()
    on_this_phone(page, 40)

    phone.lose_signal()
    server.start()
    killed: list[int] = []

    def kill_before_the_answer(route: Route) -> None:
        killed.append(route.fetch().status)
        server.kill()
        route.abort()

    phone.context.route("**/api/push", kill_before_the_answer, times=1)
    with page.expect_event("requestfailed"):
        phone.find_signal()
    assert killed == [200]
    on_this_phone(page, 40)

    phone.lose_signal()
    server.start()
    phone.find_signal()
    all_at_the_brewery(page)
    assert [len(server.entries(str(n), "filled")) for n in range(101, 141)] == [1] * 40
    check = server.run("check")
    assert check.returncode == 0, check.stdout
