"""How a sheet is laid out: where its heading is, what each column holds, and what has to be asked before a row can be read.

What a person answers, or says beforehand, are decisions: `dates` MDY, DMY or YMD; `unit` lb, oz, kg or g; `dots` decimal or ounces;
`weighed` and `gone` a day; `weaned` an age in days; and for a heading, what its column is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from typing import Final

from core.handbook import breeds
from core.herd.settings import Settings
from core.notes.moving.amounts import count_of, has_dots, is_blank, number_of, unit_named
from core.notes.moving.days import ORDERS, day_of, orders_of
from core.notes.moving.grid import LOOKED_AT, Grid
from core.notes.moving.heads import MEANINGS, by_cells, goes_on, settled, weighing_head, word_meaning
from core.notes.moving.table import Cell
from core.notes.slots.items import grams_said
from core.words import OUNCES_IN_POUND

#: The heading stands in one of the first rows, and so many of its words are known.
HEAD_WITHIN: Final = 15  # not a figure: a way of keeping sheets
KNOWN_HEADS: Final = 2
DAYS: Final = frozenset({"born", "came", "date", "bred", "box_in", "kindled", "weaned_on", "sold_on", "died_on", "culled_on"})
#: Columns of a sheet of matings and litters.
BIRTHS: Final = frozenset({"bred", "kindled", "born_kits", "alive"})
_AS_LITTERS: Final = {"dam": "doe", "sire": "buck", "born": "kindled", "name": None, "weight": None, "breed": None, "color": "remark"}
_AS_ANIMALS: Final = {"doe": "dam", "buck": "sire", "born_kits": None, "alive": None, "dead": None, "weaned": None, "weaned_on": None}
#: Columns of animals that say nothing but beside one of those.
_ONLY_BESIDE: Final = {"date": frozenset({"weight"}), "sold_for": frozenset({"sold_on", "status"})}
#: Headings of a column that may only count the rows.
COUNTING: Final = frozenset({"#", "no", "nr", "number", "row"})
#: Columns that may stand more than once.
MANY: Final = frozenset({"weight", "remark", "ignore", "ounces"})
#: The ages at which people wean, offered as answers [days].
WEANING_AGES: Final = ("28", "35", "42", "56")  # not a figure: answers to choose from


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its place, its heading, what it is (None: nobody knows, so its words become remarks).

    unit  what its heading says a bare weight counts
    age   the age at which its weights were taken [days]
    when  the day on which they were, as its heading says
    """

    place: int
    head: str
    means: str | None
    unit: str | None = None
    age: int | None = None
    when: str | date | None = None


@dataclass(frozen=True, slots=True)
class Question:
    """What must be known before the rows can be read: the decision that answers it, and some answers."""

    key: str
    text: str
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """A sheet understood. `births`: it tells of matings and litters, else of animals. `rows` are those below the heading."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[int, tuple[Cell, ...]], ...]
    births: bool
    order: str
    unit: str
    dots: str | None
    decisions: Mapping[str, str]
    questions: tuple[Question, ...] = ()

    def means(self, *names: str) -> tuple[Column, ...]:
        """The columns that are one of these."""
        return tuple(column for column in self.columns if column.means in names)


def laid_out(grid: Grid, settings: Settings, decisions: Mapping[str, str]) -> Layout:
    """The sheet's layout, with its open questions."""
    heads, rows = _parted(grid, decisions)
    named = [_column(place, head, _below(rows, place), decisions) for place, head in enumerate(heads)]
    births = _is_births(named)
    columns = tuple(_once(_in_sheet(named, rows, decisions, births=births)))
    order, orders = _order(columns, rows, settings, decisions)
    unit = decisions.get("unit") or settings.weight_units
    layout = Layout(grid.name, columns, rows, births, order, unit, decisions.get("dots") or settings.dotted_weight, decisions)
    return replace(layout, questions=tuple(_questions(layout, orders)))


def _parted(grid: Grid, decisions: Mapping[str, str]) -> tuple[list[Cell], tuple[tuple[int, tuple[Cell, ...]], ...]]:
    """The heading and the rows below it; headings by number where there is none."""
    known = [_headings(grid.rows, at, decisions) for at in range(min(HEAD_WITHIN, len(grid.rows)))]
    most = max(known, default=0)
    if most < KNOWN_HEADS:
        width = len(grid.rows[0][1]) if grid.rows else 0
        return [f"column {place + 1}" for place in range(width)], grid.rows
    at = known.index(most)
    return list(grid.rows[at][1]), grid.rows[at + 1 :]


