"""The migrations of a release to come."""

import shutil
from pathlib import Path

from cellarapp.storage.migrate import migrations_folder, newest_revision

NEXT = '''"""A table more."""

import sqlalchemy as sa
from alembic import op

revision = "9999"
down_revision = "{before}"


def upgrade() -> None:
    op.create_table("more", sa.Column("id", sa.Integer(), primary_key=True))
    {then}
'''


def with_a_migration_more(tmp_path: Path, *, then: str) -> Path:
    """A folder of migrations: those of today, and one that makes a table and does what is said."""
    folder = tmp_path / "migrations"
    shutil.copytree(migrations_folder(), folder)
    text = NEXT.format(before=newest_revision(folder), then=then)
    (folder / "versions" / "9999_a_table_more.py").write_text(text)
    return folder
