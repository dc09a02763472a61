"""Many farms behind one bot: which farm a chat means, when each farm has to be looked at again, and indexes to find things across them."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"

#: Before any moment of a book: look at once.
LONG_AGO = "1970-01-01 00:00:00.000000"

#: index -> its table and columns
INDEXES = {
    "ix_members_account": ("members", "account"),
    "ix_setup_codes_hash": ("setup_codes", "hash"),
    "ix_buttons_key": ("buttons", "key"),
    "ix_outbox_chat_outbox_number": ("outbox", "chat", "number"),
}

#: index of the rows in one state -> its table, that state and its columns
WAITING = {
    "ix_inbox_pending_bot_id_chat_update_id": ("inbox", "pending", "bot_id", "chat", "update_id"),
    "ix_inbox_pending_update_id": ("inbox", "pending", "update_id"),
    "ix_outbox_waiting_chat_id": ("outbox", "waiting", "chat", "id"),
    "ix_outbox_waiting_id": ("outbox", "waiting", "id"),
}


def upgrade() -> None:
    """Make the tables and the indexes. Every farm there is will be looked at once, at the next occasion."""
    op.create_table(
        "seats",
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("farm_id", sa.Integer(), autoincrement=False, nullable=False),
        sa.ForeignKeyConstraint(["farm_id"], ["farms.id"], name="fk_seats_farms"),
        sa.PrimaryKeyConstraint("chat", name="pk_seats"),
    )
    op.create_table(
        "looks",
        sa.Column("farm_id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["farm_id"], ["farms.id"], name="fk_looks_farms"),
        sa.PrimaryKeyConstraint("farm_id", name="pk_looks"),
    )
    op.create_index("ix_looks_at", "looks", ["at"])
    offset = "+00" if op.get_bind().dialect.name == "postgresql" else ""
    op.execute(f"insert into looks (farm_id, at) select id, '{LONG_AGO}{offset}' from farms")  # noqa: S608 - nothing from outside
    for name, (table, *columns) in INDEXES.items():
        op.create_index(name, table, columns)
    for name, (table, state, *columns) in WAITING.items():
        only = sa.text(f"state = '{state}'")
        op.create_index(name, table, columns, postgresql_where=only, sqlite_where=only)


def downgrade() -> None:
    """Forget who meant which farm, and look at all of them."""
    for name, (table, *_) in (INDEXES | WAITING).items():
        op.drop_index(name, table)
    op.drop_table("looks")
    op.drop_table("seats")
