"""create_app: the one place where the parts are put together."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial

from flask import Flask

from cellarapp import api, pages
from cellarapp.accounts.rights import RightsOf
from cellarapp.api.proxies import FromProxies
from cellarapp.config import Config, read_config
from cellarapp.lan.addresses import reached_at
from cellarapp.ledger.opening import open_ledger
from cellarapp.logs import set_up_logging
from cellarapp.storage.db import close_connections, db, set_up_engine
from cellarapp.storage.migrate import bring_up_to_date, set_up_migrations


@contextmanager
def opened(config: Config, *, migrate: bool = True) -> Iterator[Flask]:
    """The application for a command that ends: within its context, and all closed afterwards."""
    app = create_app(config, migrate=migrate)
    with app.app_context():
        try:
            yield app
        finally:
            close_connections()


def create_app(config: Config | None = None, *, migrate: bool = True) -> Flask:
    """The application.

    Args:
        config: settings; those of the environment unless given.
        migrate: bring the database up to date and open the ledger; not wanted while a migration
            is being written.
    """
    config = config or read_config()
    set_up_logging(config.log)
    app = Flask("cellarapp", static_folder=None)
    app.config["SQLALCHEMY_DATABASE_URI"] = config.database_url
    # What was being written may be private; it must not get into the log with an error.
    app.config["SQLALCHEMY_ENGINE_OPTIONS"] = {"hide_parameters": True}
    app.config["CELLAR_REACHED_AT"] = partial(reached_at, config)
    app.config["CELLAR_DATABASE_FILE"] = config.database_file
    app.config["CELLAR_LEAST_FREE_MIB"] = config.least_free_mib
    app.config["CELLAR_LOG"] = config.log
    app.config["CELLAR_CLIENT"] = config.client
    app.config["CELLAR_DEMO"] = config.demo
    if config.database_file is not None:
        config.database_file.parent.mkdir(parents=True, exist_ok=True)
    db.init_app(app)
    set_up_migrations(app)
    api.register(app)
    pages.register(app)
    app.wsgi_app = FromProxies(app.wsgi_app, config.proxies)  # type: ignore[method-assign]
    with app.app_context():
        set_up_engine(db.engine, busy_ms=config.busy_ms)
        if migrate:
            bring_up_to_date(config.database_file)
            open_ledger(RightsOf)
    return app
