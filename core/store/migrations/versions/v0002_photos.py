"""Photos: whose each is, and in which file it lies."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"

COUNTED = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    """Make their table."""
    op.create_table(
        "photos",
        sa.Column("id", COUNTED, nullable=False),
        sa.Column("farm_id", sa.Integer(), nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("album", sa.Text(), nullable=True),
        sa.Column("file", sa.Text(), nullable=False),
        sa.Column("animal", sa.Text(), nullable=True),
        sa.Column("author", sa.Text(), nullable=False),
        sa.Column("sent_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["farm_id"], ["farms.id"], name="fk_photos_farms"),
        sa.PrimaryKeyConstraint("id", name="pk_photos"),
        sa.UniqueConstraint("farm_id", "chat", "number", name="uq_photos_farm_id_chat_number"),
    )
    op.create_index("ix_photos_farm_id_photos_animal", "photos", ["farm_id", "animal"])


def downgrade() -> None:
    """Forget whose they were; the files stay."""
    op.drop_table("photos")
