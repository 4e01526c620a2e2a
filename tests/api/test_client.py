"""The built client: compressed, kept for as long as it may be, and found for every address."""

from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient

PAGE = {"Accept": "text/html,*/*;q=0.8"}


@pytest.fixture
def built(app: Flask, tmp_path: Path) -> Path:
    """A client of four files, one of them compressed."""
    folder = tmp_path / "dist"
    (folder / "assets").mkdir(parents=True)
    (folder / "index.html").write_text("<!doctype html><title>cellarapp</title>")
    (folder / "sw.js").write_text("// worker")
    (folder / "app.webmanifest").write_text("{}")
    (folder / "assets" / "main-ABC.js").write_text("plain")
    (folder / "assets" / "main-ABC.js.br").write_bytes(b"brotli")
    (folder / "assets" / "main-ABC.js.gz").write_bytes(b"gzip")
    (tmp_path / "secret").write_text("not for everyone")
    app.config["CELLAR_CLIENT"] = folder
    return folder


pytestmark = pytest.mark.usefixtures("built")


@pytest.mark.parametrize("path", ["/", "/index.html", "/bench", "/containers/117", "/a.b/c"])
def test_browser_that_goes_to_an_address_gets_the_app(client: FlaskClient, path: str) -> None:
    """Only the app knows its addresses. It is asked for anew each time."""
    answer = client.get(path, headers=PAGE)
    assert answer.status_code == 200
    assert "cellarapp" in answer.text
    assert answer.content_type == "text/html; charset=utf-8"
    assert answer.headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize(
    "headers",
    [{}, {"Accept": "*/*"}, PAGE | {"Sec-Fetch-Mode": "cors", "Sec-Fetch-Dest": "script"}],
)
def test_script_that_is_gone_is_not_found(client: FlaskClient, headers: dict[str, str]) -> None:
    """A page in place of a script would be kept by the worker as a script."""
    assert client.get("/assets/main-OLD.js", headers=headers).status_code == 404


@pytest.mark.parametrize(
    ("accepted", "coding", "body"),
    [
        ("gzip, deflate, br, zstd", "br", b"brotli"),
        ("gzip, deflate", "gzip", b"gzip"),
        ("br;q=0, gzip", "gzip", b"gzip"),
        ("identity", None, b"plain"),
        ("", None, b"plain"),
    ],
)
def test_file_comes_as_compressed_as_the_browser_takes_it(
    client: FlaskClient, accepted: str, coding: str | None, body: bytes
) -> None:
    """With a tag of its own for each form."""
    answer = client.get("/assets/main-ABC.js", headers={"Accept-Encoding": accepted})
    assert answer.data == body
    assert answer.headers.get("Content-Encoding") == coding
    assert answer.headers["Vary"] == "Accept-Encoding"
    assert answer.content_type == "text/javascript; charset=utf-8"


def test_file_with_its_hash_in_its_name_is_kept_for_ever(client: FlaskClient) -> None:
    """Another content has another name."""
    kept = client.get("/assets/main-ABC.js").headers["Cache-Control"]
    assert kept == "public, max-age=31536000, immutable"


def test_worker_is_asked_for_anew_each_time(client: FlaskClient) -> None:
    """Or a phone would never hear of a new release."""
    assert client.get("/sw.js").headers["Cache-Control"] == "no-cache"


def test_file_that_has_not_changed_is_not_sent_again(client: FlaskClient, built: Path) -> None:
    """Until it has."""
    tag = client.get("/sw.js").headers["ETag"]
    assert client.get("/sw.js", headers={"If-None-Match": tag}).status_code == 304
    (built / "sw.js").write_text("// a newer worker")
    assert client.get("/sw.js", headers={"If-None-Match": tag}).status_code == 200


@pytest.mark.parametrize(
    "path", ["/../secret", "/assets/../../secret", "/%2e%2e/secret", "//etc/passwd", "/assets"]
)
def test_nothing_outside_the_client_is_given_out(client: FlaskClient, path: str) -> None:
    """Neither a way up nor a folder."""
    answer = client.get(path)
    assert answer.status_code in (404, 308)
    assert "not for everyone" not in answer.text


def test_api_addresses_never_lead_to_the_app(client: FlaskClient) -> None:
    """Also not for a person who mistyped one."""
    assert client.get("/api/nonsense", headers=PAGE).status_code == 404


def test_without_a_client_a_page_says_how_to_build_it(
    app: Flask, client: FlaskClient, tmp_path: Path
) -> None:
    """Rather than a bare "not found"."""
    app.config["CELLAR_CLIENT"] = tmp_path / "nothing"
    answer = client.get("/", headers=PAGE)
    assert answer.status_code == 503
    assert "node build.mjs" in answer.text
