"""Replay: the herd is what the notes add up to, in the order in which things happened.

A late note lands on its day; taking one back withdraws all that followed from it. Snapshots of the herd are kept along the way, so
that a note of today, or of last week, costs only what comes after it.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, tzinfo
from functools import lru_cache
from zoneinfo import ZoneInfo

from core.herd.state import Herd, folded
from core.herd.wishes import normal
from core.notes.fact import Fact
from core.notes.journal import Entry, Note, Target, standing
from core.notes.kinds import KIND_OF

#: Kinds whose `on` is a day to come: they count from the day they were told.
TOLD = frozenset({"planned", "remind"})

#: Kinds that bring an animal on the book, under `tag`.
ARRIVALS = frozenset({"animal", "tagged"})

#: Fields that name an animal which has to be on the book when the fact counts.
NAMING = ("who", "doe", "buck", "litter_of", "from_")

#: A snapshot of the herd is kept after so many facts.
STRIDE = 64

Place = tuple[date, int, int, int]  # day, note that first told it, its index there, the note that told it last


@lru_cache(maxsize=64)
def zone(name: str) -> tzinfo:
    """The timezone of that name; UTC where nobody knows it."""
    try:
        return ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        return UTC


def local_time(at: datetime, herd: Herd) -> datetime:
    """The moment by the farm's clock."""
    return at.astimezone(zone(herd.settings.timezone))


def local_day(at: datetime, herd: Herd) -> date:
    """The calendar day at the farm."""
    return local_time(at, herd).date()


def day_of(entry: Entry, timezone: str) -> date:
    """The day that the fact counts from: when it happened, or when it was told."""
    on = None if entry.fact.kind in TOLD else getattr(entry.fact, "on", None)
    return on if isinstance(on, date) else entry.note.at.astimezone(zone(timezone)).date()


def apply(fact: Fact, herd: Herd, day: date) -> Herd:
    """The herd after the fact, which counts from that day."""
    return KIND_OF[fact.kind].apply(fact, herd.on_day(day))


def fold(start: Herd, entries: Iterable[Entry]) -> Herd:
    """The herd that the facts add up to, whatever order they come in."""
    herd = start
    for place, entry in _placed(start.settings.timezone, entries):
        herd = apply(entry.fact, herd, place[0])
    return herd


def _placed(timezone: str, entries: Iterable[Entry]) -> list[tuple[Place, Entry]]:
    """The facts in the order in which they happened. The farm's timezone follows what was said of it, in the order told."""
    placed = []
    for entry in entries:
        timezone = _timezone_after(entry.fact, timezone)
        placed.append((_place(entry, timezone), entry))
    placed.sort(key=lambda pair: pair[0][1:])
    came: dict[str, date] = {}
    late = []
    for place, entry in placed:
        late.append((_not_before(came, place, entry.fact), entry))
        _arrive(came, entry.fact, late[-1][0][0])
    return sorted(late, key=lambda pair: pair[0])


def _not_before(came: Mapping[str, date], place: Place, fact: Fact) -> Place:
    """The place of a fact, but not before the animals that it names came on the book.

    Who begins a book tells of the animals first, and then what happened last month.
    """
    named = () if fact.kind == "animal" else (getattr(fact, name, None) for name in NAMING)
    return (max([place[0], *(came[folded(tag)] for tag in named if tag is not None and folded(tag) in came)]), *place[1:])


def _arrive(came: dict[str, date], fact: Fact, day: date) -> None:
    """Keep the earliest day from which an animal of that tag is on the book."""
    if fact.kind in ARRIVALS:
        tag = folded(str(getattr(fact, "tag", "")))
        came[tag] = min(day, came.get(tag, day))


def _place(entry: Entry, timezone: str) -> Place:
    return (day_of(entry, timezone), *entry.place, entry.note.id)


def _timezone_after(fact: Fact, timezone: str) -> str:
    if fact.kind == "setting" and getattr(fact, "name", "") == "timezone":
        return str(normal("timezone", getattr(fact, "value", None)) or timezone)
    return timezone


