"""Which part of the herd a paper is about, also as the key under which the shells ask for it."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import parse_qsl, urlencode


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a paper is to show; None leaves it open.

    who    the tag of the one animal
    scope  bucks, does, grow-outs, all
    breed  one breed
    days   how many days ahead
    """

    who: str | None = None
    scope: str | None = None
    breed: str | None = None
    days: int | None = None

    def key(self) -> str | None:
        """The same as one line of text, `who=14&days=30`; None where everything is left open."""
        fields = (("who", self.who), ("scope", self.scope), ("breed", self.breed), ("days", self.days))
        return urlencode([(name, value) for name, value in fields if value is not None]) or None


def wanted(key: str | None) -> Wanted:
    """What such a line says."""
    said = dict(parse_qsl(key or ""))
    return Wanted(said.get("who"), said.get("scope"), said.get("breed"), int(said["days"]) if "days" in said else None)
