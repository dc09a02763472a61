"""The first form of the book: the journal, one table a kind of fact, members, and what waits to come in or go out."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

#: The columns of each kind of fact: name, how it is kept, `?` where it may be left unsaid.
KINDS = {
    "ailment": "who words, sign words, on day",
    "animal": "tag words, name words?, sex words?, breed words?, color words?, born day?, sire words?, "
    "dam words?, origin words?, price whole?, on day?",
    "color": "who words, color words, on day",
    "condition": "who words, score part, on day",
    "correct": "set words, who words?",
    "culled": "on day, who words?, litter_of words?, count whole?, live_grams whole?, dressed_grams whole?",
    "died": "on day, who words?, litter_of words?, count whole?, cause words?",
    "done": "chore words, on day, who words?, key words?",
    "fault": "who words, fault words, on day, disqualifies truth?",
    "feed_left": "grams whole, on day",
    "feed_bought": "on day, grams whole?, bags whole?, price whole?",
    "fostered": "from words, to words, count whole, on day",
    "given_away": "on day, who words?, litter_of words?, count whole?, to words?",
    "kindled": "doe words, on day, born whole?, alive whole?, dead whole?",
    "kit_count": "doe words, count whole, on day, age_days whole?",
    "kits_lost": "doe words, count whole, on day, cause words?",
    "for_sale": "on day, who words?, litter_of words?, count whole?, price whole?, until day?",
    "litter_colors": "doe words, colors words, on day",
    "litter_weighed": "doe words, grams whole, on day, count whole?, age_days whole?",
    "bred": "doe words, buck words, on day, falls whole?",
    "missed": "doe words, on day",
    "moved": "who words, cage words, on day",
    "nest_box": "doe words, change words, on day",
    "nest_manners": "doe words, sign words, on day",
    "palpated": "doe words, result words, on day",
    "planned": "who words, what words, on day?, until day?, with words?, reason words?",
    "query": "about words, who words?, with words?, scope words?, breed words?, until day?",
    "ration": "amount part, unit words, on day, who words?, scope words?",
    "refused": "doe words, on day, buck words?",
    "remark": "text words, on day, who words?",
    "remind": "text words, on day, time words?, who words?, key words?",
    "sold": "on day, who words?, litter_of words?, count whole?, price whole?, to words?",
    "scored": "who words, trait words, score part, on day",
    "setting": "name words, value words, breed words?",
    "shown": "who words, on day, placing words?",
    "skipped": "chore words, on day, who words?",
    "tagged": "tag words, on day, who words?, litter_of words?, sex words?, color words?",
    "temper": "who words, grade words, on day, sign words?",
    "treated": "who words, with words, on day, dose words?, withdrawal_days whole?",
    "undo": "who words?, about words?",
    "weaned": "doe words, count whole, on day, bucks whole?, does whole?",
    "weather": "what words, on day, celsius part?",
    "weighed": "who words, grams whole, on day",
}

KEPT = {"words": sa.Text, "whole": sa.Integer, "part": sa.Float, "day": sa.Date, "truth": sa.Boolean}
COUNTED = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
WHEN = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Make the tables of an empty book."""
    op.create_table(
        "farms",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_farms"),
        sa.UniqueConstraint("name", name="uq_farms_name"),
    )
    _people()
    _journal()
    for kind, columns in KINDS.items():
        _kind(kind, columns)
    _coming_in()
    _going_out()


def _words(name: str, *, maybe: bool = False) -> sa.Column[str]:
    return sa.Column(name, sa.Text(), nullable=maybe)


def _whole(name: str, *, maybe: bool = False) -> sa.Column[int]:
    return sa.Column(name, sa.Integer(), nullable=maybe)


def _when(name: str, *, maybe: bool = False) -> sa.Column[object]:
    return sa.Column(name, WHEN, nullable=maybe)


