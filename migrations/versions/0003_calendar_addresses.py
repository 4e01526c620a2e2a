"""Secret addresses at which calendar programs read the jobs due: calendar_address."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    person = sa.String(36).with_variant(sa.String(36, collation="C"), "postgresql")
    made_at = sa.String(24).with_variant(sa.String(24, collation="C"), "postgresql")
    op.create_table(
        "calendar_address",
        sa.Column("person", person, nullable=False),
        sa.Column("secret", sa.String(64), nullable=False),
        sa.Column("made_at", made_at, nullable=False),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name="calendar_address_of"),
        sa.PrimaryKeyConstraint("person", name=op.f("calendar_address_pk")),
        sa.UniqueConstraint("secret", name=op.f("calendar_address_secret_once")),
    )


def downgrade() -> None:
    op.drop_table("calendar_address")
