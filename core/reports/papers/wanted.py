"""Which part of the herd a paper is about, also as the key under which the shells ask for it."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Any
from urllib.parse import parse_qsl, urlencode

#: Which parts of a wish are numbers.
NUMBERS = {"days", "generations"}


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a paper is to show; None leaves it open.

    who          the one animal, by tag or name
    scope        bucks, does, grow-outs, all
    breed        one breed
    days         how many days ahead
    generations  how many generations of ancestors
    size         of the sheet: letter, a4
    """

    who: str | None = None
    scope: str | None = None
    breed: str | None = None
    days: int | None = None
    generations: int | None = None
    size: str | None = None

    def of(self, who: str) -> Wanted:
        """The same of that animal."""
        return replace(self, who=who)

    def key(self) -> str | None:
        """The same as one line of text, `who=14&days=30`; None where everything is left open."""
        told = [(each.name, getattr(self, each.name)) for each in fields(self)]
        return urlencode([(name, value) for name, value in told if value is not None]) or None


def wanted(key: str | None) -> Wanted:
    """What such a line says."""
    said: dict[str, Any] = dict(parse_qsl(key or "", keep_blank_values=True))
    return Wanted(**said | {name: int(said[name]) for name in NUMBERS & set(said)})
