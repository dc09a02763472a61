"""Papers as PDF: which file draws which of them."""

from __future__ import annotations

import importlib
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.papers.sheet import Sheet

if TYPE_CHECKING:
    from core.app.papers import Paper

#: paper -> the module whose `draw` draws it, and whether its sheets lie across
DRAWN = {
    "cards": ("bot.papers.cards", False),
    "pedigree": ("bot.papers.pedigree", True),
    "litter": ("bot.papers.leaf", False),
    "plan": ("bot.papers.leaf", False),
    "chores": ("bot.papers.leaf", False),
    "crib": ("bot.papers.leaf", False),
}


#: Papers that are cut up.
WITHOUT_FOOT = {"cards"}


@dataclass(frozen=True, slots=True)
class Printed:
    """A finished paper: the file, how many pages it has, and the letters that no font at hand has."""

    content: bytes
    pages: int
    missing: str


def pdf(paper: Paper, bot: str | None = None) -> Printed:
    """The paper drawn. `bot` is the name under which QR codes find the chat; without one there are none."""
    where, across = DRAWN[paper.about]
    sheet = Sheet(paper.size, f"{paper.title}: {paper.farm}", paper.made_at, across=across)
    importlib.import_module(where).draw(sheet, paper, bot)
    if paper.about not in WITHOUT_FOOT:
        sheet.feet(f"{paper.farm}, as of {paper.day.day} {paper.day:%b} {paper.day.year}")
    return Printed(sheet.content(), sheet.pages, "".join(sorted(sheet.letters.missing)))
