"""The command line: `cellarapp serve` and its companions."""

from cellarapp.cli.command import main

__all__ = ["main"]
