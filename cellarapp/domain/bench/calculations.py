"""The bench's calculations by the names under which they are offered."""

from cellarapp.domain.working import Rule

BENCH: dict[str, tuple[str, Rule]] = {}
"""Name, title, rule."""
