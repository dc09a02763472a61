"""Replies as values: plain lines and a few choices. The shells decide how they look."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Choice:
    """A button or a numbered line: what it shows, and the words that choosing it sends."""

    label: str
    says: str


@dataclass(frozen=True, slots=True)
class Attached:
    """A file that goes with a reply, told and not yet made: the shell makes it when it sends.

    what    its sort, which says who makes it: picture, paper, calendar, photo or export
    about   which one of its sort: `growing`, `cage_cards`, ...
    key     whom or what it is about (a tag, a litter, a number of ours); None where it is about the farm
    name    the file's name, with its ending
    alt     the same in words, for who can't see it or has to wait for it
    """

    what: str
    about: str
    key: str | None
    name: str
    alt: str


@dataclass(frozen=True, slots=True)
class Reply:
    """What goes back to the person: lines of plain text, choices under them, and files that go with them."""

    lines: tuple[str, ...]
    choices: tuple[Choice, ...] = ()
    attached: tuple[Attached, ...] = ()

    @property
    def text(self) -> str:
        """The lines as one text."""
        return "\n".join(self.lines)
