"""Commands that look at the ledger and end."""

import json
from importlib.metadata import version as version_of

from cellarapp.api.client import build_id
from cellarapp.app import create_app, opened
from cellarapp.config import Config
from cellarapp.domain import RULES_VERSION
from cellarapp.ledger import check as checking
from cellarapp.ledger import rebuild as rebuilding

MOST_SHOWN = 50


def check(config: Config) -> int:
    """Print every difference between the rows and the ledger; 1 if there is any."""
    with opened(config):
        differences = checking.check()
    for difference in differences[:MOST_SHOWN]:
        print(difference)
    if len(differences) > MOST_SHOWN:
        print(f"and {len(differences) - MOST_SHOWN} more")
    print(f"{len(differences)} differences" if differences else "all rows are what the ledger says")
    return 1 if differences else 0


def rebuild(config: Config) -> int:
    """Make the rows anew."""
    with opened(config):
        changed = rebuilding.rebuild()
    print(f"{changed} rows were not what the ledger says; they are now")
    return 0


def openapi(config: Config) -> int:
    """Print the OpenAPI document."""
    app = create_app(config, migrate=False)
    print(json.dumps(app.test_client().get("/api/openapi.json").json, indent=2))
    return 0


def version(config: Config) -> int:
    """Print which release this is, by which rules it folds and which client it serves."""
    build = build_id(config.client) or "not built"
    print(f"cellarapp {version_of('cellarapp')}, rules {RULES_VERSION}, client {build}")
    return 0
