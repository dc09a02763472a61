"""What all facts share: the types of their fields, and their way to JSON and back.

A fact is a frozen dataclass of one kind (`core/notes/kinds`). In JSON its fields stand under their own names, `from_` and
`with_` without the underscore; absent means not said; dates are ISO; money is a string with two decimals.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date
from functools import cache
from typing import Any, ClassVar, Final, Literal, Protocol

Tag = str  # the tag as the herd book spells it
Sex = Literal["buck", "doe"]
Json = Any  # what json.loads gives: checked field by field where it is read


class Cents(int):
    """Money in hundredths."""


class ColorCounts(tuple[tuple[str, int], ...]):
    """How many kits of each colour, in the order said; hashable."""

    __slots__ = ()


class Fields(tuple[tuple[str, Json], ...]):
    """Names of fields with their new values in JSON form; hashable."""

    __slots__ = ()


PLAIN: Final = frozenset({str, int, float, bool})  # types whose values JSON has as they are
SettingValue = str | int | float  # grams and counts are whole numbers, money a string with two decimals, dates ISO


class Fact(Protocol):
    """Any of the facts; `kind` is its name in the contract."""

    kind: ClassVar[str]
    __dataclass_fields__: ClassVar[dict[str, Any]]


@dataclass(frozen=True, slots=True)
class FieldNames:
    """A field as the code and as JSON name it."""

    code: str
    json: str


def field_names(fact: type[Fact] | Fact) -> tuple[FieldNames, ...]:
    """The fact's fields in order."""
    return _names_of(fact if isinstance(fact, type) else type(fact))


@cache
def _names_of(fact: type[Fact]) -> tuple[FieldNames, ...]:
    return tuple(FieldNames(field.name, field.name.rstrip("_")) for field in fields(fact))


def to_json(fact: Fact) -> dict[str, Json]:
    """The fact as the contract prints it: `kind` first, unsaid fields left out."""
    said: dict[str, Json] = {"kind": fact.kind}
    for names in field_names(fact):
        value = getattr(fact, names.code)
        if value is not None:
            said[names.json] = value if type(value) in PLAIN else value_to_json(value)
    return said


def value_to_json(value: Json) -> Json:
    """A field's value as JSON has it."""
    match value:
        case Cents():
            return f"{value // 100}.{value % 100:02d}"
        case ColorCounts() | Fields():
            return dict(value)
        case date():
            return value.isoformat()
        case _:
            return value


def from_json(fact_type: type[Fact], said: Mapping[str, Json]) -> Fact:
    """The fact that `to_json` printed. Raises TypeError where a needed field is missing or a name is unknown."""
    by_json = {names.json: names.code for names in field_names(fact_type)}
    types = {field.name: str(field.type) for field in fields(fact_type)}
    given = {by_json.get(name, name): value for name, value in said.items() if name != "kind"}
    return fact_type(**{name: _value_from_json(types.get(name, ""), value) for name, value in given.items()})


def _value_from_json(type_name: str, value: Json) -> Json:
    match type_name.removesuffix(" | None"):
        case "date":
            return date.fromisoformat(value)
        case "Cents":
            whole, _, part = str(value).partition(".")
            return Cents(int(whole) * 100 + int(part or 0))
        case "ColorCounts":
            return ColorCounts(tuple(value.items()))
        case "Fields":
            return Fields(tuple(value.items()))
        case _:
            return value
