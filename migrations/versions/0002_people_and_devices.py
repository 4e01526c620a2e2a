"""People and devices: person, device, device_person, invite, audit; what is decided of the held."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def text_up_to(length: int) -> sa.String:
    """Text that sorts by its code points on every database."""
    return sa.String(length).with_variant(sa.String(length, collation="C"), "postgresql")


def upgrade() -> None:
    op.create_table(
        "person",
        sa.Column("id", text_up_to(36), nullable=False),
        sa.Column("name", sa.String(60), nullable=False),
        sa.Column("name_key", sa.String(180), nullable=False),
        sa.Column("role", sa.String(10), nullable=False),
        sa.Column("passphrase", sa.String(200), nullable=True),
        sa.Column("pin", sa.Text(), nullable=True),
        sa.Column("created_at", text_up_to(24), nullable=False),
        sa.Column("retired_at", text_up_to(24), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("person_pk")),
        sa.UniqueConstraint("name", name=op.f("person_name_once")),
        sa.UniqueConstraint("name_key", name=op.f("person_name_key_once")),
    )
    op.create_table(
        "device",
        sa.Column("id", text_up_to(36), nullable=False),
        sa.Column("name", sa.String(60), nullable=False),
        sa.Column("secret", sa.String(64), nullable=True),
        sa.Column("person", text_up_to(36), nullable=False),
        sa.Column("paired_at", text_up_to(24), nullable=False),
        sa.Column("last_seen_at", text_up_to(24), nullable=False),
        sa.Column("waiting", sa.Integer(), nullable=False),
        sa.Column("oldest_waiting_at", text_up_to(24), nullable=True),
        sa.Column("app", sa.String(60), nullable=False),
        sa.Column("stepped_up_until", text_up_to(24), nullable=True),
        sa.Column("revoked_at", text_up_to(24), nullable=True),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name="device_person_in_hand"),
        sa.PrimaryKeyConstraint("id", name=op.f("device_pk")),
        sa.UniqueConstraint("secret", name=op.f("device_secret_once")),
    )
    op.create_table(
        "device_person",
        sa.Column("device", text_up_to(36), nullable=False),
        sa.Column("person", text_up_to(36), nullable=False),
        sa.Column("proved_at", text_up_to(24), nullable=False),
        sa.ForeignKeyConstraint(["device"], ["device.id"], name="device_person_on"),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name="device_person_who"),
        sa.PrimaryKeyConstraint("device", "person", name=op.f("device_person_pk")),
    )
    op.create_table(
        "invite",
        sa.Column("token", sa.String(64), nullable=False),
        sa.Column("person", text_up_to(36), nullable=True),
        sa.Column("expires_at", text_up_to(24), nullable=False),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name="invite_for"),
        sa.PrimaryKeyConstraint("token", name=op.f("invite_pk")),
    )
    op.create_table(
        "audit",
        sa.Column(
            "id",
            sa.BigInteger().with_variant(sa.Integer(), "sqlite"),
            autoincrement=True,
            nullable=False,
        ),
        sa.Column("at", text_up_to(24), nullable=False),
        sa.Column("person", sa.String(60), nullable=True),
        sa.Column("device", text_up_to(36), nullable=True),
        sa.Column("what", sa.String(40), nullable=False),
        sa.Column("about", sa.String(200), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("audit_pk")),
    )
    op.add_column("held", sa.Column("decision", sa.String(10), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("held") as held:
        held.drop_column("decision")
    for table in ("audit", "invite", "device_person", "device", "person"):
        op.drop_table(table)
