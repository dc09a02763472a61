"""What stands on a paper of lists: sections under each other, of lines and of rows in columns."""

from __future__ import annotations

from dataclasses import dataclass

Row = tuple[str, ...]
#: A space at which no line is broken.
HARD_SPACE = "\u00a0"


@dataclass(frozen=True, slots=True)
class Section:
    """A part with its head.

    lines    text above the rows
    columns  the heads of the rows; none where they speak for themselves
    rows     all of one length; an empty cell is for the pencil
    to_tick  whether each row has a box to tick
    """

    head: str = ""
    lines: tuple[str, ...] = ()
    columns: Row = ()
    rows: tuple[Row, ...] = ()
    to_tick: bool = False


@dataclass(frozen=True, slots=True)
class Leaf:
    """What begins on a page of its own. `lead` stands above the sections, `foot` below them."""

    title: str
    sections: tuple[Section, ...]
    lead: tuple[str, ...] = ()
    foot: tuple[str, ...] = ()


def unbroken(text: str) -> str:
    """Text that stays on one line."""
    return text.replace(" ", HARD_SPACE)
