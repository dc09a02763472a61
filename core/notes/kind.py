"""A kind of note, whole: what the fact is, how it is said, checked, taken into the herd, answered and written back."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.chore import Chore
from core.herd.state import Herd
from core.notes.fact import Fact
from core.problem import Problem


@dataclass(frozen=True, slots=True)
class Example:
    """Words that must become exactly these facts (JSON form, `kind` left out where it is the file's own)."""

    text: str
    facts: tuple[dict[str, Any], ...]


def no_problem(_fact: Any, _herd: Herd, _today: date) -> Problem | None:
    """The check of a kind that can't be wrong."""
    return None


def no_change(_fact: Any, herd: Herd) -> Herd:
    """The effect of a kind that changes nothing."""
    return herd


def no_chores(_herd: Herd, _today: date) -> Iterable[Chore]:
    """The chores of a kind that causes none."""
    return ()


@dataclass(frozen=True, slots=True)
class Kind:
    """The one place that lists what a kind can do.

    fact      the frozen dataclass of its facts
    examples  words with their facts; every one must have exactly one reading over all kinds
    not_this  words that must never become this kind
    check     (fact, herd before it, day it was told) -> the problem, if it can't be so or ought to be confirmed
    apply     (fact, herd) -> herd after it; never raises, whatever the herd: an undone note may leave later ones hanging
    chores    (herd, today) -> chores that this kind causes, done and moot ones left out
    reply     (fact, herd before, herd after) -> lines for the person: what was understood and what follows from it
    show      (fact, herd) -> the fact as a full sentence that reads as itself
    written   patterns of those sentences, `{doe:TAG}` standing for a field: `core.notes.written` reads them back
    plain     a reply of one line says no more than the note did, and nothing follows from it: where the farm likes, a thumb up says as much
    """

    fact: type[Fact]
    examples: tuple[Example, ...]
    not_this: tuple[str, ...]
    reply: Callable[[Any, Herd, Herd], tuple[str, ...]]
    show: Callable[[Any, Herd], str]
    check: Callable[[Any, Herd, date], Problem | None] = no_problem
    apply: Callable[[Any, Herd], Herd] = no_change
    chores: Callable[[Herd, date], Iterable[Chore]] = no_chores
    written: tuple[str, ...] = ()
    plain: bool = False

    @property
    def name(self) -> str:
        """The kind's name in the contract."""
        return self.fact.kind
