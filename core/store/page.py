"""The page of the database: every table, what it is for, and its columns. Print it with `python -m core.store.page > docs/reference/database.md`."""

from __future__ import annotations

import sys

from sqlalchemy import Column, Table, UniqueConstraint
from sqlalchemy.dialects import sqlite

from core.store.fact_tables import FACT_TABLES, FACT_TYPES
from core.store.tables import metadata

#: table -> what a row of it is
ABOUT = {
    "farms": "A farm. Every other row belongs to one.",
    "members": "Somebody who may speak to the farm's bot, and as what.",
    "setup_codes": "A set-up code or an invitation, hashed: it lets one person in, once, until it expires.",
    "chats": "A chat that the farm speaks in; reminders go to the active ones.",
    "notes": "A message exactly as it was typed, with the question it left open, what of it could not be read, and the reply. Append only.",
    "facts": "What a note became: which fact, of which kind. The fact itself lies in its kind's own table.",
    "reversals": "What a note takes back: a whole earlier note, or one fact of it. So undo, edits and corrections can be taken back too.",
    "inbox": "An update of the chat service, kept before it is confirmed, worked off in each chat's order.",
    "outbox": "A message that goes out. Its key is its own for ever: it is put here once, claimed, sent, marked.",
    "sent": "A reminder or digest that was said, and for which day: the only memory of reminders.",
    "buttons": "A button under a message: an opaque key, what pressing it says, and until when.",
    "photos": "A photo that joined an animal's card. The file is named by the hash of what it holds.",
    "leaving": "A farm that is to be deleted, and from when on it may be.",
    "seats": "Where one bot speaks for many farms: the farm that is meant in a chat.",
    "looks": "When a farm has to be looked at again: before that nothing falls due there unless somebody writes.",
}


def page() -> str:
    """The whole page, in Markdown."""
    own = [table for table in metadata.sorted_tables if table.name in ABOUT]
    lines = [
        "# The database",
        "",
        "<!-- Made by `python -m core.store.page`: change core/store, not this page. -->",
        "",
        "The same tables on SQLite and on PostgreSQL. Moments are UTC, grams and cents are whole numbers. Alembic brings an older book up to this form when",
        "it is opened; the steps are in `core/store/migrations`. Your book is yours to read with any SQLite program; write to it through Haynote only.",
    ]
    for table in own:
        lines += ["", f"## {table.name}", "", ABOUT[table.name], "", *_columns(table), *_unique(table)]
    lines += [
        "",
        "## One table a kind of fact",
        "",
        "Each begins with `farm_id`, `note_id` and `fact_index`, which name a row of `facts`.",
        "",
    ]
    lines += [
        f"- `{FACT_TABLES[kind].name}`: {', '.join(_told(column) for column in _said(FACT_TABLES[kind]))}" for kind in sorted(FACT_TYPES)
    ]
    return "\n".join(lines) + "\n"


def _columns(table: Table) -> list[str]:
    rows = [
        f"| {_name(column)} | {_type(column)} | {'yes' if column.nullable else 'no'} | {_leads_to(column)} |" for column in table.columns
    ]
    return ["| column | type | may be empty | names a row of |", "|---|---|---|---|", *rows]


def _name(column: Column[object]) -> str:
    return f"**{column.name}**" if column.primary_key else column.name


def _type(column: Column[object]) -> str:
    return column.type.compile(dialect=sqlite.dialect()).lower()


def _leads_to(column: Column[object]) -> str:
    return ", ".join(sorted({key.column.table.name for key in column.foreign_keys}))


def _unique(table: Table) -> list[str]:
    once = sorted(", ".join(each.columns.keys()) for each in table.constraints if isinstance(each, UniqueConstraint))
    return ["", *(f"Each once: {columns}." for columns in once)] if once else []


def _said(table: Table) -> list[Column[object]]:
    return [column for column in table.columns if not column.primary_key]


def _told(column: Column[object]) -> str:
    return f"{column.name} {_type(column)}{'' if column.nullable else ' (always)'}"


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
