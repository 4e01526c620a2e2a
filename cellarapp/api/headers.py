"""The headers that every answer carries."""

from flask import Flask, Response, current_app, request

from cellarapp.api.client import build_id

POLICY = "; ".join(
    [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",  # the scanner's decoder
        "style-src 'self'",
        "img-src 'self' data:",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    ]
)


def set_headers(response: Response) -> Response:
    """Nothing is fetched from elsewhere, nothing is guessed, nothing of the ledger is cached.

    A page without script has a policy of its own, which is stricter.
    """
    response.headers.setdefault("Content-Security-Policy", POLICY)
    response.headers["X-Content-Type-Options"] = "nosniff"
    response.headers.setdefault("Referrer-Policy", "no-referrer")
    if request.path.startswith("/api/"):
        response.headers["Cache-Control"] = "no-store"
        response.headers["X-App-Build"] = build_id(current_app.config["CELLAR_CLIENT"])
    return response


def register_headers(app: Flask) -> None:
    """Put the headers on every answer of this application."""
    app.after_request(set_headers)
