"""Serves the built client, compressed as built. Hashed files are kept for ever, no other is."""

import hashlib
import json
from dataclasses import dataclass
from functools import lru_cache
from mimetypes import guess_type
from pathlib import Path

from flask import Blueprint, Response, current_app, request
from werkzeug.routing import PathConverter

from cellarapp.api.problem_table import TABLE
from cellarapp.api.problems import ProblemError

PACKAGE = Path(__file__).resolve().parent.parent
PLACES = (PACKAGE / "static", PACKAGE.parent / "static" / "dist")
"""Within an installed package; beside it in a checkout."""

TYPES = {".js": "text/javascript", ".webmanifest": "application/manifest+json"}
"""Where what the system believes cannot be relied upon."""

NOT_BUILT = """<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>cellarapp: the client is not built</title>
<h1>The client is not built</h1>
<p>The server works, but the pages it would show have not been made. Make them with</p>
<pre>cd static &amp;&amp; npm ci &amp;&amp; node build.mjs</pre>
<p>or install the package with <code>pip install .</code>, which does the same. Then load this page
again.</p>
</html>
"""

blueprint = Blueprint("client", __name__)


@dataclass(frozen=True, slots=True)
class Built:
    """A file of the client, ready to be sent."""

    body: bytes
    etag: str


class ClientPath(PathConverter):
    """Any path but those of the API, which has its own answers for what it does not know."""

    regex = r"(?!api(?:/|$))[^/].*?"


def client_folder(wanted: Path | None = None) -> Path | None:
    """Where the built client is: in the wanted folder, if one is named. None if it is not built."""
    places = PLACES if wanted is None else (wanted,)
    return next((place for place in places if (place / "index.html").is_file()), None)


def build_id(wanted: Path | None = None) -> str:
    """Which build of the client is served, or nothing if none is."""
    folder = client_folder(wanted)
    if folder is None or not (folder / "build.json").is_file():
        return ""
    return str(json.loads(_built(folder / "build.json").body)["id"])


@blueprint.get("/")
def get_start() -> Response:
    """The client's one page."""
    return get_file("index.html")


@blueprint.get("/<client:name>")
def get_file(name: str) -> Response:
    """A file of the client, or the client itself for an address that only it knows."""
    folder = client_folder(current_app.config["CELLAR_CLIENT"])
    if folder is None and _navigating():
        return Response(NOT_BUILT, status=503, content_type="text/html; charset=utf-8")
    if folder is not None:
        file = _within(folder, name)
        if file is None and _navigating():
            name, file = "index.html", _within(folder, "index.html")
        if file is not None:
            return _send(name, file)
    raise ProblemError("not-found", TABLE["not-found"].advice)


def _within(folder: Path, name: str) -> Path | None:
    file = (folder / name).resolve()
    return file if file.is_relative_to(folder.resolve()) and file.is_file() else None


def _navigating() -> bool:
    mode = request.headers.get("Sec-Fetch-Mode")
    if mode is not None:
        return mode == "navigate"
    return "text/html" in request.headers.get("Accept", "")


def _send(name: str, file: Path) -> Response:
    coding, packed = _packed(file)
    built = _built(packed)
    content_type = TYPES.get(file.suffix) or guess_type(name)[0] or "application/octet-stream"
    response = Response(built.body, mimetype=content_type)
    if coding:
        response.headers["Content-Encoding"] = coding
    response.headers["Vary"] = "Accept-Encoding"
    hashed = name.startswith("assets/")
    response.headers["Cache-Control"] = (
        "public, max-age=31536000, immutable" if hashed else "no-cache"
    )
    response.set_etag(built.etag)
    response.make_conditional(request)
    return response


def _packed(file: Path) -> tuple[str, Path]:
    """The smallest form of a file that the browser can unpack."""
    for coding, suffix in (("br", ".br"), ("gzip", ".gz")):
        packed = file.with_name(file.name + suffix)
        if request.accept_encodings[coding] > 0 and packed.is_file():
            return coding, packed
    return "", file


def _built(file: Path) -> Built:
    """The file as it is now; a build that is made while the server runs is seen."""
    about = file.stat()
    return _read(file, about.st_mtime_ns, about.st_size)


@lru_cache(maxsize=256)
def _read(file: Path, _mtime_ns: int, _size: int) -> Built:
    body = file.read_bytes()
    return Built(body, hashlib.sha256(body).hexdigest()[:32])
