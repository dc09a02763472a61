"""Is the book sound? Each check names what it found in words that say where to look."""

from __future__ import annotations

from collections.abc import Iterator

from sqlalchemy import Connection, Table, func, select
from sqlalchemy.exc import DatabaseError

from core.store.fact_tables import FACT_TABLES
from core.store.tables import facts, notes, reversals


def troubles(connection: Connection, farm: int) -> tuple[str, ...]:
    """Everything that is wrong with this farm's journal; empty where it is sound. A damaged file is not looked at further."""
    try:
        return tuple(_broken_pages(connection)) or tuple(_broken_journal(connection, farm))
    except DatabaseError as error:
        return (f"The file is damaged: {error.orig}.",)


def _broken_pages(connection: Connection) -> Iterator[str]:
    """What SQLite says of its own file."""
    if connection.dialect.name == "sqlite":
        for row in connection.exec_driver_sql("PRAGMA integrity_check"):
            if row[0] != "ok":
                yield f"The file is damaged: {row[0]}."


def _broken_journal(connection: Connection, farm: int) -> Iterator[str]:
    """What does not fit together."""
    yield from _strays(connection)
    yield from _gaps(connection, farm)
    yield from _facts_without_notes(connection, farm)
    yield from _facts_without_rows(connection, farm)
    yield from _reversals(connection, farm)


def _strays(connection: Connection) -> Iterator[str]:
    """Rows whose owner is gone. PostgreSQL lets none arise."""
    if connection.dialect.name == "sqlite":
        for row in connection.exec_driver_sql("PRAGMA foreign_key_check"):
            yield f"Row {row[1] or '?'} of {row[0]} belongs to nothing in {row[2]}."


def _gaps(connection: Connection, farm: int) -> Iterator[str]:
    """Notes are numbered from one without a gap: a missing one was taken out by other hands."""
    mine = notes.c.farm_id == farm
    count, lowest, highest = connection.execute(select(func.count(), func.min(notes.c.id), func.max(notes.c.id)).where(mine)).one()
    if count and (lowest, highest) != (1, count):
        yield f"{count} notes are there, but they are numbered {lowest} to {highest}: some are missing."


def _facts_without_notes(connection: Connection, farm: int) -> Iterator[str]:
    """Facts of no note, and notes whose facts are not numbered from nought on."""
    here = (notes.c.farm_id == farm) & (notes.c.id == facts.c.note_id)
    alone = select(facts.c.note_id, facts.c.fact_index).where(facts.c.farm_id == farm, ~select(notes.c.id).where(here).exists())
    for row in connection.execute(alone):
        yield f"Fact {row.fact_index} of note {row.note_id} has no note."
    told = select(facts.c.note_id, func.count().label("count"), func.max(facts.c.fact_index).label("last"))
    grouped = told.where(facts.c.farm_id == farm).group_by(facts.c.note_id)
    for row in connection.execute(grouped.having(func.max(facts.c.fact_index) != func.count() - 1)):
        yield f"Note {row.note_id} has lost some of its facts."


def _facts_without_rows(connection: Connection, farm: int) -> Iterator[str]:
    """Every fact stands in exactly one table: its kind's."""
    kinds = connection.scalars(select(facts.c.kind).where(facts.c.farm_id == farm).distinct()).all()
    for kind in sorted(set(kinds) - set(FACT_TABLES)):
        yield f"There are facts of the kind {kind}, which this program doesn't know."
    for kind, table in FACT_TABLES.items():
        yield from _unmatched(connection, farm, kind, table)


def _unmatched(connection: Connection, farm: int, kind: str, table: Table) -> Iterator[str]:
    """Facts of the kind that lack their row, and rows that lack their fact."""
    listed = select(facts.c.note_id, facts.c.fact_index).where(facts.c.farm_id == farm, facts.c.kind == kind)
    held = select(table.c.note_id, table.c.fact_index).where(table.c.farm_id == farm)
    for note, index in connection.execute(listed.except_(held)):
        yield f"Fact {index} of note {note} ({kind}) has lost what it says."
    for note, index in connection.execute(held.except_(listed)):
        yield f"Table {table.name} holds fact {index} of note {note}, which is not listed."


def _reversals(connection: Connection, farm: int) -> Iterator[str]:
    """A note can only take back what was told before it."""
    mine = reversals.c.farm_id == farm
    for row in connection.execute(select(reversals).where(mine, reversals.c.target_note >= reversals.c.note_id)):
        yield f"Note {row.note_id} takes back note {row.target_note}, which came later."
