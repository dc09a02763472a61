"""Which animal is meant: by tag, by name with at most one slip, or by a description that fits one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from core.handbook.asking import SLIP_NAME_LETTERS
from core.herd.state import Animal, Herd, folded
from core.notes.slots.common_words import COMMON

HERDS_KEPT: Final = 4
SHORTEST_NAME: Final = 3  # letters


@dataclass(frozen=True, slots=True)
class Mention:
    """An animal as it was spoken of.

    tags   the animals it can be, as the book spells them; none: nobody knows it
    said   the words
    sex    the sex that the words gave it (`doe 7`)
    exact  it was spelled as the book has it
    others living animals that the same sound would fit
    """

    tags: tuple[str, ...]
    said: str
    sex: str | None = None
    exact: bool = True
    others: tuple[str, ...] = ()

    @property
    def tag(self) -> str | None:
        """The one animal meant; None where there is none or several."""
        return self.tags[0] if len(self.tags) == 1 else None


class HerdWords:
    """The tags and names of a herd, ready to be looked up word by word."""

    def __init__(self, herd: Herd) -> None:
        self.herd = herd
        self.by_tag: dict[str, Animal] = {}
        self.names: dict[str, list[tuple[tuple[str, ...], tuple[str, ...]]]] = {}
        self._single_names: dict[str, tuple[str, ...]] = {}
        self._slips: dict[str, tuple[str, ...]] = {}
        self._described: dict[tuple[str | None, ...], tuple[str, ...]] = {}
        for animal in herd.animals.values():
            known = self.by_tag.get(folded(animal.tag))
            if known is None or animal.living or not known.living:
                self.by_tag[folded(animal.tag)] = animal
        self.prefixes = frozenset(tag.rstrip("0123456789") for tag in self.by_tag if not tag.isalpha()) - {""}
        self.lower_prefixes = frozenset(map(str.lower, self.prefixes))
        self._take_names()

    def _take_names(self) -> None:
        named: dict[str, list[Animal]] = {}
        for animal in self.by_tag.values():
            called = animal.name or (animal.tag if is_name(animal.tag) else "")
            if called.strip():
                named.setdefault(_plain(called), []).append(animal)
        for name, animals in named.items():
            living = [animal for animal in animals if animal.living]
            tags = tuple(animal.tag for animal in living or animals)
            words = tuple(name.split())
            for form in (words, (*words[:-1], words[-1] + "s")):
                self.names.setdefault(form[0], []).append((form[1:], tags))
                if len(form) == 1 and len(name) >= SLIP_NAME_LETTERS.whole:
                    self._single_names.setdefault(form[0], tags)
        for forms in self.names.values():
            forms.sort(key=lambda each: -len(each[0]))

    def tagged(self, said: str) -> Animal | None:
        """The animal of that tag, living or gone."""
        return self.by_tag.get(folded(said))

    def by_slip(self, word: str) -> tuple[str, ...]:
        """The animal whose name is one slip away from an unknown word of four letters or more; empty where none or several are."""
        if word not in self._slips:
            self._slips[word] = self._slipped(word)
        return self._slips[word]

    def _slipped(self, word: str) -> tuple[str, ...]:
        if len(word) < SLIP_NAME_LETTERS.whole - 1 or word in COMMON or not self._single_names:
            return ()
        near = {tags for name, tags in self._single_names.items() if _one_slip(word, name)}
        return next(iter(near)) if len(near) == 1 else ()

    def described(self, color: str | None, breed: str | None, sex: str | None) -> tuple[str, ...]:
        """Living animals that a colour, a breed and a sex fit."""
        found = self._described.get((color, breed, sex))
        if found is None:
            found = self._described[color, breed, sex] = self._fitting(color, breed, sex)
        return found

    def _fitting(self, color: str | None, breed: str | None, sex: str | None) -> tuple[str, ...]:
        return tuple(
            animal.tag for animal in self.living() if _fits(animal.color, color) and _fits(animal.breed, breed) and _fits(animal.sex, sex)
        )

    def parent(self, word: str) -> Animal | None:
        """The animal of that tag or one-word name."""
        return self.tagged(word) or next((self.tagged(tag) for tag in self._single_names.get(word, ())[:1]), None)

    def is_child(self, tag: str, parent: Animal) -> bool:
        """Whether the animal of that tag is out of, or by, this one."""
        animal = self.tagged(tag)
        return animal is not None and parent.key in (animal.dam, animal.sire)

    def living(self) -> Iterator[Animal]:
        """The animals on the farm."""
        return (animal for animal in self.herd.animals.values() if animal.living)

    def sounds_like(self, tag: str) -> tuple[str, ...]:
        """Living animals whose tag an ear may take for this one (`fifteen`, `fifty`)."""
        digits = tag.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
        if not digits.isdigit() or len(digits) != 2:
            return ()
        other = digits[1] + "0" if digits[0] == "1" else ("1" + digits[0] if digits[1] == "0" else "")
        found = self.by_tag.get(tag[: len(tag) - 2] + other) if other else None
        return (found.tag,) if found and found.living else ()


def is_name(tag: str) -> bool:
    """Whether a tag is said as a name is: a word, as of a buck that only has a name."""
    return tag.isalpha() and len(tag) >= SHORTEST_NAME


def _plain(name: str) -> str:
    return " ".join(name.lower().replace("'", "").replace("\u2019", "").split())


def _fits(have: str | None, said: str | None) -> bool:
    return said is None or (have is not None and have.lower() == said.lower())


def _one_slip(word: str, name: str) -> bool:
    """Whether one letter missing, added, changed or swapped makes the name of the word."""
    if abs(len(word) - len(name)) > 1 or word == name:
        return False
    return closest_one(word, name)


def closest_one(word: str, name: str) -> bool:
    """One edit apart, by hand: names are few, and rapidfuzz need not be loaded for them."""
    at = next((i for i, (a, b) in enumerate(zip(word, name, strict=False)) if a != b), min(len(word), len(name)))
    rest, named = word[at:], name[at:]
    return (
        rest[1:] == named[1:]
        or rest[1:] == named
        or rest == named[1:]
        or (len(rest) > 1 and len(named) > 1 and rest[0] == named[1] and rest[1] == named[0] and rest[2:] == named[2:])
    )


_kept: list[tuple[Herd, HerdWords]] = []


def words_of(herd: Herd) -> HerdWords:
    """The words of a herd; the last few herds' are kept, so that a note costs no survey of the barn."""
    for known, words in _kept:
        if known is herd or known.animals is herd.animals:
            return words
    words = HerdWords(herd)
    _kept.insert(0, (herd, words))
    del _kept[HERDS_KEPT:]
    return words
