"""What a statement is read against, and what is read from it: the scene, a reading, what it lacks, an animal taken."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from itertools import islice
from typing import Any, Final

from core.herd.state import Animal, Herd
from core.notes.fact import Fact
from core.notes.reading import Context
from core.notes.slots.animals import HerdWords, Mention
from core.notes.slots.dates import Said
from core.notes.slots.items import Item
from core.notes.slots.tokens import Token

ORDER: Final = ("which_animal", "wrong_sex", "when", "how_many", "which_number", "what", "impossible", "confirm", "duplicate")


@dataclass(frozen=True, slots=True)
class Scene:
    """All that a message is read against."""

    herd: Herd
    words: HerdWords
    today: date
    context: Context
    text: str = ""
    clock: str = ""  # the time of the message on the farm, `HH:MM`
    newcomers: dict[str, Animal] = field(default_factory=dict)  # animals that the message itself brings onto the book, by their tags
    tokens: Sequence[Token] = ()  # of the message, where its items stand


@dataclass(slots=True)
class Need:
    """What a reading lacks: why it asks, which field is wanted (or `confirm`), the words of the question, and likely answers."""

    why: str
    wanted: str
    text: str
    choices: tuple[str, ...] = ()


@dataclass(slots=True)
class Found:
    """What a kind read: the values of its fields, the items they came from, and what is missing if something is."""

    fact: type[Fact]
    values: dict[str, Any]
    used: list[Item] = field(default_factory=list)
    need: Need | None = None
    said: Mention | None = None


@dataclass(slots=True)
class Pick:
    """An animal taken from a clause."""

    mention: Mention
    items: list[Item]

    @property
    def tag(self) -> str | None:
        """The one animal meant."""
        return self.mention.tag


def when(said: Said | None) -> Need:
    """The question about a day that can't be."""
    _ = said
    return Need("when", "on", "Which day was that? I can't make a day of it that fits. For example: yesterday, or 24 nov.")


def unknown_animal(mention: Mention, field_name: str, words: HerdWords) -> Need:
    """The question about an animal that nobody knows, or that several could be."""
    if mention.tags:
        return Need("which_animal", field_name, f"Which one do you mean by \u201c{mention.said}\u201d?", mention.tags[:5])
    near = _near(mention.said, words)
    sex = "buck" if field_name in {"buck", "sire"} else "doe"
    new = (
        f"new {sex} {mention.said}"
        if any(letter.isdigit() for letter in mention.said)
        else f"new {sex} 40 named {mention.said.capitalize()}"
    )
    text = f"I don't know an animal \u201c{mention.said}\u201d. Which one is it? Send its tag or name; if it is new, first add it: \u201c{new}\u201d."
    return Need("which_animal", field_name, text, near)


def _near(said: str, words: HerdWords) -> tuple[str, ...]:
    """Living animals whose tags look like what was said, the likeliest first."""
    digits = "".join(sign for sign in said if sign.isdigit())
    if not digits:
        return ()
    alike = (
        animal.tag
        for animal in words.living()
        if animal.tag != said
        and (digits in animal.tag or (len(digits) == len(animal.tag) and sum(a != b for a, b in zip(digits, animal.tag, strict=True)) == 1))
    )
    return tuple(islice(alike, 5))  # not a figure: choices


def wrong_sex(mention: Mention, field_name: str, wanted: str) -> Need:
    """The question about an animal of the other sex."""
    other = "buck" if wanted == "doe" else "doe"
    return Need(
        "wrong_sex", field_name, f"{mention.tag or mention.said} is a {other} on the book, and this needs a {wanted}. Which {wanted} is it?"
    )


def first_need(one: Need | None, other: Need | None) -> Need | None:
    """The one that is asked first."""
    if one is None or other is None:
        return one or other
    return one if ORDER.index(one.why) <= ORDER.index(other.why) else other


def decimal_text(value: Decimal) -> float:
    """A decimal with three places at most."""
    return round(float(value), 3)
