"""The casks of a small brewery, recorded with no signal and shared later."""

from cellarapp.app import create_app

__all__ = ["create_app"]
