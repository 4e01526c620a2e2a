"""Servers and phones for the journeys: each test has its own, and nothing is left behind."""

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect

from .brewery import Brewery, begin
from .built import build_client
from .demo import DemoPhone, take_in_hand
from .doings import all_at_the_brewery, rack_from
from .phone import Phone
from .server import Server

# A busy machine is slow at times; nothing is waited for longer than it takes.
expect.set_options(timeout=20_000)

GetPhone = Callable[[], Phone]


def _interrupt(_signal: int, _frame: object) -> None:
    raise KeyboardInterrupt


@pytest.fixture(scope="session", autouse=True)
def _tidy_end() -> Iterator[None]:
    """A run that is told to end stops its servers too: they would outlive it."""
    before = signal.signal(signal.SIGTERM, _interrupt)
    yield
    signal.signal(signal.SIGTERM, before)


@pytest.fixture(scope="session")
def client(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The client, built once from what is in the checkout."""
    return build_client(tmp_path_factory.mktemp("client"))


@pytest.fixture
def server(tmp_path: Path, client: Path) -> Iterator[Server]:
    """A server with an empty ledger, which is starting."""
    server = Server(tmp_path / "server", client)
    server.begin_to_start()
    yield server
    server.stop()


@pytest.fixture
def brewery(server: Server) -> Brewery:
    """A small brewery in its ledger."""
    server.wait_until_it_answers()
    return begin(server)


@contextmanager
def switched_on(server: Server, make: Callable[[int], Phone]) -> Iterator[GetPhone]:
    """Phones as they are asked for, the first one with 1; closed at the end, and none at fault."""
    phones: list[Phone] = []

    def get() -> Phone:
        phone = make(len(phones) + 1)
        phones.append(phone)
        phone.start()
        return phone

    yield get
    server.begin_to_stop()
    for phone in phones:
        phone.close()
    assert [fault for phone in phones for fault in phone.faults] == []


@pytest.fixture
def get_phone(playwright: Playwright, tmp_path: Path, server: Server) -> Iterator[GetPhone]:
    """Another phone, switched on and not used yet."""
    with switched_on(server, lambda n: Phone(playwright, tmp_path / f"phone {n}", server)) as get:
        yield get


@pytest.fixture
def phone(get_phone: GetPhone, request: pytest.FixtureRequest) -> Phone:
    """The phone of a test that needs one. It is switched on while the server is starting."""
    phone = get_phone()
    request.getfixturevalue("brewery")
    return phone


@pytest.fixture(scope="session")
def demo_server(tmp_path_factory: pytest.TempPathFactory, client: Path) -> Iterator[Server]:
    """The demo brewery, which nothing may be recorded in: tests share it."""
    server = Server(tmp_path_factory.mktemp("demo"), client, "--demo")
    server.start()
    yield server
    server.stop()


@pytest.fixture(scope="session")
def demo(
    playwright: Playwright, tmp_path_factory: pytest.TempPathFactory, demo_server: Server
) -> Iterator[DemoPhone]:
    """A phone that shows it."""
    phone = Phone(playwright, tmp_path_factory.mktemp("demo phone"), demo_server)
    phone.start()
    yield take_in_hand(phone, demo_server)
    phone.close()
    assert phone.faults == []


@pytest.fixture
def bench(phone: Phone) -> Page:
    """A phone at the bench with a gyle chosen, all of it known to the brewery."""
    page = phone.open()
    rack_from(page, "901")
    all_at_the_brewery(page)
    return page
