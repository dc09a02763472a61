"""The tables of the book. Every row but a farm's own belongs to a farm, and every query names it."""

from __future__ import annotations

from typing import Any

from sqlalchemy import (
    BigInteger,
    BindParameter,
    Boolean,
    Column,
    Date,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
    literal,
)

from core.store.columns import JsonText, Moment

#: Constraints have names from the first day, so that a later migration can speak of them on any database.
NAMES = {
    "ix": "ix_%(column_0_N_label)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}
metadata = MetaData(naming_convention=NAMES)

#: A number that the database counts up itself.
COUNTED = BigInteger().with_variant(Integer(), "sqlite")


def _farm(*, key: bool = False) -> Column[int]:
    """The farm that a row belongs to."""
    return Column("farm_id", Integer, ForeignKey("farms.id"), primary_key=key, nullable=False, autoincrement=False)


def _said(name: str, *, key: bool = False, default: str | None = None) -> Column[str]:
    """Words that are always there."""
    return Column(name, Text, primary_key=key, nullable=False, default=default)


def _number(name: str, *, key: bool = False, default: int | None = None) -> Column[int]:
    """A whole number that is always there."""
    return Column(name, Integer, primary_key=key, nullable=False, autoincrement=False, default=default)


def _unsaid(name: str, kind: Any) -> Column[Any]:
    """A column that may be empty."""
    return Column(name, kind, nullable=True)


#: The states of rows that wait in the inbox and in the outbox, written out in each query: only so are the indexes of these rows used.
PENDING = literal("pending", literal_execute=True)
WAITING = literal("waiting", literal_execute=True)


def _waiting_rows(table: Table, state: BindParameter[str], *columns: str) -> None:
    """An index of the rows that still wait alone: it stays small however much was worked off before."""
    waits = table.c.state == state
    name = f"ix_{table.name}_{state.value}_{'_'.join(columns)}"
    Index(name, *(table.c[column] for column in columns), postgresql_where=waits, sqlite_where=waits)


farms = Table("farms", metadata, Column("id", Integer, primary_key=True), Column("name", Text, nullable=False, unique=True))

members = Table(
    "members",
    metadata,
    _farm(key=True),
    _said("account", key=True),
    _said("name"),
    _said("role"),
    Column("joined_at", Moment, nullable=False),
    Index(None, "account"),
)

setup_codes = Table(
    "setup_codes",
    metadata,
    _farm(key=True),
    _said("hash", key=True),
    _said("role"),
    Column("expires_at", Moment, nullable=False),
    _unsaid("used_at", Moment),
    Index(None, "hash"),
)

chats = Table(
    "chats",
    metadata,
    _farm(key=True),
    _said("chat", key=True),
    Column("active", Boolean, nullable=False),
)

notes = Table(
    "notes",
    metadata,
    _farm(key=True),
    _number("id", key=True),
    _said("chat"),
    _unsaid("number", Text),
    Column("edit", BigInteger, nullable=False),
    _said("author"),
    Column("sent_at", Moment, nullable=False),
    _said("text"),
    _unsaid("reply_to", JsonText),
    _unsaid("ask", JsonText),
    _unsaid("subject", Text),
    _said("unread"),
    _said("reply"),
    UniqueConstraint("farm_id", "chat", "number", "edit"),
)

facts = Table(
    "facts",
    metadata,
    _farm(key=True),
    _number("note_id", key=True),
    _number("fact_index", key=True),
    _said("kind"),
    ForeignKeyConstraint(["farm_id", "note_id"], ["notes.farm_id", "notes.id"]),
)

reversals = Table(
    "reversals",
    metadata,
    _farm(key=True),
    _number("note_id", key=True),
    _number("place", key=True),
    _number("target_note"),
    _unsaid("target_index", Integer),
    ForeignKeyConstraint(["farm_id", "note_id"], ["notes.farm_id", "notes.id"]),
    ForeignKeyConstraint(["farm_id", "target_note"], ["notes.farm_id", "notes.id"], name="fk_reversals_target"),
)

inbox = Table(
    "inbox",
    metadata,
    Column("id", COUNTED, primary_key=True),
    _farm(),
    _said("bot_id"),
    Column("update_id", BigInteger, nullable=False),
    _said("chat"),
    _said("raw"),
    _said("state"),
    _number("tries", default=0),
    _number("handed_out", default=0),
    _unsaid("claimed_by", Text),
    _unsaid("claimed_until", Moment),
    UniqueConstraint("bot_id", "update_id"),
    Index(None, "farm_id", "state", "chat", "update_id"),
)
_waiting_rows(inbox, PENDING, "bot_id", "chat", "update_id")
_waiting_rows(inbox, PENDING, "update_id")

outbox = Table(
    "outbox",
    metadata,
    Column("id", COUNTED, primary_key=True),
    _farm(),
    _said("key"),
    _said("chat"),
    Column("payload", JsonText, nullable=False),
    _said("state"),
    Column("not_before", Moment, nullable=False),
    _number("tries", default=0),
    _unsaid("claimed_by", Text),
    _unsaid("claimed_until", Moment),
    _unsaid("number", Text),
    UniqueConstraint("farm_id", "key"),
    Index(None, "farm_id", "state", "chat", "id"),
    Index(None, "chat", "number"),
)
_waiting_rows(outbox, WAITING, "chat", "id")
_waiting_rows(outbox, WAITING, "id")

sent = Table(
    "sent",
    metadata,
    _farm(key=True),
    _said("key", key=True),
    Column("day", Date, primary_key=True),
    Column("put_at", Moment, nullable=False),
)

buttons = Table(
    "buttons",
    metadata,
    _farm(key=True),
    _said("key", key=True),
    _said("bundle"),
    _said("chat"),
    _unsaid("person", Text),
    _said("label"),
    _said("says"),
    _unsaid("reply_to", JsonText),
    Column("expires_at", Moment, nullable=False),
    _unsaid("used_at", Moment),
    Index(None, "key"),
)

photos = Table(
    "photos",
    metadata,
    Column("id", COUNTED, primary_key=True),
    _farm(),
    _said("chat"),
    _said("number"),
    _unsaid("album", Text),
    _said("file"),
    _unsaid("animal", Text),
    _said("author"),
    Column("sent_at", Moment, nullable=False),
    UniqueConstraint("farm_id", "chat", "number"),
    Index(None, "farm_id", "animal"),
)

leaving = Table("leaving", metadata, _farm(key=True), Column("goes_at", Moment, nullable=False))

#: Where one bot speaks for many farms: the farm that is meant in a chat.
seats = Table("seats", metadata, _said("chat", key=True), _farm())

#: The moment from which a farm has to be looked at again: before it nothing falls due there unless somebody writes.
looks = Table("looks", metadata, _farm(key=True), Column("at", Moment, nullable=False), Index(None, "at"))
