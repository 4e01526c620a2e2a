"""The ledger: head, entry, held, row."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "head",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("epoch", sa.String(36), nullable=False),
        sa.Column("checksum", sa.BigInteger(), nullable=False),
        sa.Column("rules", sa.Integer(), nullable=False),
        sa.CheckConstraint("id = 1", name=op.f("head_only_one")),
        sa.PrimaryKeyConstraint("id", name=op.f("head_pk")),
    )
    op.create_table(
        "entry",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("device", sa.String(36), nullable=False),
        sa.Column("seq", sa.BigInteger(), nullable=False),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("subject", sa.String(36), nullable=False),
        sa.Column("counts_for", sa.String(36), nullable=True),
        sa.Column("dropped_by", sa.String(36), nullable=True),
        sa.Column("target", sa.String(36), nullable=True),
        sa.Column("query", sa.String(400), nullable=True),
        sa.Column("gyle", sa.String(36), nullable=True),
        sa.Column("happened_at", sa.String(24), nullable=False),
        sa.Column("effective_at", sa.String(24), nullable=False),
        sa.Column("received_at", sa.String(24), nullable=False),
        sa.Column("order_key", sa.String(110), nullable=False),
        sa.Column("clock", sa.String(10), nullable=False),
        sa.Column("person", sa.String(60), nullable=False),
        sa.Column("facts", sa.Text(), nullable=False),
        sa.Column("rules", sa.Integer(), nullable=False),
        sa.Column("content_hash", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("entry_pk")),
        sa.UniqueConstraint("position", name=op.f("entry_position_once")),
    )
    op.create_index("entry_in_order", "entry", ["counts_for", "order_key"])
    op.create_index("entry_about", "entry", ["subject", "order_key"])
    for column in ("target", "query", "gyle"):
        given = sa.text(f"{column} IS NOT NULL")
        op.create_index(
            f"entry_{column}", "entry", [column], sqlite_where=given, postgresql_where=given
        )
    op.create_table(
        "held",
        sa.Column("content_hash", sa.String(64), nullable=False),
        sa.Column("entry_id", sa.String(36), nullable=False),
        sa.Column("raw", sa.Text(), nullable=False),
        sa.Column("reason", sa.String(40), nullable=False),
        sa.Column("incident", sa.String(36), nullable=True),
        sa.Column("device", sa.String(36), nullable=False),
        sa.Column("received_at", sa.String(24), nullable=False),
        sa.Column("offset_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("content_hash", name=op.f("held_pk")),
    )
    op.create_table(
        "row",
        sa.Column("type", sa.String(10), nullable=False),
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("doc", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("type", "id", name=op.f("row_pk")),
        sa.UniqueConstraint("position", name=op.f("row_position_once")),
    )


def downgrade() -> None:
    for table in ("row", "held", "entry", "head"):
        op.drop_table(table)
