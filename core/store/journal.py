"""The journal in the database: notes go in whole, with their facts and what they take back, and come out as they went in."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import fields
from typing import Any

from sqlalchemy import Connection, Row, func, insert, select

from core.notes.fact import Fact
from core.notes.journal import Note, Target
from core.notes.reading import ReplyTo
from core.store import looking
from core.store.asking import ask_from_json, ask_to_json
from core.store.fact_tables import FACT_TABLES, FACT_TYPES
from core.store.tables import facts, farms, notes, reversals

Place = tuple[int, int]  # note, index


def take_farm(connection: Connection, farm: int) -> None:
    """Let nobody else write in this farm's journal until the transaction ends. SQLite has done so already.

    What comes in and goes out meanwhile is not held up: its rows only need the farm to stay there.
    """
    connection.execute(select(farms.c.id).where(farms.c.id == farm).with_for_update(key_share=True)).one()


def last_id(connection: Connection, farm: int) -> int:
    """The number of the newest note; 0 for an empty journal."""
    return connection.scalar(select(func.max(notes.c.id)).where(notes.c.farm_id == farm)) or 0


def append(connection: Connection, farm: int, note: Note) -> None:
    """Put a note in, with its facts and its reversals. IntegrityError where its number or its message is there already."""
    connection.execute(insert(notes).values(farm_id=farm, **_note_values(note)))
    looking.look_at(connection, farm)
    keys = [{"farm_id": farm, "note_id": note.id, "fact_index": index, "kind": fact.kind} for index, fact in enumerate(note.facts)]
    if keys:
        connection.execute(insert(facts), keys)
    by_kind: dict[str, list[dict[str, Any]]] = defaultdict(list)
    for key, fact in zip(keys, note.facts, strict=True):
        said = {field.name: getattr(fact, field.name) for field in fields(fact)}
        by_kind[fact.kind].append({name: value for name, value in key.items() if name != "kind"} | said)
    for kind, rows in by_kind.items():
        connection.execute(insert(FACT_TABLES[kind]), rows)
    for place, target in enumerate(note.reverses):
        aimed = {"target_note": target.note, "target_index": target.index}
        connection.execute(insert(reversals).values(farm_id=farm, note_id=note.id, place=place, **aimed))


def _note_values(note: Note) -> Mapping[str, Any]:
    """A note's own columns."""
    answers = note.reply_to
    return {
        "id": note.id,
        "chat": note.chat,
        "number": note.number or None,
        "edit": note.edit,
        "author": note.author,
        "sent_at": note.at,
        "text": note.text,
        "reply_to": None if answers is None else {"chore": answers.chore, "who": answers.who, "key": answers.key},
        "ask": None if note.ask is None else ask_to_json(note.ask),
        "subject": note.subject,
        "unread": note.unread,
        "reply": note.reply,
    }


def load(connection: Connection, farm: int, after: int = 0) -> tuple[Note, ...]:
    """The farm's notes numbered above `after`, in order."""
    mine = (notes.c.farm_id == farm) & (notes.c.id > after)
    rows = connection.execute(select(notes).where(mine).order_by(notes.c.id)).all()
    if not rows:
        return ()
    said = _facts(connection, farm, after)
    back = _reversals(connection, farm, after)
    return tuple(_note(row, said[row.id], back[row.id]) for row in rows)


def note_sent(connection: Connection, farm: int, chat: str, number: str) -> int | None:
    """The note of that message, as it was last edited; None where there is none."""
    this = (notes.c.farm_id == farm) & (notes.c.chat == chat) & (notes.c.number == number)
    found: int | None = connection.scalar(select(func.max(notes.c.id)).where(this))
    return found


def _note(row: Row[Any], said: Mapping[int, Fact], back: Iterable[Target]) -> Note:
    """The note of a row."""
    return Note(
        id=row.id,
        text=row.text,
        at=row.sent_at,
        author=row.author,
        chat=row.chat,
        number=row.number or "",
        edit=row.edit,
        reply_to=None if row.reply_to is None else ReplyTo(**row.reply_to),
        facts=tuple(said[index] for index in sorted(said)),
        reverses=tuple(back),
        ask=None if row.ask is None else ask_from_json(row.ask),
        subject=row.subject,
        unread=row.unread,
        reply=row.reply,
    )


def _facts(connection: Connection, farm: int, after: int) -> Mapping[int, dict[int, Fact]]:
    """The facts of each note, by their place in it."""
    mine = (facts.c.farm_id == farm) & (facts.c.note_id > after)
    kinds = connection.scalars(select(facts.c.kind).where(mine).distinct()).all()
    found: dict[int, dict[int, Fact]] = defaultdict(dict)
    for kind in kinds:
        table = FACT_TABLES[kind]
        names = [field.name for field in fields(FACT_TYPES[kind])]
        columns = [table.c.note_id, table.c.fact_index, *[table.c[name] for name in names]]
        those = (table.c.farm_id == farm) & (table.c.note_id > after)
        for note, index, *values in connection.execute(select(*columns).where(those)):
            found[note][index] = FACT_TYPES[kind](**dict(zip(names, values, strict=True)))
    return found


def _reversals(connection: Connection, farm: int, after: int) -> Mapping[int, list[Target]]:
    """What each note takes back, in its order."""
    mine = (reversals.c.farm_id == farm) & (reversals.c.note_id > after)
    found: dict[int, list[Target]] = defaultdict(list)
    for row in connection.execute(select(reversals).where(mine).order_by(reversals.c.note_id, reversals.c.place)):
        found[row.note_id].append(Target(row.target_note, row.target_index))
    return found
