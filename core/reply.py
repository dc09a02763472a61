"""Replies as values: plain lines and a few choices. The shells decide how they look."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Choice:
    """A button or a numbered line: what it shows, and the words that choosing it sends."""

    label: str
    says: str


@dataclass(frozen=True, slots=True)
class Reply:
    """What goes back to the person: lines of plain text, and choices under them."""

    lines: tuple[str, ...]
    choices: tuple[Choice, ...] = ()

    @property
    def text(self) -> str:
        """The lines as one text."""
        return "\n".join(self.lines)
