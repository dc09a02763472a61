"""A table of several columns, its heading row first: each row told as a line of its own, in the words of the barn.

    Tag | Weight | BCS
    31  | 4-6    | 3            reads as `31 weighed 4-6, bcs 3`

Columns may stand in any order, their unit in the heading; cells may be empty or say ditto, and a last row may add the others up.
Only a table whose every column is known is told so; any other is read as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import Final

from core.words import OUNCES_IN_POUND

ANIMALS: Final = frozenset(
    {"tag", "doe", "buck", "animal", "rabbit", "id", "no", "number", "ear tag", "who", "name", "tag no", "#", "ear", "tag #", "dam", "sire"}
)
DAYS: Final = frozenset({"date", "day", "on", "when"})
#: Column -> how its value is told.
COLUMNS: Final = {
    "weight": "weighed {}", "wt": "weighed {}", "weighed": "weighed {}", "bcs": "bcs {}", "condition": "bcs {}", "cond": "bcs {}", "score": "bcs {}",
    "born": "kindled {}", "kindled": "kindled {}", "total": "kindled {}", "alive": "{} alive", "live": "{} alive", "living": "{} alive", "dead": "{} dead",
    "doa": "{} dead", "cage": "moved to cage {}", "pen": "moved to cage {}", "palpated": "palpated {}", "result": "palpated {}", "palp": "palpated {}",
    "falls": "{} falls", "type": "type {}", "fur": "fur {}", "size": "size {}", "overall": "overall {}", "placing": "placed {}", "temper": "{}",
    "kits": "has {} kits", "stillborn": "{} dead",
}  # fmt: skip
#: Columns of a table of what was sold, and of one of what was butchered.
SOLD: Final = {"price": "for ${}", "sold for": "for ${}", "amount": "for ${}", "buyer": "to {}", "to": "to {}", "sold to": "to {}"}
DRESSED: Final = {"dressed": "dressed {}", "live": "live {}", "live wt": "live {}", "dressed wt": "dressed {}", "live weight": "live {}", "dressed weight": "dressed {}"}  # fmt: skip
NOTES: Final = frozenset({"notes", "note", "remarks", "remark", "comments", "comment"})
#: A table of kits that were tattooed names the dam of each.
NUMBERED: Final = frozenset({"tag", "dam", "sex"})
TATTOOED: Final = NUMBERED | {"color", "colour"}
#: Columns of a bill for feed; what was paid is of the whole row.
FEED_COST: Final = frozenset({"cost", "paid", "total"})
FEED: Final = FEED_COST | {"date", "feed", "pellets", "bags", "amount", "qty", "quantity"}
BIRTHS: Final = frozenset({"born", "kindled", "total", "alive", "live", "living", "dead", "doa", "stillborn"})
PAIR: Final = ("buck", "doe")  # a table of matings
PARENTS: Final = {"dam": "doe", "sire": "buck"}
EMPTY: Final = frozenset({"", "-", "--", "n/a", "na", "none", ".", "?"})
DITTO: Final = frozenset({'"', "''", "ditto", "do", "do.", "\u201d", "\u201c", "\u3003", '""', "same", '- " -', '-"-'})
SUMS: Final = frozenset({"total", "totals", "sum", "all", "total:"})
LEAST: Final = 2  # columns
_PARTINGS: Final = ("|", "\t", ";", ",")
_WIDE: Final = re.compile(r" {2,}")
_UNIT: Final = re.compile(
    r"^(?:(?:weight|wt|weighed|live wt|dressed wt|live|dressed)?[ _/(\[]*)(lbs?|pounds?|oz|ounces?|kgs?|kilos?|g|gm|grams?)[)\]]?$"
)
_BARE: Final = re.compile(r"^\d+(?:\.\d+)?$")
_HAND: Final = re.compile(r"^(\d+)[-#](\d+(?:\.\d+)?)$")
_SALE: Final = re.compile(r"\b(?:sold|sales?)\b", re.IGNORECASE)


def table_told(text: str) -> str | None:
    """The note with its table told line by line; None where it holds none."""
    lines = [line.strip(" \r") for line in text.split("\n")]
    lines = _form(lines) or lines
    for place, line in enumerate(lines[:-1]):
        split = _splitter(line)
        if split is None:
            continue
        heads = [head.lower().rstrip(".:") for head in split(line)]
        if TATTOOED.issuperset(heads) and NUMBERED - {"dam"} <= set(heads):
            rows, end = _rows(lines, place + 1, split, len(heads))
            return "\n".join([*lines[:place], *(_tattooed(heads, row) for row in rows), *lines[end:]]) if rows else None
        if FEED.issuperset(heads) and not FEED_COST.isdisjoint(heads) and "date" in heads:
            rows, end = _rows(lines, place + 1, split, len(heads))
            return "\n".join([*lines[:place], *(_bought(heads, row) for row in rows), *lines[end:]]) if rows else None
        columns = _columns(heads, sold=any(_SALE.search(above) for above in lines[:place]))
        if columns is None:
            continue
        rows, end = _rows(lines, place + 1, split, len(heads))
        if rows:
            return "\n".join([*lines[:place], *_told_rows(heads, columns, rows), *lines[end:]])
    return None


FEWEST_LABELS: Final = 3


def _form(lines: list[str]) -> list[str] | None:
    """The lines of a form (`Doe: 14`, `Date: 11/24`, `Born: 9`, ...) as one row of a table; filled in anew from its first label on, as one more row."""
    pairs = [(label.strip().lower(), value.strip()) for label, colon, value in (line.partition(":") for line in lines if line) if colon]
    if len(pairs) < FEWEST_LABELS or len(pairs) != sum(1 for line in lines if line) or pairs[0][0] not in ANIMALS | DAYS:
        return None
    forms: list[dict[str, str]] = []
    for label, value in pairs:
        if label == pairs[0][0]:
            forms.append({})
        if label in forms[-1]:
            return None  # said twice
        forms[-1][label] = value
    heads = list(dict.fromkeys(label for label, _ in pairs))
    if len(heads) < FEWEST_LABELS or any("|" in value for _, value in pairs):
        return None
    return ["|".join(heads), *("|".join(form.get(head, "") for head in heads) for form in forms)]


def _tattooed(heads: list[str], row: Sequence[str]) -> str:
    """A row of kits that were tattooed: `tattooed R31 out of 16, buck, black`."""
    cells = {PARENTS.get(head, head): cell for head, cell in zip(heads, row, strict=True) if cell.lower() not in EMPTY}
    rest = [cells[head] for head in ("sex", "color", "colour") if head in cells]
    dam = f" out of {cells['doe']}" if "doe" in cells else ""  # it asks where none is named
    return ", ".join([f"tattooed {cells.get('tag', '')}{dam}", *rest])


def _bought(heads: list[str], row: Sequence[str]) -> str:
    """A row of a feed bill: `11/20: bought 4 bags of feed 74.00 total`."""
    cells = dict(zip(heads, row, strict=True))
    amount = " ".join(cell if not _BARE.match(cell) else f"{cell} bags" for head, cell in cells.items() if head in FEED - FEED_COST - DAYS)
    cost = next(cell for head, cell in cells.items() if head in FEED_COST)
    return f"{cells['date']}: bought {amount} of feed, ${cost.lstrip('$')} total"


def _splitter(line: str) -> Callable[[str], list[str]] | None:
    """How the rows below this heading row are parted into cells; None where it has but one."""
    sign = next((sign for sign in _PARTINGS if sign in line), None)
    framed = sign == "|" and line.startswith("|")

    def cells(row: str) -> list[str]:
        if framed:
            row = row.strip().removeprefix("|").removesuffix("|")
        parts = _WIDE.split(row.strip()) if sign is None else row.split(sign)
        return [part.strip().strip('"') if len(part.strip()) > LEAST else part.strip() for part in parts]

    return cells if len(cells(line)) >= LEAST else None


def _columns(heads: list[str], *, sold: bool) -> list[str] | None:
    """How the values of the columns are told, empty for animals and days; None where a column is unknown."""
    named = [PARENTS.get(head, head) for head in heads if head in ANIMALS]
    called = "name" in named and len(named) == len(PAIR) and PARENTS.keys().isdisjoint(heads)
    if not (len(named) == 1 or tuple(sorted(named)) == PAIR or called):
        return None
    known = {**COLUMNS, **(SOLD if sold else {}), **(DRESSED if any(head.startswith("dressed") for head in heads) else {})}
    told: list[str] = []
    for head in heads:
        unit = _UNIT.match(head)
        if head in ANIMALS or head in DAYS or head in NOTES:
            told.append("")
        elif head in known:
            told.append(known[head])
        elif unit:
            verb = next((known[word] for word in ("live", "dressed") if head.startswith(word)), "weighed {}")
            told.append(f"{verb} {unit[1]}")
        else:
            return None
    return told


def _rows(lines: list[str], begin: int, split: Callable[[str], list[str]], width: int) -> tuple[list[list[str]], int]:
    """The cells of the rows below the heading row, and the line behind them."""
    rows: list[list[str]] = []
    place = begin
    while place < len(lines):
        line = lines[place]
        if line.strip("-|=+:; \t") or not line:
            cells = split(line)
            if LEAST <= len(cells) < width and ("|" in line or "\t" in line):
                cells += [""] * (width - len(cells))
            if len(cells) != width:
                break
            above = rows[-1] if rows else cells
            rows.append([above[n] if cell.lower() in DITTO else cell for n, cell in enumerate(cells)])
        place += 1
    return rows, place


def _told_rows(heads: list[str], columns: list[str], rows: list[list[str]]) -> list[str]:
    animal = next(place for place, head in enumerate(heads) if head in ANIMALS)
    if len(rows) > LEAST and rows[-1][animal].lower() in SUMS and _adds_up(rows, animal):
        rows = rows[:-1]
    told, day = [], ""
    for row in rows:
        day = next((cell for head, cell in zip(heads, row, strict=True) if head in DAYS and cell not in EMPTY), day)
        told.append(_told(heads, columns, row, day))
        told += [
            f"{day + ': ' if day else ''}{row[animal]}: {cell}"
            for head, cell in zip(heads, row, strict=True)
            if head in NOTES and cell not in EMPTY
        ]
    return told


def _adds_up(rows: list[list[str]], animal: int) -> bool:
    """Whether the last row is the sum of those above it, as far as they are figures."""
    for place in range(len(rows[0])):
        if place == animal or rows[-1][place] in EMPTY:
            continue
        figures = [_figure(row[place]) for row in rows]
        known = [figure for figure in figures[:-1] if figure is not None]
        if figures[-1] is None or abs(sum(known) - figures[-1]) > 1e-6:  # not a figure: nothing but rounding
            return False
    return True


def _figure(cell: str) -> float | None:
    hand = _HAND.match(cell)
    if hand:
        return int(hand[1]) * OUNCES_IN_POUND + float(hand[2])
    return float(cell) if _BARE.match(cell) else (0.0 if cell.lower() in EMPTY else None)


def _told(heads: list[str], columns: list[str], row: Sequence[str], day: str) -> str:
    animals = {PARENTS.get(head, head): cell for head, cell in zip(heads, row, strict=True) if head in ANIMALS and cell not in EMPTY}
    births = not BIRTHS.isdisjoint(heads)
    name = animals.pop("name", "") if len(animals) > 1 else ""
    if set(animals) == set(PAIR):
        who = f"doe {animals['doe']}" if births else f"doe {animals['doe']} bred to buck {animals['buck']}"
    else:
        head, cell = next(iter(animals.items()), ("", ""))
        who = f"{head} {cell}" if head in PAIR else (f"{name} ({cell})" if name else cell)
    said = _said(columns, row)
    if births and "buck" in animals and "doe" in animals:
        said.append(f"by buck {animals['buck']}")
    if any(column.startswith(("for $", "to {")) for column in columns):
        return f"{day + ': ' if day else ''}sold {who} {' '.join(said)}"
    dressed = any(column.startswith("dressed") for column in columns)
    return f"{day + ': ' if day else ''}{'butchered ' if dressed else ''}{who}{':' if dressed else ''} {', '.join(said)}".rstrip()


def _said(columns: list[str], row: Sequence[str]) -> list[str]:
    """What a row says in its cells; pounds and ounces in two columns are one weight."""
    said: list[str] = []
    for column, cell in zip(columns, row, strict=True):
        if not column or cell.lower() in EMPTY:
            continue
        verb, _, unit = column.partition("{}")
        ounces = unit.strip() in {"oz", "ounce", "ounces"}
        if ounces and verb == "weighed " and said and said[-1].startswith(verb) and "lb" in said[-1]:
            said[-1] += f" {cell} oz"
        elif unit and verb in {"weighed ", "live ", "dressed "}:
            said.append(f"{verb}{cell}{unit if _BARE.match(cell) else ''}")
        else:
            said.append(column.format(cell.lstrip("$") if "$" in column else cell))
    return said
