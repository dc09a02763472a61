"""Which papers there are, and what each needs: the herd, the day and the wish in, the paper or the reason why not out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from core.herd.questions import fitting
from core.herd.state import Herd
from core.notes.replay import local_day
from core.problem import Problem
from core.reports.papers.cage_cards import cage_cards
from core.reports.papers.paper import Paper, size_for
from core.reports.papers.wanted import Wanted
from core.words import count

ADD_ONE = "Add one: new doe 40 mini rex born 3/4"
NO_CARDS = Problem("no_paper", "There is nothing to print: no such animal sits in a cage of its own.", remedy=ADD_ONE)


@dataclass(frozen=True, slots=True)
class Sheet:
    """What stands on a paper, with its title, its file's name and the same in words."""

    content: Any
    title: str
    name: str
    alt: str


def paper(herd: Herd, farm: str, about: str, wish: Wanted, now: datetime) -> Paper | Problem:
    """The paper of that name. KeyError where there is none such."""
    made = sheet(herd, local_day(now, herd), about, wish)
    if isinstance(made, Problem):
        return made
    return Paper(about, made.name, made.title, farm, now, size_for(herd.settings, wish.size), made.content, made.alt)


def sheet(herd: Herd, today: date, about: str, wish: Wanted) -> Sheet | Problem:
    """What stands on it on that day."""
    found = _with_tag(herd, wish)
    return found if isinstance(found, Problem) else PAPERS[about](herd, today, found)


def _with_tag(herd: Herd, wish: Wanted) -> Wanted | Problem:
    """The wish with its animal, named by tag or name, by its tag."""
    if wish.who is None:
        return wish
    fits = fitting(herd, wish.who)
    if len(fits) == 1:
        return wish.of(fits[0].tag)
    which = f"{wish.who} is the name of several" if fits else f"There is no animal {wish.who} on the book"
    return Problem("no_animal", f"{which}.", remedy="'haynote herd' lists the tags. To add one: new doe 40 mini rex born 3/4")


def _cards(herd: Herd, today: date, wish: Wanted) -> Sheet | Problem:
    cards = cage_cards(herd, today, wish)
    if not cards:
        return NO_CARDS
    name = f"cage-card-{file_part(cards[0].tag)}.pdf" if wish.who else "cage-cards.pdf"
    return Sheet(cards, "Cage cards", name, f"{count(len(cards), 'cage card')} to print.")


def file_part(text: str) -> str:
    """Text as a part of a file's name on any machine."""
    return "".join(letter if letter.isalnum() else "-" for letter in text).strip("-") or "x"


#: The papers by name.
PAPERS: dict[str, Callable[[Herd, date, Wanted], Sheet | Problem]] = {
    "cards": _cards,
}
