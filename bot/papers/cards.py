"""Cage cards: six on a sheet, with marks to cut along."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.papers.qr import link, matrix
from bot.papers.sheet import GREY, PALE, Look, Sheet

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.app.papers import CageCard, Paper

ACROSS, DOWN = 2, 3
MARGIN = 9.0
#: Inside a card [mm].
PAD = 4.0
CODE = 21.0
TICK = 4.0
HEAD = 4.4
FACT = 5.4
#: How high a line to write on becomes at most, and what is left above the first.
ROW = 8.4
GAP = 1.5
TAG = Look(40, bold=True)
NAME = Look(15, bold=True)
SMALL = Look(7.5, grey=True)
PARENTS = ("Sire", "Dam")
#: How wide columns are, those of dates first; the others take one part.
WIDE = {"Bred": 1.75, "Due": 1.75, "Kindled": 1.75, "Weighed": 1.3, "Note": 1.3}


def draw(sheet: Sheet, paper: Paper, bot: str | None) -> None:
    """All cards, in order."""
    cards: Sequence[CageCard] = paper.content
    room = ((sheet.width - 2 * MARGIN) / ACROSS, (sheet.height - 2 * MARGIN) / DOWN)
    for at, card in enumerate(cards):
        on_page = at % (ACROSS * DOWN)
        if on_page == 0:
            sheet.page()
            _marks(sheet, room)
        place = (MARGIN + on_page % ACROSS * room[0], MARGIN + on_page // ACROSS * room[1])
        _card(sheet, place, room, card, bot)


def _marks(sheet: Sheet, room: tuple[float, float]) -> None:
    """Ticks at the edges and small crosses between the cards: where to cut."""
    xs = [MARGIN + at * room[0] for at in range(ACROSS + 1)]
    ys = [MARGIN + at * room[1] for at in range(DOWN + 1)]
    for x in xs:
        for y in ys:
            sheet.rule((x - TICK / 2, y), (x + TICK / 2, y))
            sheet.rule((x, y - TICK / 2), (x, y + TICK / 2))


def _card(sheet: Sheet, place: tuple[float, float], room: tuple[float, float], card: CageCard, bot: str | None) -> None:
    left, top = place[0] + PAD, place[1] + PAD
    wide, high = room[0] - 2 * PAD, room[1] - 2 * PAD
    address = link(bot, card.asks) if bot and card.asks else None
    if address:
        sheet.dots((left + wide - CODE, top), CODE, matrix(address))
    beside = wide - (CODE + 3 if address else 0)
    sheet.line_of((left, top - 1.5), beside, card.tag, TAG)
    sheet.box((left, top + 15), (beside, 7.5), card.name, NAME)
    below = top + 23.5
    sheet.line_of((left, below), wide, " · ".join(card.told), Look(10.5))
    facts = below + FACT
    table = facts + _facts(sheet, (left, facts), wide, card) + GAP
    _lines(sheet, (left, table), (wide, top + high - table), card)


def _facts(sheet: Sheet, place: tuple[float, float], wide: float, card: CageCard) -> float:
    """Parents on lines of their own, the rest two a line. How high it became."""
    ordered = sorted(card.facts, key=lambda fact: fact[0] not in PARENTS)
    spots = [(name, value, wide if name in PARENTS else wide / 2) for name, value in ordered]
    left, top = place
    x, y = left, top
    for name, value, room in spots:
        if x + room > left + wide + 0.1:
            x, y = left, y + FACT
        _fact(sheet, (x, y), room, name, value)
        x += room
    return y + FACT - top


def _fact(sheet: Sheet, place: tuple[float, float], wide: float, name: str, value: str) -> None:
    """Its name in small letters, then the value, or a line to write it on."""
    x, y = place
    named = sheet.wide(f"{name} ", SMALL) + 0.6
    sheet.line_of((x, y + 0.55), wide, name, SMALL)
    sheet.line_of((x + named, y), wide - named - 2, value, Look(9.5))
    if not value:
        sheet.rule((x + named, y + 4), (x + wide - 4, y + 4), 0.15, GREY)


def _lines(sheet: Sheet, place: tuple[float, float], room: tuple[float, float], card: CageCard) -> None:
    """The lines to fill by hand, those that the book knows filled."""
    (left, top), (wide, high) = place, room
    row = min(ROW, (high - HEAD) / len(card.lines))
    parts = [WIDE.get(name, 1.0) for name in card.columns]
    edges = [left + wide * sum(parts[:at]) / sum(parts) for at in range(len(parts) + 1)]
    bottom = top + HEAD + len(card.lines) * row
    for at, name in enumerate(card.columns):
        sheet.line_of((edges[at] + 0.6, top), edges[at + 1] - edges[at] - 1, name, SMALL)
    for x in edges[1:-1]:
        sheet.rule((x, top + HEAD), (x, bottom), 0.15, PALE)
    for number, line in enumerate((*card.lines, ())):
        y = top + HEAD + number * row
        sheet.rule((left, y), (left + wide, y), 0.2 if number else 0.35)
        for at, value in enumerate(line):
            sheet.line_of((edges[at] + 0.6, y + row / 2 - 2), edges[at + 1] - edges[at] - 1.2, value, Look(8.5))
