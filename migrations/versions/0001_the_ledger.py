"""The ledger: head, entry, held, row."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def text_up_to(length: int) -> sa.String:
    """Text that sorts by its code points, whatever the language of the database."""
    return sa.String(length).with_variant(sa.String(length, collation="C"), "postgresql")


def upgrade() -> None:
    op.create_table(
        "head",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("epoch", text_up_to(36), nullable=False),
        sa.Column("checksum", sa.BigInteger(), nullable=False),
        sa.Column("rules", sa.Integer(), nullable=False),
        sa.CheckConstraint("id = 1", name=op.f("head_only_one")),
        sa.PrimaryKeyConstraint("id", name=op.f("head_pk")),
    )
    op.create_table(
        "entry",
        sa.Column("id", text_up_to(36), nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("device", text_up_to(36), nullable=False),
        sa.Column("seq", sa.BigInteger(), nullable=False),
        sa.Column("kind", text_up_to(20), nullable=False),
        sa.Column("subject", text_up_to(36), nullable=False),
        sa.Column("counts_for", text_up_to(36), nullable=True),
        sa.Column("dropped_by", text_up_to(36), nullable=True),
        sa.Column("target", text_up_to(36), nullable=True),
        sa.Column("query", text_up_to(400), nullable=True),
        sa.Column("gyle", text_up_to(36), nullable=True),
        sa.Column("happened_at", text_up_to(24), nullable=False),
        sa.Column("effective_at", text_up_to(24), nullable=False),
        sa.Column("received_at", text_up_to(24), nullable=False),
        sa.Column("order_key", text_up_to(110), nullable=False),
        sa.Column("clock", text_up_to(10), nullable=False),
        sa.Column("person", text_up_to(60), nullable=False),
        sa.Column("facts", sa.Text(), nullable=False),
        sa.Column("rules", sa.Integer(), nullable=False),
        sa.Column("content_hash", text_up_to(64), nullable=False),
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
        sa.Column("content_hash", text_up_to(64), nullable=False),
        sa.Column("entry_id", text_up_to(36), nullable=False),
        sa.Column("raw", sa.Text(), nullable=False),
        sa.Column("reason", text_up_to(40), nullable=False),
        sa.Column("incident", text_up_to(36), nullable=True),
        sa.Column("device", text_up_to(36), nullable=False),
        sa.Column("received_at", text_up_to(24), nullable=False),
        sa.Column("offset_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("content_hash", name=op.f("held_pk")),
    )
    op.create_table(
        "row",
        sa.Column("type", text_up_to(10), nullable=False),
        sa.Column("id", text_up_to(36), nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("doc", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("type", "id", name=op.f("row_pk")),
        sa.UniqueConstraint("position", name=op.f("row_position_once")),
    )


def downgrade() -> None:
    for table in ("row", "held", "entry", "head"):
        op.drop_table(table)
