"""Words kept as they are."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core.handbook import health
from core.herd.changes import seen
from core.herd.state import Event, Herd
from core.notes.checking import not_yet
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted, own_words, said, shortened, whom
from core.notes.unanswered import is_asked, unanswered
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Words kept as they are."""

    kind: ClassVar[str] = "remark"

    text: str
    on: date
    who: Tag | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("twelve cages are clean", ({"text": "twelve cages are clean", "on": "2026-11-25"},)),
    Example("filled 14 bottles", ({"text": "filled 14 bottles", "on": "2026-11-25"},)),
    Example(
        "thought she lost one but all seven were there",
        ({"text": "thought she lost one but all seven were there", "on": "2026-11-25"},),
    ),
    Example("Juno looks rough", ({"text": "Juno looks rough", "on": "2026-11-25", "who": "14"},)),
    Example("the fan quit in the barn", ({"text": "the fan quit in the barn", "on": "2026-11-25"},)),
    Example("14 hasn't kindled yet", ({"text": "14 hasn't kindled yet", "on": "2026-11-25", "who": "14"},)),
    Example("Thistle seems off today", ({"text": "Thistle seems off today", "on": "2026-11-25", "who": "16"},)),
    Example("Biscuit might be bred, hard to say", ({"text": "Biscuit might be bred, hard to say", "on": "2026-11-25", "who": "22"},)),
    Example("I need to decide about Moss", ({"text": "I need to decide about Moss", "on": "2026-11-25", "who": "5"},)),
    Example(
        "thought she lost one but all seven were there", ({"text": "thought she lost one but all seven were there", "on": "2026-11-25"},)
    ),
    Example("who's bred", ({"text": "who's bred", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "14 kindled 8, 2 dead",
    "31 4-6",
    "undo",
)

OPENS: Final = ()
CUES: Final[dict[str, str]] = {}


def check(fact: Remark, _herd: Herd, today: date) -> Problem | None:
    """Anything may be remarked, of animals that left too; not in the future."""
    return not_yet(fact.on, today)


def apply(fact: Remark, herd: Herd) -> Herd:
    """Kept with the animal, or with the farm."""
    if fact.who is not None and herd.find(fact.who) is not None:
        return seen(herd, fact.who, fact.on, fact.kind, {"text": fact.text})
    return replace(herd, remarks=(*herd.remarks, Event(fact.on, fact.kind, said(fact))))


def reply(fact: Remark, _before: Herd, after: Herd) -> tuple[str, ...]:
    """Kept as it was typed, a question with those that are answered; where it sounds like a vet's matter, that is said."""
    who = f" for {whom(after, fact.who)}" if fact.who is not None else ""
    urgent = fact.who is not None and any(re.search(rf"\b{re.escape(flag)}\b", fact.text.lower()) for flag in health.RED_FLAGS)
    if is_asked(fact.text):
        line = unanswered(fact.text, shortened(fact.text), after, fact.who)
    else:
        line = dated(f"Kept as a remark{who}: {shortened(fact.text)}", fact.on, after)
    return (line, health.CALL_A_VET) if urgent else (line,)


WRITTEN = ("remark(?: on {who:TAG})?: {text:WORDS}",)


def show(fact: Remark, _herd: Herd) -> str:
    """`2026-11-25: remark on 16: looks rough today`."""
    return noted(fact.on, f"remark on {fact.who}: {own_words(fact.text)}" if fact.who is not None else f"remark: {own_words(fact.text)}")


KIND = Kind(fact=Remark, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
