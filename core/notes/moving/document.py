"""The whole book as one JSON object, and the JSON Schema that says what may stand in it."""

from __future__ import annotations

import json
import sys
from datetime import UTC
from typing import Any, Final

from core.notes.as_notes import TALK
from core.notes.fact import Fact, field_names, to_json, value_to_json
from core.notes.kind import Kind
from core.notes.kinds import KINDS
from core.notes.moving.own_tables import LEFT_OUT, own_tables, told_entries
from core.notes.moving.table import Cell, Table
from core.notes.replay import Book

FORM: Final = "haynote book"
VERSION: Final = 1

#: How each type of field is told to who reads the schema.
_TYPES: Final[dict[str, dict[str, Any]]] = {
    "str": {"type": "string"},
    "Tag": {"type": "string"},
    "Sex": {"enum": ["buck", "doe"]},
    "int": {"type": "integer"},
    "float": {"type": "number"},
    "bool": {"type": "boolean"},
    "date": {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
    "Cents": {"type": "string", "pattern": r"^-?\d+\.\d{2}$"},
    "ColorCounts": {"type": "object", "additionalProperties": {"type": "integer"}},
    "SettingValue": {"type": ["string", "number"]},
}
_MOMENT: Final = {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}"}


def document(book: Book, farm: str) -> dict[str, Any]:
    """The book: the facts that stand as the contract prints them, what they add up to, and the notes as typed."""
    by_name = {table.name: table for table in own_tables(book, farm)}
    return {
        "form": FORM,
        "version": VERSION,
        "farm": farm,
        "not_here": list(LEFT_OUT),
        "facts": [_told(order, entry.note, entry.fact) for order, entry in enumerate(told_entries(book), start=1)],
        **{name: _objects(by_name[name]) for name in ("animals", "matings", "litters", "notes")},
    }


def _told(order: int, note: Any, fact: Fact) -> dict[str, Any]:
    """A fact with where it came from."""
    keys = {"order": order, "told_at": note.at.astimezone(UTC).isoformat(), "told_by": note.author, "note": note.id}
    return keys | {"fact": to_json(fact)}


def _objects(table: Table) -> list[dict[str, Cell]]:
    return [{name: value_to_json(cell) for name, cell in zip(table.columns, row, strict=True)} for row in table.rows]


def schema() -> dict[str, Any]:
    """JSON Schema (draft 7) of the document."""
    keys = {"order": {"type": "integer"}, "told_at": _MOMENT, "told_by": {"type": "string"}, "note": {"type": "integer"}}
    facts = {"anyOf": [_fact(kind) for kind in KINDS if kind.name not in TALK]}
    told = {"type": "object", "properties": keys | {"fact": facts}, "required": [*keys, "fact"], "additionalProperties": False}
    rows = {"type": "array", "items": {"type": "object", "additionalProperties": {"type": ["string", "number", "boolean", "null"]}}}
    properties = {
        "form": {"const": FORM},
        "version": {"const": VERSION},
        "farm": {"type": "string"},
        "not_here": {"type": "array", "items": {"type": "string"}},
        "facts": {"type": "array", "items": told},
        **dict.fromkeys(("animals", "matings", "litters", "notes"), rows),
    }
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "A farm's book, as 'haynote export --json' writes it",
        "type": "object",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def _fact(kind: Kind) -> dict[str, Any]:
    """The object of a kind's facts."""
    fields = kind.fact.__dataclass_fields__
    types = {names.json: str(fields[names.code].type) for names in field_names(kind.fact)}
    needed = ["kind", *(name for name, of_type in types.items() if not of_type.endswith("| None"))]
    told = {name: _TYPES[of_type.removesuffix(" | None")] for name, of_type in types.items()}
    properties = {"kind": {"const": kind.name}, **told}
    return {"type": "object", "properties": properties, "required": needed, "additionalProperties": False}


def page() -> str:
    """The schema as it is published."""
    return json.dumps(schema(), indent=1, ensure_ascii=False) + "\n"


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