def _headings(rows: Sequence[tuple[int, tuple[Cell, ...]]], at: int, decisions: Mapping[str, str]) -> int:
    """How many cells of the row are headings. `doe` among does and a day among days are none: the list has no headings."""
    told = [(place, cell) for place, cell in enumerate(rows[at][1]) if _is_heading(cell, decisions)]
    return sum(not goes_on(cell, [cells[place] for _, cells in (*rows[:at], *rows[at + 1 : LOOKED_AT])]) for place, cell in told)


def _is_heading(cell: Cell, decisions: Mapping[str, str]) -> bool:
    return word_meaning(cell) is not None or isinstance(cell, date) or str(cell).lower() in decisions


def _below(rows: Sequence[tuple[int, tuple[Cell, ...]]], place: int) -> tuple[Cell, ...]:
    return tuple(cells[place] for _, cells in rows)


def _column(place: int, head: Cell, cells: Sequence[Cell], decisions: Mapping[str, str]) -> Column:
    """A column by itself: as somebody decided, as its heading says, or as its cells look."""
    said = head.isoformat()[:10] if isinstance(head, date) else str(head if head is not None else f"column {place + 1}")
    weighing = weighing_head(head)
    decided = decisions.get(said.lower())
    if decided in MEANINGS:
        means: str | None = decided
    elif weighing is not None:
        means = "weight"
    else:
        by_head = word_meaning(head)
        means = settled(by_head, cells, said) if by_head else by_cells(cells) if said == f"column {place + 1}" else None
    age, when = weighing or (None, None)
    return Column(place, said, means, unit_named(said), age, when)


def _is_births(columns: Iterable[Column]) -> bool:
    means = {column.means for column in columns}
    whose = "doe" in means or ("dam" in means and "name" not in means)
    mated = means >= {"doe", "buck", "date"} and means.isdisjoint({"tag", "name"})
    return (bool(means & BIRTHS) or mated) and whose and "sex" not in means


def _in_sheet(
    columns: list[Column], rows: Sequence[tuple[int, tuple[Cell, ...]]], decisions: Mapping[str, str], *, births: bool
) -> Iterator[Column]:
    """The columns as this sort of sheet means them; a tag without a heading is the first column that could be one."""
    means = {column.means for column in columns}
    guessed = bool(means - {None})  # a text of one column, or of columns that say nothing, is no list of animals
    turned = _AS_LITTERS if births else _AS_ANIMALS
    for column in columns:
        own = turned.get(column.means or "", column.means)
        if column.head.lower() in decisions or (own in means and own != column.means and own is not None):
            own = column.means if column.head.lower() in decisions else None
        elif births and column.means == "tag":
            own = "ignore" if _counts_up(_below(rows, column.place)) else None
        elif births and column.means == "date":
            own = _date_of_births(means)
        elif not births and means.isdisjoint(_ONLY_BESIDE.get(column.means or "", means)) and column.means in _ONLY_BESIDE:
            own = None
        elif not births and _numbers_rows(column, columns, rows):
            own = "ignore"
        elif own is None and guessed and column.head == f"column {column.place + 1}" and not means & {"tag", "doe", "dam"}:
            own = "tag" if _is_key(_below(rows, column.place)) else "name" if "name" not in means else None
            means.add(own)
        elif own is None and guessed and column.place == 1 and column.head == "column 2" and "tag" in means and "name" not in means:
            own = "name" if _is_name(_below(rows, column.place)) else None
        yield replace(column, means=own)


def _date_of_births(means: set[str | None]) -> str | None:
    """What a plain `Date` is beside a doe: the day bred where a buck is named and no birth, else the birth."""
    if "bred" not in means and means.isdisjoint({"born_kits", "alive"}):
        return "bred"
    return "kindled" if means.isdisjoint({"kindled", "born"}) else None


def _numbers_rows(column: Column, columns: Sequence[Column], rows: Sequence[tuple[int, tuple[Cell, ...]]]) -> bool:
    """Whether a column such as `#` only counts the rows, beside one that names the animals."""
    others = any(each.means in {"tag", "name"} for each in columns if each.place != column.place)
    return others and column.head.strip().lower().rstrip(".") in COUNTING and _counts_up(_below(rows, column.place))


def _counts_up(cells: Sequence[Cell]) -> bool:
    """Whether they only number the rows."""
    counts = [count_of(cell) for cell in cells if not is_blank(cell)]
    return counts == list(range(1, len(counts) + 1))


def _is_key(cells: Sequence[Cell]) -> bool:
    """Whether each row has one of its own, with a figure in it."""
    told = [str(cell) for cell in cells if not is_blank(cell)]
    return len(set(told)) == len(told) > 0 and any(sign.isdigit() for sign in "".join(told))


