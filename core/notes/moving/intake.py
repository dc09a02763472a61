"""What sheets come to: each row accounted for, the facts in the order to tell them, and what has to be asked before.

A row's facts are taken as the book's own notes are: each is checked against the herd as it is by then. What can't be is kept as a
remark with the reason; what is only odd is taken, since it was written down long ago, and told.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from itertools import takewhile
from typing import Any

from core.herd.state import Herd, folded
from core.notes.fact import Fact, Sex, to_json
from core.notes.kinds import KIND_OF
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.remark import Remark
from core.notes.moving.animal_rows import read_animal
from core.notes.moving.birth_rows import read_birth
from core.notes.moving.grid import Grid
from core.notes.moving.layout import Layout, Question, laid_out
from core.notes.moving.row import Row, no_record, section_sex, without_dittos
from core.notes.moving.whose import Whose
from core.words import count

Progress = Callable[[int, int], None]

#: Fields that name an animal which has to be on the book, and the sex that this says.
_NAMED: tuple[tuple[str, Sex | None], ...] = (("doe", "doe"), ("buck", "buck"), ("who", None))
#: Rows that a reply names; `--json` has them all.
NAMED = 20  # not a figure: rows shown
HEADINGS = "these are the headings"


@dataclass(slots=True)
class Told:
    """What became of a row: `facts` of it are recorded, `known` were told before; `doubts` say what is odd, `why` that it came to nothing."""

    sheet: str
    line: int
    text: str
    facts: list[Fact] = field(default_factory=list)
    known: int = 0
    doubts: list[str] = field(default_factory=list)
    why: str = ""

    def document(self) -> dict[str, Any]:
        """The row as JSON."""
        facts = [to_json(fact) for fact in self.facts]
        return {
            "sheet": self.sheet,
            "row": self.line,
            "text": self.text,
            "facts": facts,
            "known": self.known,
            "doubts": self.doubts,
            "why": self.why,
        }


@dataclass(frozen=True, slots=True)
class Intake:
    """Sheets understood. `facts` are in the order to tell them, each with the place of its row in `rows`."""

    layouts: tuple[Layout, ...]
    questions: tuple[Question, ...]
    rows: tuple[Told, ...]
    facts: tuple[tuple[Fact, int], ...]

    def document(self) -> dict[str, Any]:
        """The whole as JSON."""
        return {
            "sheets": [_sheet(layout) for layout in self.layouts],
            "questions": [{"key": each.key, "text": each.text, "choices": list(each.choices)} for each in self.questions],
            "facts": dict(Counter(fact.kind for fact, _ in self.facts)),
            "rows": [row.document() for row in self.rows],
        }

    def lines(self, named: int = NAMED, more: str = ": --json lists them all") -> Iterator[str]:
        """The whole for a person: how each sheet was understood, what it comes to, and so many rows with something to look at."""
        for layout in self.layouts:
            told = ", ".join(f"{column.head} = {column.means or 'kept as words'}" for column in layout.columns)
            yield f"{layout.name}: {count(len(layout.rows), 'row')} of {'litters' if layout.births else 'animals'}. {told}."
        kinds = Counter(fact.kind for fact, _ in self.facts)
        yield (
            f"{count(len(self.facts), 'note')}: "
            + (", ".join(f"{number} {kind}" for kind, number in kinds.most_common()) or "nothing new")
            + "."
        )
        if known := sum(row.known for row in self.rows):
            yield f"{count(known, 'note')} told before: left out."
        odd = [row for row in self.rows if row.doubts or row.why not in {"", HEADINGS}]
        for row in odd[:named]:
            yield f"{row.sheet}, row {row.line}: {row.why or '; '.join(row.doubts)} ({row.text})"
        if len(odd) > named:
            yield f"And {len(odd) - named} rows more to look at{more}."


def _sheet(layout: Layout) -> dict[str, Any]:
    columns = [{"heading": column.head, "means": column.means, "unit": column.unit} for column in layout.columns]
    return {
        "name": layout.name,
        "of": "litters" if layout.births else "animals",
        "rows": len(layout.rows),
        "dates": layout.order,
        "columns": columns,
    }


def intake(
    grids: Iterable[Grid],
    herd: Herd,
    standing: Iterable[Fact],
    decisions: Mapping[str, str],
    today: date,
    progress: Progress = lambda _done, _all: None,
) -> Intake:
    """What the sheets come to on that day, in a book with that herd and those standing facts."""
    told = [grid for grid in grids if grid.rows]
    layouts = tuple(without_dittos(laid_out(grid, herd.settings, decisions)) for grid in told)
    whose = Whose(herd, layouts)
    read = [row for layout, grid in zip(layouts, told, strict=True) for row in _read_all(layout, grid, whose, today)]
    rows = [Told(row.layout.name, row.line, row.text(), doubts=row.doubts, why=row.why) for row in read]
    facts = _weighed_up(herd, _ordered(read), rows, _Known(standing), today, progress)
    for row in rows:
        row.why = row.why or ("" if row.facts or row.known else "it says nothing new")
    return Intake(layouts, _once((*(each for layout in layouts for each in layout.questions), *_gone(read))), tuple(rows), tuple(facts))


def _read_all(layout: Layout, grid: Grid, whose: Whose, today: date) -> Iterator[Row]:
    """Every row of the sheet, those above its headings too. A line that only says `Does` holds for the rows below it."""
    below = {line for line, _ in layout.rows}
    above = [(line, cells) for line, cells in grid.rows if line not in below]
    for line, cells in above:
        why = HEADINGS if (line, cells) == above[-1] else "it stands above the headings"
        yield Row(layout, line, cells, whose, today, why=why)
    sex: Sex | None = None
    for line, cells in layout.rows:
        row = Row(layout, line, cells, whose, today, sex=sex)
        row.why = no_record(row)
        if row.why:
            sex = section_sex(row) or sex
        else:
            (read_birth if layout.births else read_animal)(row)
        yield row


def _once(questions: Iterable[Question]) -> tuple[Question, ...]:
    """One question a decision: an answer holds for all sheets. Those about a column stay apart."""
    return tuple({(each.key, each.text if each.key == "tag" else ""): each for each in questions}.values())


def _gone(rows: Sequence[Row]) -> Iterator[Question]:
    undated = [row for row in rows if row.undated]
    if undated:
        text = (
            f"{count(len(undated), 'animal')} left, but the sheet doesn't say when (the first: {undated[0].place}). Which day shall it be?"
        )
        yield Question("gone", text, (undated[0].today.isoformat(),))


def _ordered(rows: Sequence[Row]) -> list[tuple[Fact, int]]:
    """The facts as they happened: animals first, parents before their young, but kits of a litter in the sheets after its birth."""
    births = {(folded(fact.doe), fact.on) for row in rows for fact in row.facts if isinstance(fact, Kindled)}
    keyed: list[tuple[date, int, int, Fact, int]] = []
    for place, row in enumerate(rows):
        for fact in row.facts:
            on = getattr(fact, "on", None) or date.min
            if isinstance(fact, AnimalNoted):
                kit = fact.born is not None and fact.dam is not None and (folded(fact.dam), fact.born) in births
                keyed.append((fact.born or date.min, 2, place, fact, place) if kit else (date.min, 0, place, fact, place))
            else:
                keyed.append((on, 1 if fact.kind == "kindled" else 3 if fact.kind != "remark" else 4, place, fact, place))
    keyed.sort(key=lambda each: each[:3])
    return _parents_first([(each[3], each[4]) for each in keyed])


def _parents_first(facts: list[tuple[Fact, int]]) -> list[tuple[Fact, int]]:
    """The leading animals each after its parents; the rest as it stands."""
    lead = [
        (fact, place) for fact, place in takewhile(lambda pair: isinstance(pair[0], AnimalNoted), facts) if isinstance(fact, AnimalNoted)
    ]
    by_tag: dict[str, list[int]] = {}
    for at, (fact, _) in enumerate(lead):
        by_tag.setdefault(folded(fact.tag), []).append(at)
    done: dict[int, None] = {}
    for start in range(len(lead)):
        waiting, seen = [start], set[int]()
        while waiting:
            at = waiting[-1]
            seen.add(at)
            named = [folded(tag) for tag in (lead[at][0].sire, lead[at][0].dam) if tag]
            parents = [each for tag in named for each in by_tag.get(tag, ()) if each not in done and each not in seen]
            if parents:
                waiting.extend(parents)
            else:
                done.setdefault(waiting.pop())
    return [*(lead[at] for at in done), *facts[len(lead) :]]


class _Known:
    """The facts that stand already: the same again is no news, a remark or a cage not even on another day."""

    def __init__(self, standing: Iterable[Fact]) -> None:
        self._keys = {self._key(fact) for fact in standing}

    @staticmethod
    def _key(fact: Fact) -> Fact:
        return replace(fact, on=date.min) if fact.kind in {"remark", "moved"} else fact

    def has(self, fact: Fact) -> bool:
        """Whether it stands; from now on it does."""
        key = self._key(fact)
        if key in self._keys:
            return True
        self._keys.add(key)
        return False


def _weighed_up(
    herd: Herd, facts: Sequence[tuple[Fact, int]], rows: Sequence[Told], known: _Known, today: date, progress: Progress
) -> Iterable[tuple[Fact, int]]:
    """The facts that are recorded, each put to its row, checked against the herd as the ones before leave it."""
    taken: list[tuple[Fact, int]] = []
    herd = herd.on_day(today)
    for number, (fact, place) in enumerate(facts, start=1):
        for one in (*_strangers(fact, herd), fact):
            if known.has(one) or _nothing_new(one, herd):
                rows[place].known += one is fact
                continue
            kept = _possible(one, herd, today, rows[place])
            if kept is not one and known.has(kept):
                rows[place].known += 1
                continue
            herd = KIND_OF[kept.kind].apply(kept, herd)
            rows[place].facts.append(kept)
            taken.append((kept, place))
        if number % 500 == 0 or number == len(facts):  # not a figure: how often progress is told
            progress(number, len(facts))
    return taken


def _strangers(fact: Fact, herd: Herd) -> Iterator[AnimalNoted]:
    """Animals that a row names and nothing brought on the book: put there with what the row says of them, their sex."""
    if isinstance(fact, Remark | AnimalNoted):
        return
    for name, sex in _NAMED:
        tag = getattr(fact, name, None)
        if tag is not None and herd.find(tag) is None:
            yield AnimalNoted(tag=tag, sex=sex)


def _nothing_new(fact: Fact, herd: Herd) -> bool:
    """Whether it is of an animal on the book, and says nothing that is not there."""
    if not isinstance(fact, AnimalNoted) or (animal := herd.find(fact.tag)) is None or animal.origin == "outside":
        return False
    after = KIND_OF["animal"].apply(fact, herd).find(fact.tag)
    bare = fact == AnimalNoted(tag=fact.tag)
    return bare or (animal.living and after == animal) or (not animal.living and _said_of(fact, animal))


def _said_of(fact: AnimalNoted, animal: Any) -> bool:
    """Whether an animal that is gone is the one of the fact: all that it says is so."""
    return all(getattr(fact, name) in {None, getattr(animal, name)} for name in ("name", "sex", "breed", "color", "born"))


def _possible(fact: Fact, herd: Herd, today: date, row: Told) -> Fact:
    """The fact; where it can't be, its words as a remark. What is only odd is told."""
    problem = KIND_OF[fact.kind].check(fact, herd, today)
    if problem is None or fact.kind == "remark":
        return fact
    if problem.code == "confirm" and not isinstance(fact, AnimalNoted):
        row.doubts.append(f"taken, but look: {problem.text}")
        return fact
    row.doubts.append(f"not taken, kept as words: {problem.text}")
    who = getattr(fact, "who", None) or getattr(fact, "doe", None) or getattr(fact, "tag", None)
    words = str(KIND_OF[fact.kind].show(fact, herd))
    return Remark(text=f"not taken: {words}", on=today, who=who if who and herd.find(who) else None)