@dataclass(frozen=True, slots=True)
class Line:
    """The standing facts in the order they happened, with the herd after every `STRIDE` of them."""

    start: Herd
    places: tuple[Place, ...] = ()
    entries: tuple[Entry, ...] = ()
    herds: tuple[Herd, ...] = ()  # herds[n]: after the first (n + 1) * STRIDE facts
    recent: tuple[Herd, ...] = ()  # the herd after each fact since the last of those
    herd: Herd = field(default_factory=Herd)

    def before(self, position: int) -> Herd:
        """The herd just before the fact at this position."""
        kept = position // STRIDE
        if kept == len(self.herds):
            later = position - kept * STRIDE
            return self.recent[later - 1] if later else self._snapshot(kept)
        herd = self._snapshot(kept)
        for number in range(kept * STRIDE, position):
            herd = apply(self.entries[number].fact, herd, self.places[number][0])
        return herd

    def _snapshot(self, kept: int) -> Herd:
        return self.herds[kept - 1] if kept else self.start

    def rewritten(self, position: int, pairs: Sequence[tuple[Place, Entry]]) -> Line:
        """The line with everything from `position` on replaced."""
        kept = position // STRIDE
        herds = list(self.herds[:kept])
        recent: list[Herd] = []
        herd = self._snapshot(kept)
        for number in range(kept * STRIDE, position):
            same = kept == len(self.herds)
            herd = self.recent[number - kept * STRIDE] if same else apply(self.entries[number].fact, herd, self.places[number][0])
            recent.append(herd)
        for number, (place, entry) in enumerate(pairs, start=position + 1):
            herd = apply(entry.fact, herd, place[0])
            recent.append(herd)
            if number % STRIDE == 0:
                herds.append(herd)
                recent = []
        places = self.places[:position] + tuple(place for place, _ in pairs)
        entries = self.entries[:position] + tuple(entry for _, entry in pairs)
        return Line(self.start, places, entries, tuple(herds), tuple(recent), herd)

    def changed(self, pairs: Sequence[tuple[Place, Entry]]) -> Line:
        """The line of these facts; only what differs is worked out again."""
        same = 0
        for (place, entry), old_place, old in zip(pairs, self.places, self.entries, strict=False):
            if place != old_place or entry.fact is not old.fact:
                break
            same += 1
        return self.rewritten(same, pairs[same:])


@dataclass(frozen=True, slots=True)
class Book:
    """A farm's book, kept warm: where it began, its notes, and the herd that they add up to today."""

    start: Herd = field(default_factory=Herd)
    notes: tuple[Note, ...] = ()
    line: Line = field(default_factory=lambda: Line(Herd()))
    timezone: str = "UTC"
    came: Mapping[str, date] = field(default_factory=dict)  # folded tag -> the day from which the animal is on the book

    @property
    def herd(self) -> Herd:
        """The herd today."""
        return self.line.herd

    @property
    def last_id(self) -> int:
        """The number of the newest note; 0 where there is none."""
        return self.notes[-1].id if self.notes else 0

    def standing(self) -> tuple[Entry, ...]:
        """The facts that stand, in the order they were told."""
        return standing(self.notes)

    def happened(self) -> tuple[tuple[date, Entry], ...]:
        """The facts that stand with their days, in the order they happened."""
        return tuple((place[0], entry) for place, entry in zip(self.line.places, self.line.entries, strict=True))

    def before(self, day: date, note: int) -> Herd:
        """The herd as it was before a note of that number about that day."""
        return self.line.before(bisect_right(self.line.places, (day, note, -1, 0)))

    def with_note(self, note: Note, told: int = 0) -> Book:
        """The book with a note taken in. Its number must be higher than those before.

        told  how many of the note's facts the book has already, from the same note when it said no more
        """
        notes = (*(self.notes[:-1] if told else self.notes), note)
        if (
            len(note.facts) - told > STRIDE
            or note.reverses
            or any(_timezone_after(fact, self.timezone) != self.timezone for fact in note.facts[told:])
        ):
            return book(self.start, notes, self.line)
        line, came = self.line, dict(self.came)
        for index, fact in enumerate(note.facts[told:], start=told):
            entry = Entry(note, index, fact)
            place = _not_before(came, _place(entry, self.timezone), fact)
            _arrive(came, fact, place[0])
            position = bisect_right(line.places, place)
            after = list(zip(line.places[position:], line.entries[position:], strict=True))
            line = line.rewritten(position, [(place, entry), *after])
        return replace(self, notes=notes, line=line, came=came)


def book(start: Herd, notes: Iterable[Note] = (), line: Line | None = None) -> Book:
    """The book of these notes, worked out whole; with the `line` of an earlier state, only from the first difference on."""
    told = tuple(notes)
    stands = standing(told)
    timezone = start.settings.timezone
    for entry in stands:
        timezone = _timezone_after(entry.fact, timezone)
    known = line if line is not None else Line(start, herd=start)
    placed = _placed(start.settings.timezone, stands)
    came: dict[str, date] = {}
    for place, entry in sorted(placed, key=lambda pair: pair[0][1:]):
        _arrive(came, entry.fact, place[0])
    return Book(start, told, known.changed(placed), timezone, came)


def reversed_by(notes: Sequence[Note]) -> Mapping[Target, int]:
    """What is taken back today, and by which note."""
    gone: dict[Target, int] = {}
    for note in sorted(notes, key=lambda each: each.id, reverse=True):
        if Target(note.id) not in gone:
            gone.update({target: note.id for target in note.reverses if target not in gone})
    return gone
