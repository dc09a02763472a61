"""Facts as rows of cells, and rows as facts again: one table a kind, its columns the fact's fields under their names in the contract."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from datetime import date
from decimal import Decimal, InvalidOperation
from typing import Any, Final

from core.herd.wishes import normal
from core.notes.fact import Cents, ColorCounts, Fact, field_names, from_json
from core.notes.kinds import KIND_OF
from core.notes.moving.table import Cell

#: `3 castor, 2 black`: colours that need no quotes.
_PLAIN_COLOR: Final = re.compile(r"[a-z][a-z ()-]*")
_COUNTED: Final = re.compile(r"(\d+) ([a-z][a-z ()-]*)")
_CENTS: Final = Decimal("0.01")  # not a figure: money has two places


def cells_of(fact: Fact) -> tuple[Cell, ...]:
    """The fact's fields in their order; what was not said is None."""
    return tuple(_cell(getattr(fact, names.code)) for names in field_names(fact))


def _cell(value: Any) -> Cell:
    match value:
        case Cents():
            return (Decimal(int(value)) * _CENTS).quantize(_CENTS)
        case ColorCounts():
            return _colors(value)
        case _:
            told: Cell = value
            return told


def _colors(counts: ColorCounts) -> str:
    if all(_PLAIN_COLOR.fullmatch(color) and color == color.strip() for color, _ in counts):
        return ", ".join(f"{count} {color}" for color, count in counts)
    return json.dumps(dict(counts), ensure_ascii=False)


def fact_of(kind: str, said: Mapping[str, Cell]) -> Fact:
    """The fact of a row: field -> cell, empty ones None or "". KeyError, TypeError or ValueError where it is none of that kind."""
    made = KIND_OF[kind].fact
    types = {names.json: str(made.__dataclass_fields__[names.code].type).removesuffix(" | None") for names in field_names(made)}
    told = {name: _value(types[name], cell, said) for name, cell in said.items() if cell is not None and cell != ""}
    return from_json(made, told)


def _value(of_type: str, cell: Cell, said: Mapping[str, Cell]) -> Any:
    """The cell as JSON has that field. ValueError where it can't be one."""
    match of_type:
        case "date":
            return date.fromisoformat(str(cell)[:10]).isoformat()
        case "int":
            return _whole(cell)
        case "float":
            return float(_number(cell))
        case "bool":
            return _yes(cell)
        case "Cents":
            return str(_number(cell).quantize(_CENTS))
        case "ColorCounts":
            return _counts(str(cell))
        case "SettingValue":
            value = normal(str(said.get("name")), cell)
            return cell if value is None else value
        case _:
            return _text(cell)


def _text(cell: Cell) -> str:
    """A cell as words: a spreadsheet keeps the tag 14 as a number, and sometimes as 14.0."""
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell)[:10] if isinstance(cell, date) else str(cell)


def _number(cell: Cell) -> Decimal:
    try:
        number = Decimal(str(cell).strip())
    except InvalidOperation as error:
        raise ValueError(cell) from error
    if not number.is_finite() or isinstance(cell, bool):
        raise ValueError(cell)
    return number


def _whole(cell: Cell) -> int:
    number = _number(cell)
    if number != int(number):
        raise ValueError(cell)
    return int(number)


def _yes(cell: Cell) -> bool:
    said = str(cell).strip().lower()
    if said not in {"true", "false"}:
        raise ValueError(cell)
    return said == "true"


def _counts(text: str) -> dict[str, int]:
    if text.startswith("{"):
        counts: dict[str, int] = json.loads(text)
        return counts
    parts = [_COUNTED.fullmatch(part) for part in text.split(", ")]
    if not all(parts):
        raise ValueError(text)
    return {part[2]: int(part[1]) for part in parts if part}
