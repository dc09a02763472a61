"""Leaving: which farm is to be deleted, and from when on it may be."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Make its table."""
    op.create_table(
        "leaving",
        sa.Column("farm_id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("goes_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["farm_id"], ["farms.id"], name="fk_leaving_farms"),
        sa.PrimaryKeyConstraint("farm_id", name="pk_leaving"),
    )


def downgrade() -> None:
    """Forget who wanted to go; nobody goes."""
    op.drop_table("leaving")