def _is_name(cells: Sequence[Cell]) -> bool:
    """Whether each row has one of its own, without a figure in it: beside a tag, its name."""
    told = [str(cell) for cell in cells if not is_blank(cell)]
    return len(set(told)) == len(told) > 0 and not any(sign.isdigit() for sign in "".join(told))


def _once(columns: Iterable[Column]) -> Iterator[Column]:
    """The second column of a meaning is kept as a remark: two birth days can't both be right."""
    seen: set[str | None] = set()
    before: Column | None = None
    columns = tuple(columns)
    known = {column.means for column in columns}
    for column in columns:
        pair = before is not None and (before.means, before.unit, column.means, column.unit) == ("weight", "lb", "weight", "oz")
        if pair and column.age is None and column.when is None:
            told = replace(column, means="ounces")
        elif column.means == "tag" and "tag" in seen and "name" not in known:
            told = replace(column, means="name")
        else:
            told = replace(column, means=None) if column.means in seen - MANY else column
        seen.add(told.means)
        before = told
        yield told


def _order(
    columns: Iterable[Column], rows: Sequence[tuple[int, tuple[Cell, ...]]], settings: Settings, decisions: Mapping[str, str]
) -> tuple[str, tuple[str, ...]]:
    """The order of the figures in dates, and the orders that the cells leave open."""
    cells = [cell for column in columns if column.means in DAYS for cell in _below(rows, column.place)]
    cells += [column.when for column in columns if column.when is not None]
    decided = decisions.get("dates")
    if decided in ORDERS:
        return decided, (decided,)
    open_ones = orders_of(cells)
    said = settings.said.get("date_order")
    if len(open_ones) > 1 and said in open_ones:
        return str(said), (str(said),)
    return (open_ones[0] if len(open_ones) == 1 else settings.date_order), open_ones


def _questions(layout: Layout, orders: tuple[str, ...]) -> Iterator[Question]:
    """What can't be known from the sheet."""
    if not layout.means("tag", "name", "doe"):
        text = f"Which column of {layout.name} names the animal? Its columns are {', '.join(column.head for column in layout.columns)}."
        yield Question("tag", text, tuple(f"{column.head}=tag" for column in layout.columns[:3]))
    if len(orders) > 1 and _has_figures(layout, orders):
        yield Question("dates", f"{layout.name}: is the month first in its dates, or the day?", orders)
    yield from _weight_questions(layout)
    if layout.means("weaned") and not layout.means("weaned_on") and "weaned" not in layout.decisions:
        yield Question("weaned", f"{layout.name} tells how many were weaned, but not when. At how many days do you wean?", WEANING_AGES)


def _has_figures(layout: Layout, orders: tuple[str, ...]) -> bool:
    """Whether some day means one thing in one order and another in the other."""
    cells = [cells[column.place] for column in layout.columns if column.means in DAYS for _, cells in layout.rows]
    cells += [column.when for column in layout.columns if column.when is not None]
    return any(len({day_of(cell, order) for order in orders}) > 1 for cell in cells if not is_blank(cell))


def _weight_questions(layout: Layout) -> Iterator[Question]:
    weights = layout.means("weight")
    bare = [
        cell for column in weights if column.unit is None for _, cells in layout.rows if number_of(cell := cells[column.place]) is not None
    ]
    most = max((number for cell in bare if (number := number_of(cell)) is not None), default=Decimal(0))
    if bare and "unit" not in layout.decisions and (grams_said(most, layout.unit) or 0) > breeds.heaviest_believable_g(None):
        yield Question("unit", f"{layout.name}: what do its weights count? {most} {layout.unit} can't be.", ("oz", "g"))
    elif layout.unit == "lb" and layout.dots is None and any(has_dots(cell) for cell in bare) and not _decimal(bare):
        yield Question(
            "dots", f"{layout.name}: are the figures behind the dot of a weight tenths of a pound, or ounces?", ("decimal", "ounces")
        )
    timeless = [column for column in weights if column.age is None and column.when is None]
    if timeless and not layout.means("date") and "weighed" not in layout.decisions:
        yield Question("weighed", f"{layout.name}: on which day were they weighed ({timeless[0].head})?", ())


def _decimal(cells: Iterable[Cell]) -> bool:
    """Whether something behind a dot can't be ounces."""
    behind = [str(cell).partition(".")[2] for cell in cells]
    return any(len(part) > 2 or (part.isdigit() and int(part) >= OUNCES_IN_POUND) for part in behind)
