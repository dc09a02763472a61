"""The items of a statement by their marks, their sorts and their words, and which of them are taken already."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence, Set
from datetime import date
from typing import Final, Self

from core.herd.state import Herd
from core.notes.clauses.scene import Found, Scene
from core.notes.slots.animals import Mention
from core.notes.slots.dates import Said
from core.notes.slots.items import Item, marks_of

FILLERS: Final = frozenset(
    {
        "more", "good", "solid", ",", ":", "-", "(", ")", "=", ">", "the", "a", "an", "of", "her", "his", "and", "is", "is a", "was",
        "are", "were", "with", "at", "about", "only", "just", "em", "them", "my", "our", "that",
    }
)  # fmt: skip


class Marked:
    """The items of a statement by their marks, their sorts and their words, and which of them are taken already."""

    def __init__(self, items: list[Item], scene: Scene, before: Self | None = None, virtual: frozenset[str] = frozenset()) -> None:
        self.items = items
        self.scene = scene
        self.before = before
        self.virtual = virtual
        self.header: Said | None = None
        self.subject: Mention | None = None
        self.used: set[int] = set()
        self.found: list[Found] = []
        self._places: dict[str, list[int]] = {}  # indices of the items by sort, words left out
        self._words: set[str] = set()
        self._counted_items = self._heard_items = 0  # so many items are in them
        self._tags: list[int] = []  # indices of the numbers that are somebody's tag
        self._numbers_looked_up = 0
        self.beyond = False  # whether it is all that a message said after more statements than are read at once
        self.day_said: Item | None = None  # the date that the statement's facts share
        self.put_off = False  # whether what was read in it has not happened: it is wished, needed, yet to come, or denied
        self.condition = False  # whether what follows hangs on it: `if 14 kindles, ...`
        self.marks = marks_of(items, virtual)

    @property
    def herd(self) -> Herd:
        """The herd before the note."""
        return self.scene.herd

    @property
    def today(self) -> date:
        """The day of the message."""
        return self.scene.today

    def has(self, *marks: str) -> bool:
        """Whether any word carries one of these marks."""
        return not self.marks.isdisjoint(marks)

    def first(self, *marks: str) -> int | None:
        """Index of the first free item with one of these marks."""
        if self.marks.isdisjoint(marks):
            return None
        for i, item in enumerate(self.items):
            if item.marks and not item.marks.isdisjoint(marks) and id(item) not in self.used:
                return i
        return None

    def each(self, *marks: str) -> list[int]:
        """Indices of all free items with one of these marks."""
        if self.marks.isdisjoint(marks):
            return []
        return [i for i, item in enumerate(self.items) if item.marks and not item.marks.isdisjoint(marks) and id(item) not in self.used]

    def _sorts(self) -> dict[str, list[int]]:
        """Where the items of each sort stand, words left out."""
        places, begin = self._places, self._counted_items
        if begin != len(self.items):  # statements only grow
            for i, item in enumerate(self.items[begin:] if begin else self.items, begin):
                sort = item.sort
                if sort in places:
                    places[sort].append(i)
                elif sort != "word":
                    places[sort] = [i]
            self._counted_items = len(self.items)
        return places

    def sorts(self) -> Collection[str]:
        """The sorts of its items, words left out."""
        return self._sorts().keys()

    def places(self, sort: str) -> Sequence[int]:
        """Indices of the items of a sort, free or not."""
        return self._sorts().get(sort, ())

    def placed(self, sorts: Set[str]) -> list[int]:
        """Indices of the items of these sorts, free or not."""
        places = self._sorts()
        return sorted([i for sort in places.keys() & sorts for i in places[sort]])

    def holds(self, *sorts: str) -> bool:
        """Whether any item, free or not, is of one of these sorts."""
        return not self._sorts().keys().isdisjoint(sorts)

    def sorted_as(self, *sorts: str) -> list[int]:
        """Indices of the free items of these sorts."""
        places = self._places if self._counted_items == len(self.items) else self._sorts()
        if places.keys().isdisjoint(sorts):
            return []
        found = places[sorts[0]] if len(sorts) == 1 else sorted([i for sort in sorts if sort in places for i in places[sort]])
        used, items = self.used, self.items
        return [i for i in found if id(items[i]) not in used] if used else found[:]

    def taken(self, i: int) -> bool:
        """Whether a kind has used the item."""
        return id(self.items[i]) in self.used

    def take(self, found: Found) -> Found:
        """Mark what a reading used."""
        self.used.update(id(item) for item in found.used)
        self.found.append(found)
        return found

    def use(self, indices: Iterable[int]) -> None:
        """Mark items as explained without a fact."""
        self.used.update(id(self.items[i]) for i in indices)

    def said(self, i: int) -> str:
        """The words of an item; empty past the ends."""
        try:
            return self.items[i].said if i >= 0 else ""
        except IndexError:
            return ""

    def says(self, words: Set[str]) -> bool:
        """Whether one of these words is among its items."""
        return not words.isdisjoint(self.words())

    def words(self) -> Set[str]:
        """What its items say, each once."""
        begin = self._heard_items
        if begin != len(self.items):
            self._words.update([item.said for item in (self.items[begin:] if begin else self.items)])
            self._heard_items = len(self.items)
        return self._words

    def text(self) -> str:
        """The clause's words."""
        return " ".join(item.said for item in self.items)

    def whole(self, i: int) -> int | None:
        """The whole number of an item; None for anything else."""
        if not 0 <= i < len(self.items):
            return None
        item = self.items[i]
        if item.sort != "num" or id(item) in self.used:
            return None
        number = int(item.value)
        return number if item.value == number else None

    def past_fillers(self, i: int, step: int, most: int = 3) -> int:
        """The next index that is no small word."""
        for _ in range(most):
            if 0 <= i < len(self.items) and self.items[i].said in FILLERS:
                i += step
        return i

    def number_for(self, i: int, *, behind: bool = True) -> int | None:
        """Index of the whole number that belongs to the word at `i`: before it, else behind it."""
        before = self.past_fillers(i - 1, -1)
        if self.whole(before) is not None:
            return before
        if not behind:
            return None
        after = self.past_fillers(i + 1, 1)
        return after if self.whole(after) is not None else None
