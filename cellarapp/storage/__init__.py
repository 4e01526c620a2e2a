"""Where the ledger is kept. The only folder that knows SQLAlchemy and Alembic.

Others ask for a unit of work (`work.reading`, `work.writing`) and use its stores.
"""
