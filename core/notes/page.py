"""The reference page of what a note can say: `python -m core.notes.page > docs/reference/notes.md`."""

from __future__ import annotations

import json
import sys
from dataclasses import MISSING, fields
from typing import Any, Final

from core.notes.fact import Fact
from core.notes.kind import Example, Kind
from core.notes.kinds import KIND_OF
from core.notes.situations import SITUATIONS, Situation

_HEAD: Final = """# What a note can say

By what goes on in the barn: every kind of note, with words that give it and the fact that comes of them. Made by `python -m core.notes.page`; don't edit it by hand.
The examples are read against an invented farm, and a test fails where one is read otherwise.

`haynote read` shows what a note of yours would become, and writes nothing down; `haynote read --explain` also shows why.
On one page, for the barn wall: [Crib](crib.md).

- Animals stand under their tags: `who` for any animal; `doe`, `buck`, `dam`, `sire` where the sex is part of the meaning. Untagged kits are
  `litter_of` the doe, with a `count`.
- Weights are in grams, money is text with two decimals, temperatures are in degrees Celsius, dates are ISO.
- `on` is the day it happened: the day of the message unless the note says otherwise. A field that was not said is absent.
- A note may say several things: each becomes a fact of its own."""

#: How the types of fields are told to people.
_TYPES: Final = {
    "Tag": "tag", "str": "text", "int": "whole number", "float": "number", "bool": "true or false", "date": "date", "Cents": "money",
    "ColorCounts": "colors with counts", "Fields": "fields with new values", "SettingValue": "value", "Sex": "buck or doe",
}  # fmt: skip


def page() -> str:
    """The whole page, in Markdown."""
    return "\n\n".join((_HEAD, _contents(), *(_situation(one) for one in SITUATIONS))) + "\n"


def _contents() -> str:
    """Where to look: each situation with its kinds."""
    return "\n".join(f"- [{one.name.capitalize()}](#{one.name.replace(' ', '-')}): {', '.join(one.kinds)}" for one in SITUATIONS)


def _situation(situation: Situation) -> str:
    """A situation: in short, then kind by kind."""
    short = " · ".join(_cell(saying) for saying in situation.sayings)
    return "\n\n".join((f"## {situation.name.capitalize()}", f"In short: {short}", *(_section(KIND_OF[name]) for name in situation.kinds)))


def _section(kind: Kind) -> str:
    """One kind: what it is, its fields, words that say it, words that don't."""
    parts = [f"### {kind.name}", _about(kind.fact), f"Fields: {', '.join(_fields(kind.fact))}."]
    if kind.examples:
        rows = [f"| {_cell(one.text)} | {'<br>'.join(f'`{fact}`' for fact in facts_of(kind, one))} |" for one in kind.examples]
        parts.append("\n".join(("| note | becomes |", "|---|---|", *rows)))
    if kind.not_this:
        parts.append("Not of this kind: " + " · ".join(_cell(text) for text in kind.not_this))
    return "\n\n".join(parts)


def _about(fact: type[Fact]) -> str:
    return (fact.__doc__ or "").strip().splitlines()[0]


def _fields(fact: type[Fact]) -> list[str]:
    """`` `doe` (tag) ``, `` `born`? (whole number) ``: the question mark says that it may be absent."""
    told = []
    for field in fields(fact):
        of_type = str(field.type).removesuffix(" | None")
        absent = "" if field.default is MISSING else "?"
        told.append(f"`{field.name.rstrip('_')}`{absent} ({_TYPES.get(of_type, of_type)})")
    return told


def facts_of(kind: Kind, example: Example) -> list[str]:
    """The example's facts as one-line JSON, with their kind first."""
    told: list[dict[str, Any]] = [{"kind": fact.get("kind", kind.name)} | fact for fact in example.facts]
    return [json.dumps(fact, ensure_ascii=False) for fact in told]


def _cell(text: str) -> str:
    """Words of a note where a table can hold them."""
    return "`" + text.replace("|", "\\|").replace("\n", " ⏎ ") + "`"


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
