"""Cage cards: who sits in the cage, and lines to fill by hand; what the book knows stands on the first of them.

A doe's card has lines for matings and kindlings, a buck's for his does, a young one's for weights.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from core.handbook import reproduction
from core.herd.litters import live_born
from core.herd.matings import matings_of, matings_with
from core.herd.questions import living, stage
from core.herd.settings import target_weight
from core.herd.state import Animal, Herd, Litter, Mating
from core.notes.kinds.query import Query
from core.notes.reader import read
from core.notes.reading import Message
from core.notes.replay import zone
from core.reports.papers.calendar import on_one_line
from core.reports.papers.paper import written
from core.reports.papers.wanted import Wanted
from core.reports.wording import age, grams, short, tag_of

#: Lines of a card, and how many of them the book fills at most.
LINES = 5  # not a figure: what a card holds
FILLED = 2

NOON = time(12)  # not a figure: an hour that lies within its day everywhere

DOE = ("Bred", "Buck", "Due", "Kindled", "Alive", "Weaned")
BUCK = ("Doe", "Bred", "Kindled", "Alive")
YOUNG = ("Weighed", "Age", "Weight", "Note")

Line = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CageCard:
    """One animal's card.

    asks     the word W by which the chat's `card W` means this animal; None where it would mean another, or nobody
    told     what it is, short: `doe`, `Mini Rex`, `castor`
    facts    name and value of what else is known: born, sire and dam (empty: to fill by hand), cage
    columns  the heads of the lines to fill by hand
    lines    the lines, those the book knows filled; each as long as `columns`
    """

    tag: str
    asks: str | None
    name: str
    told: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    columns: Line
    lines: tuple[Line, ...]


def cage_cards(herd: Herd, today: date, asked: Wanted) -> tuple[CageCard, ...]:
    """The cards of one animal, or of all that sit in cages of their own (kits sit with their dams), in the order of the cages."""
    return tuple(_card(herd, today, animal) for animal in _carded(herd, today, asked))


def _carded(herd: Herd, today: date, asked: Wanted) -> list[Animal]:
    if asked.who:
        one = herd.find(asked.who)
        return [one] if one else []
    found = living(herd, sex=_sex(asked.scope), breed=asked.breed)
    stages = {"grow-outs": {"grow-out"}, "bucks": {"junior", "senior"}, "does": {"junior", "senior"}}
    wanted = stages.get(asked.scope or "", {"grow-out", "junior", "senior"})
    return sorted((one for one in found if stage(herd, one, today) in wanted), key=lambda one: _by_cage(one.cage))


def _sex(scope: str | None) -> str | None:
    return scope.removesuffix("s") if scope in {"bucks", "does"} else None


def _by_cage(cage: str | None) -> tuple[bool, list[tuple[bool, int, str]]]:
    """Cages as they hang: B2 before B10, those without one last."""
    parts = re.findall(r"\d+|\D+", cage or "")
    return cage is None, [(part.isdecimal(), int(part) if part.isdecimal() else 0, part.lower()) for part in parts]


def _card(herd: Herd, today: date, one: Animal) -> CageCard:
    young = stage(herd, one, today) in {"kit", "grow-out"}
    columns, lines = _lines(herd, one, young=young)
    told = (one.sex or "rabbit", one.breed or "", one.color or "")
    blank = tuple("" for _ in columns)
    return CageCard(
        tag=on_one_line(one.tag),
        asks=_asks(herd, today, one),
        name=on_one_line(one.name or ""),
        told=tuple(on_one_line(part) for part in told if part),
        facts=tuple((name, on_one_line(value)) for name, value in _facts(herd, one, young=young)),
        columns=columns,
        lines=(*lines, *(blank for _ in range(LINES - len(lines)))),
    )


def _asks(herd: Herd, today: date, one: Animal) -> str | None:
    """The tag as one word, where the chat reads it so: a roster may hold tags that no note can name."""
    word = "".join(one.tag.split())
    noon = datetime.combine(today, NOON, zone(herd.settings.timezone))
    found = read(Message(f"card {word}", noon, ""), herd)
    asked = [fact for fact in found.facts if isinstance(fact, Query) and fact.about == "card" and fact.who is not None]
    means = {animal.key for fact in asked if (animal := herd.find(fact.who or "")) is not None}
    return word if means == {one.key} and len(found.facts) == 1 else None


def _facts(herd: Herd, one: Animal, *, young: bool) -> tuple[tuple[str, str], ...]:
    wanted = grams(herd.settings, target_weight(herd.settings, one.breed)) if young else ""
    told = (("Cage", one.cage or ""), ("Wanted at 16 weeks", wanted))
    return (
        ("Born", written(one.born)),
        ("Sire", _named(herd, one.sire)),
        ("Dam", _named(herd, one.dam)),
        *((name, value) for name, value in told if value),
    )


def _named(herd: Herd, key: str | None) -> str:
    animal = herd.animals.get(key or "")
    return short(animal) if animal else key or ""


def _lines(herd: Herd, one: Animal, *, young: bool) -> tuple[Line, tuple[Line, ...]]:
    if young:
        return YOUNG, tuple(_weighed(herd, one, at) for at in range(len(one.weights))[-FILLED:])
    if one.sex == "buck":
        return BUCK, tuple(_of_buck(herd, each) for each in matings_with(herd, one.key)[-FILLED:])
    return DOE, tuple(_of_doe(herd, each) for each in matings_of(herd, one.key)[-FILLED:])


def _weighed(herd: Herd, one: Animal, at: int) -> Line:
    weight = one.weights[at]
    old = age((weight.on - one.born).days) if one.born else ""
    return written(weight.on), old, grams(herd.settings, weight.grams), ""


def _of_doe(herd: Herd, mating: Mating) -> Line:
    """A mating: while it is open, when she is due; then what came of it."""
    litter = _litter(herd, mating)
    due = written(mating.on + timedelta(days=reproduction.GESTATION_DAYS.whole)) if mating.outcome is None else ""
    weaned = "" if litter is None or litter.weaned is None else str(litter.weaned)
    return written(mating.on), tag_of(herd, mating.buck) or "", due, *_kindled(mating, litter), weaned


def _of_buck(herd: Herd, mating: Mating) -> Line:
    return tag_of(herd, mating.doe) or "", written(mating.on), *_kindled(mating, _litter(herd, mating))


def _kindled(mating: Mating, litter: Litter | None) -> tuple[str, str]:
    """When she kindled and how many lived; in a word what else came of it."""
    if litter is not None:
        return written(litter.born_on), str(live_born(litter))
    return (mating.outcome or "").replace("open", "palpated open").replace("rebred", "bred again"), ""


def _litter(herd: Herd, mating: Mating) -> Litter | None:
    """The litter that came of the mating."""
    if mating.outcome != "kindled":
        return None
    return next((each for each in herd.litters.values() if each.dam == mating.doe and each.born_on == mating.ended_on), None)
