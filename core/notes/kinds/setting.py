"""How the farm wants things."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.herd import settings
from core.herd.state import Herd
from core.herd.wishes import BY_BREED, WISHES, normal
from core.notes.fact import SettingValue
from core.notes.kind import Example, Kind
from core.notes.telling import grams
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingChanged:
    """How the farm wants things."""

    kind: ClassVar[str] = "setting"

    name: str
    value: SettingValue
    breed: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: SettingChanged, _herd: Herd, _today: date) -> Problem | None:
    """A setting there is, and a value that it can have."""
    if fact.name not in WISHES:
        return Problem("what", f"There is no setting {fact.name}.", (), 'Ask "help settings" for all there are.')
    if fact.breed is not None and fact.name not in BY_BREED:
        return Problem("what", f"{_plain(fact.name)} can't be set for one breed.", (), "Send it again without the breed.")
    if normal(fact.name, fact.value) is None:
        return Problem("what", f"{_plain(fact.name)} can't be {fact.value}.", (), "Send it again with another value.")
    return None


def apply(fact: SettingChanged, herd: Herd) -> Herd:
    """The farm wants it so from then on."""
    value = normal(fact.name, fact.value)
    if value is None:
        return herd
    return replace(herd, settings=settings.changed(herd.settings, fact.name, value, fact.breed))


_GRAMS = frozenset({"target_weight", "feed_bag", "cup_weight"})
_SHARES = frozenset({"highest_coi", "lowest_survival"})


def _plain(name: str) -> str:
    return name.replace("_", " ").capitalize()


def reply(fact: SettingChanged, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The setting in the farm's own units."""
    value = normal(fact.name, fact.value)
    if value is None:
        return (f"{_plain(fact.name)} can't be {fact.value}.",)
    shown = grams(after, value) if fact.name in _GRAMS else words.share(value) if fact.name in _SHARES else str(value)
    breed = f" for {fact.breed}" if fact.breed is not None else ""
    return (words.sentence(f"{_plain(fact.name)}{breed}: {shown}"),)


def show(fact: SettingChanged, _herd: Herd) -> str:
    """`setting target_weight for Mini Rex is 2041`."""
    breed = f" for {fact.breed}" if fact.breed is not None else ""
    return f"setting {fact.name}{breed} is {fact.value}"


KIND = Kind(fact=SettingChanged, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
