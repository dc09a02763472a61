"""One table a kind of fact. Its columns are the fact's fields, by their names in the contract."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from sqlalchemy import Boolean, Column, Date, Float, ForeignKeyConstraint, Integer, Table, Text
from sqlalchemy.types import TypeEngine

from core.notes.fact import ColorCounts, Fact, Fields
from core.notes.kinds import KINDS
from core.store.columns import JsonText, Money, PairsText
from core.store.tables import metadata

#: The columns that say which fact a row is; the fact's fields come after them.
KEYS = ("farm_id", "note_id", "fact_index")

#: How each type of field is kept, by its name in the dataclass.
KEPT: dict[str, TypeEngine[Any]] = {
    "int": Integer(),
    "float": Float(),
    "bool": Boolean(),
    "date": Date(),
    "str": Text(),
    "Tag": Text(),
    "Sex": Text(),
    "Cents": Money(),
    "SettingValue": JsonText(),
    "ColorCounts": PairsText(ColorCounts),
    "Fields": PairsText(Fields),
}


def _column(name: str, type_name: str) -> Column[Any]:
    """The column of a field. KeyError for a type that nobody said how to keep."""
    kept = KEPT[type_name.removesuffix(" | None")]
    return Column(name.rstrip("_"), kept, key=name, nullable=type_name.endswith("| None"))


def _table(fact: type[Fact]) -> Table:
    """The table of a kind."""
    keys = [Column(name, Integer, primary_key=True, nullable=False, autoincrement=False) for name in KEYS]
    said = [_column(field.name, str(field.type)) for field in fields(fact)]
    whole = ForeignKeyConstraint(KEYS, [f"facts.{name}" for name in KEYS])
    return Table(f"fact_{fact.kind}", metadata, *keys, *said, whole)


FACT_TYPES: dict[str, type[Fact]] = {kind.name: kind.fact for kind in KINDS}
FACT_TABLES: dict[str, Table] = {name: _table(fact) for name, fact in FACT_TYPES.items()}
