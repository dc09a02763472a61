"""What an undo names beside its animal and its kind: `undo the 6 lb weight on 31`, `take back the sneezing`.

Such an undo takes back a note that these words fit, or none: a wrong note taken back is worse than a question.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from core.herd.questions import same_tag
from core.herd.state import Herd
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Scene
from core.notes.fact import Fact, to_json
from core.notes.grammar import LEXICON
from core.notes.journal import Entry
from core.notes.kinds import KIND_OF
from core.notes.kinds.undoing import ABOUT, Undo, named_behind, noun
from core.notes.reading import Context
from core.notes.slots.animals import words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.tokens import tokens
from core.notes.talk.doubt import echo
from core.notes.talk.recall import subject_of
from core.words import weight

_WEIGHTS: Final = ("grams", "live_grams", "dressed_grams")
_STEM: Final = 4  # not a figure: letters by which `sneezed` is known for `sneezing`
_OFFERED: Final = 3  # notes that are offered where none fits


@dataclass(frozen=True, slots=True)
class Named:
    """What the words behind an undo name: `said` as they stand there, the rest as it is looked for in a fact."""

    said: str = ""
    weights: tuple[int, ...] = ()  # [g]
    prices: tuple[int, ...] = ()  # in hundredths
    numbers: tuple[str, ...] = ()
    days: tuple[date, ...] = ()
    words: tuple[str, ...] = ()

    @property
    def anything(self) -> bool:
        """Whether anything is named that a fact must hold."""
        return bool(self.weights or self.prices or self.numbers or self.days or self.words)


def named(text: str, undo: Undo, herd: Herd, today: date) -> Named:
    """What the message says of the note that it takes back. Words tell it only where no kind does."""
    found = tokens(text)
    scene = Scene(herd, words_of(herd), today, Context(), text, "", {}, found)
    whole = Clause(Scan(found, scene.words, LEXICON).run(), scene)
    cue = whole.first("undo")
    behind = Clause(named_behind(whole, cue), scene) if cue is not None else Clause([], scene)
    return Named(
        " ".join(item.said for item in behind.items),
        tuple(grams for i in behind.sorted_as("weight", "pair") if (grams := behind.grams(i)) is not None),
        tuple(behind.items[i].value for i in behind.sorted_as("money")),
        tuple(str(number) for i in behind.sorted_as("num") if not _is_whose(behind, i, undo) and (number := behind.whole(i)) is not None),
        tuple(day for i in behind.dates() if (day := behind.resolved(behind.items[i].value, "past").on) is not None),
        _words(behind) if undo.about is None else (),
    )


def _is_whose(behind: Clause, i: int, undo: Undo) -> bool:
    """Whether the number is the tag of the animal whose note is taken back."""
    animal = behind.known(i)
    return animal is not None and undo.who is not None and same_tag(animal.tag, undo.who)


def _words(behind: Clause) -> tuple[str, ...]:
    said = (word for item in behind.items if item.sort == "word" for word in item.said.lower().split())
    return tuple(word for word in said if word not in ABOUT)


def fits(fact: Fact, wanted: Named, herd: Herd) -> bool:
    """Whether the fact holds every figure that is named, and one of the words."""
    said, line = to_json(fact), f"{fact.kind} {noun(fact.kind)} {KIND_OF[fact.kind].show(fact, herd)} {echo(fact, herd)}".lower()
    units = herd.settings.weight_units
    shown = {weight(said[name], units) for name in _WEIGHTS if name in said}
    figures = set(re.findall(r"\d+(?:\.\d+)?", line))
    return (
        all(weight(grams, units) in shown for grams in wanted.weights)
        and all(said.get("price") == f"{cents // 100}.{cents % 100:02d}" for cents in wanted.prices)
        and all(number in figures for number in wanted.numbers)
        and all(said.get("on") == day.isoformat() for day in wanted.days)
        and (not wanted.words or any(_told(word, re.findall(r"[a-z]+", line)) for word in wanted.words))
    )


def _told(word: str, line: Sequence[str]) -> bool:
    """Whether the word, or another form of it, stands in the line."""
    return word in line or (len(word) >= _STEM and any(each.startswith(word[:_STEM]) for each in line))


def offered(entries: Iterable[Sequence[Entry]], herd: Herd) -> dict[str, str]:
    """The last notes: how each is taken back, and what that is."""
    found: dict[str, str] = {}
    for first, *_ in entries:
        found.setdefault(way_back(first.fact), echo(first.fact, herd))
        if len(found) == _OFFERED:
            break
    return found


def way_back(fact: Fact) -> str:
    """`undo the weight on 31`."""
    subject = subject_of(fact)
    return f"undo the {noun(fact.kind)}" + (f" on {subject}" if subject is not None else "")
