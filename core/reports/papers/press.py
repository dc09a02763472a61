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
from core.reports.papers.chores_sheet import chores_sheet
from core.reports.papers.crib_sheet import crib_sheet
from core.reports.papers.litter_record import litter_records
from core.reports.papers.paper import Paper, size_for
from core.reports.papers.pedigree import pedigree_tree
from core.reports.papers.plan_sheet import plan_sheet
from core.reports.papers.wanted import Wanted
from core.words import count

ADD_ONE = "Add one: new doe 40 mini rex born 3/4"
NO_PLAN = Problem("no_paper", "There is nothing to print: nobody that is asked for is weaned and on the farm.", remedy=ADD_ONE)
NO_LITTER = Problem("no_paper", "There is nothing to print: no such litter is on the book.", remedy="Tell of one: doe 14 kindled 8, 2 dead")
WHOSE = Problem("no_animal", "Whose pedigree?", remedy="Name one: pedigree of 14")
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
    return Paper(about, made.name, made.title, farm, now, local_day(now, herd), size_for(herd.settings, wish.size), made.content, made.alt)


def sheet(herd: Herd, today: date, about: str, wish: Wanted) -> Sheet | Problem:
    """What stands on it on that day."""
    found = _with_tag(herd, wish)
    return found if isinstance(found, Problem) else SHEETS[about](herd, today, found)


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


def _pedigree(herd: Herd, today: date, wish: Wanted) -> Sheet | Problem:
    tree = pedigree_tree(herd, today, wish)
    if tree is None:
        return WHOSE
    alt = f"Pedigree of {tree.animal.named}, {count(len(tree.generations), 'generation')}. {tree.lines[0]}"
    return Sheet(tree, f"Pedigree of {tree.animal.named}", f"pedigree-{file_part(wish.who or '')}.pdf", alt)


def _litter(herd: Herd, _today: date, wish: Wanted) -> Sheet | Problem:
    records = litter_records(herd, wish)
    if not records:
        return NO_LITTER
    if wish.who:
        return Sheet(records, "Litter record", f"litter-{file_part(wish.who)}.pdf", f"{records[0].title}: its record to print.")
    return Sheet(records, "Litter records", "litters.pdf", f"{count(len(records), 'litter record')} to print.")


def _plan(herd: Herd, today: date, wish: Wanted) -> Sheet | Problem:
    leaf = plan_sheet(herd, today, wish)
    if leaf is None:
        return NO_PLAN
    told = ", ".join(section.head.lower() for section in leaf.sections)
    return Sheet((leaf,), "Keep or cull", "plan.pdf", f"The keep or cull plan to print: {told}.")


def _chores(herd: Herd, today: date, wish: Wanted) -> Sheet:
    leaf = chores_sheet(herd, today, wish)
    chores = sum(len(section.rows) for section in leaf.sections)
    return Sheet((leaf,), "Chores", "chores.pdf", f"{leaf.title}: {count(chores, 'chore')} to print.")


def _crib(_herd: Herd, _today: date, _wish: Wanted) -> Sheet:
    return Sheet((crib_sheet(),), "What to text when", "crib.pdf", "What to text when: a page for the barn wall.")


def file_part(text: str) -> str:
    """Text as a part of a file's name on any machine."""
    return "".join(letter if letter.isalnum() else "-" for letter in text).strip("-") or "x"


#: Each paper by its name.
SHEETS: dict[str, Callable[[Herd, date, Wanted], Sheet | Problem]] = {
    "cards": _cards,
    "pedigree": _pedigree,
    "litter": _litter,
    "plan": _plan,
    "chores": _chores,
    "crib": _crib,
}