def _farms(table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(["farm_id"], ["farms.id"], name=f"fk_{table}_farms")


def _notes(table: str, column: str = "note_id", name: str = "notes") -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(["farm_id", column], ["notes.farm_id", "notes.id"], name=f"fk_{table}_{name}")


def _people() -> None:
    op.create_table(
        "members",
        _whole("farm_id"),
        _words("account"),
        _words("name"),
        _words("role"),
        _when("joined_at"),
        _farms("members"),
        sa.PrimaryKeyConstraint("farm_id", "account", name="pk_members"),
    )
    op.create_table(
        "setup_codes",
        _whole("farm_id"),
        _words("hash"),
        _words("role"),
        _when("expires_at"),
        _when("used_at", maybe=True),
        _farms("setup_codes"),
        sa.PrimaryKeyConstraint("farm_id", "hash", name="pk_setup_codes"),
    )
    op.create_table(
        "chats",
        _whole("farm_id"),
        _words("chat"),
        sa.Column("active", sa.Boolean(), nullable=False),
        _farms("chats"),
        sa.PrimaryKeyConstraint("farm_id", "chat", name="pk_chats"),
    )


def _journal() -> None:
    op.create_table(
        "notes",
        _whole("farm_id"),
        _whole("id"),
        _words("chat"),
        _words("number", maybe=True),
        sa.Column("edit", sa.BigInteger(), nullable=False),
        _words("author"),
        _when("sent_at"),
        _words("text"),
        _words("reply_to", maybe=True),
        _words("ask", maybe=True),
        _words("subject", maybe=True),
        _words("unread"),
        _words("reply"),
        _farms("notes"),
        sa.PrimaryKeyConstraint("farm_id", "id", name="pk_notes"),
        sa.UniqueConstraint("farm_id", "chat", "number", "edit", name="uq_notes_farm_id_chat_number_edit"),
    )
    op.create_table(
        "facts",
        _whole("farm_id"),
        _whole("note_id"),
        _whole("fact_index"),
        _words("kind"),
        _farms("facts"),
        _notes("facts"),
        sa.PrimaryKeyConstraint("farm_id", "note_id", "fact_index", name="pk_facts"),
    )
    op.create_table(
        "reversals",
        _whole("farm_id"),
        _whole("note_id"),
        _whole("place"),
        _whole("target_note"),
        _whole("target_index", maybe=True),
        _farms("reversals"),
        _notes("reversals"),
        _notes("reversals", "target_note", "target"),
        sa.PrimaryKeyConstraint("farm_id", "note_id", "place", name="pk_reversals"),
    )


def _kind(kind: str, columns: str) -> None:
    table = f"fact_{kind}"
    said = []
    for column in columns.split(", "):
        name, kept = column.split(" ")
        said.append(sa.Column(name, KEPT[kept.removesuffix("?")](), nullable=kept.endswith("?")))
    keys = ["farm_id", "note_id", "fact_index"]
    op.create_table(
        table,
        *[_whole(key) for key in keys],
        *said,
        sa.ForeignKeyConstraint(keys, [f"facts.{key}" for key in keys], name=f"fk_{table}_facts"),
        sa.PrimaryKeyConstraint(*keys, name=f"pk_{table}"),
    )


def _coming_in() -> None:
    op.create_table(
        "inbox",
        sa.Column("id", COUNTED, nullable=False),
        _whole("farm_id"),
        _words("bot_id"),
        sa.Column("update_id", sa.BigInteger(), nullable=False),
        _words("chat"),
        _words("raw"),
        _words("state"),
        _whole("tries"),
        _whole("handed_out"),
        _words("claimed_by", maybe=True),
        _when("claimed_until", maybe=True),
        _farms("inbox"),
        sa.PrimaryKeyConstraint("id", name="pk_inbox"),
        sa.UniqueConstraint("bot_id", "update_id", name="uq_inbox_bot_id_update_id"),
    )
    op.create_index("ix_inbox_farm_id_inbox_state_inbox_chat_inbox_update_id", "inbox", ["farm_id", "state", "chat", "update_id"])
    op.create_table(
        "buttons",
        _whole("farm_id"),
        _words("key"),
        _words("bundle"),
        _words("chat"),
        _words("person", maybe=True),
        _words("label"),
        _words("says"),
        _words("reply_to", maybe=True),
        _when("expires_at"),
        _when("used_at", maybe=True),
        _farms("buttons"),
        sa.PrimaryKeyConstraint("farm_id", "key", name="pk_buttons"),
    )


def _going_out() -> None:
    op.create_table(
        "outbox",
        sa.Column("id", COUNTED, nullable=False),
        _whole("farm_id"),
        _words("key"),
        _words("chat"),
        _words("payload"),
        _words("state"),
        _when("not_before"),
        _whole("tries"),
        _words("claimed_by", maybe=True),
        _when("claimed_until", maybe=True),
        _words("number", maybe=True),
        _farms("outbox"),
        sa.PrimaryKeyConstraint("id", name="pk_outbox"),
        sa.UniqueConstraint("farm_id", "key", name="uq_outbox_farm_id_key"),
    )
    op.create_index("ix_outbox_farm_id_outbox_state_outbox_chat_outbox_id", "outbox", ["farm_id", "state", "chat", "id"])
    op.create_table(
        "sent",
        _whole("farm_id"),
        _words("key"),
        sa.Column("day", sa.Date(), nullable=False),
        _when("put_at"),
        _farms("sent"),
        sa.PrimaryKeyConstraint("farm_id", "key", "day", name="pk_sent"),
    )


def downgrade() -> None:
    """Leave an empty database."""
    for table in ("sent", "outbox", "buttons", "inbox"):
        op.drop_table(table)
    for kind in KINDS:
        op.drop_table(f"fact_{kind}")
    for table in ("reversals", "facts", "notes", "chats", "setup_codes", "members", "farms"):
        op.drop_table(table)
