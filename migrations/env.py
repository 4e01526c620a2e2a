"""Alembic's way into the application: which database, which tables, how a migration runs.

Called within an application context, by the start of the application and by `flask db`.
"""

from alembic import context

from cellarapp.storage.db import db, engine_for_writing


def run() -> None:
    """Apply migrations, all or none of them, also on SQLite."""
    with engine_for_writing(db.engine).connect() as connection:
        context.configure(
            connection=connection,
            target_metadata=db.metadata,
            render_as_batch=True,
            transactional_ddl=True,
        )
        with context.begin_transaction():
            context.run_migrations()


run()
