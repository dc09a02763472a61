"""Ways in which the same note is typed otherwise: louder, wider, politer, in number words, of another animal, with a slip of the thumb."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

Facts = tuple[dict[str, Any], ...]
#: A note and the facts that it must give: what a mutation takes and what it makes.
Case = tuple[str, Facts]

NUMBER_WORDS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
#: A whole number that stands alone, so no part of a weight, date, price, dose or tag.
ALONE = re.compile(r"(?:(?<=^)|(?<=\s))\d{1,2}(?=[,;]?(?:\s|$))")
UNITS = r"(?:lbs?|oz|pounds?|ounces?|g|kg|ml|cc|cups?|f|c|am|pm|%)\b"
MONTHS = r"(?:jan|feb|mar|apr|may|june?|july?|aug|sep|oct|nov|dec)[a-z]*\.?"
NUMBER_BEFORE = re.compile(rf"(?:\d\S*|\b{MONTHS}|[#$x:+-])\s*$", re.IGNORECASE)
NUMBER_BEHIND = re.compile(rf"[,;]?\s*(?:\d|{UNITS}|{MONTHS}|[x+-])", re.IGNORECASE)
NUMBER_WORD = re.compile(r"(?:teen|ty|hundred|thousand)$")
LONG_WORD = re.compile(r"\b[a-z]{7,}\b")
#: The fields that say which animal is meant.
ANIMAL_FIELDS = frozenset({"who", "doe", "buck", "dam", "sire", "from", "to", "with"})
#: Facts of these kinds ask nothing of the animal but that it lives: no litter, mating, age, weight or breed stands behind them.
ANY_ANIMAL = frozenset({"moved", "condition", "temper", "ailment", "treated", "ration", "fault", "shown", "scored", "remark"})


def loud(case: Case) -> Iterator[Case]:
    """All capitals."""
    if case[0] != case[0].upper():
        yield case[0].upper(), case[1]


def wide(case: Case) -> Iterator[Case]:
    """Two spaces for each."""
    if " " in case[0]:
        yield case[0].replace(" ", "  "), case[1]


def stopped(case: Case) -> Iterator[Case]:
    """A full stop at the end, where nothing stands."""
    if case[0][-1].isalnum():
        yield case[0] + ".", case[1]


def please(case: Case) -> Iterator[Case]:
    """A polite head."""
    yield "please " + case[0], case[1]


def ok_so(case: Case) -> Iterator[Case]:
    """A spoken head."""
    yield "ok so " + case[0], case[1]


def in_words(case: Case) -> Iterator[Case]:
    """Each small number that stands alone as a word; not beside another number, a unit or a month, where digits say more than words."""
    text, facts = case
    for found in ALONE.finditer(text):
        before, after = text[: found.start()], text[found.end() :]
        number = int(found.group())
        if number < len(NUMBER_WORDS) and not NUMBER_BEFORE.search(before) and not NUMBER_BEHIND.match(after):
            yield before + NUMBER_WORDS[number] + after, facts


def slipped(names: frozenset[str]) -> Callable[[Case], Iterator[Case]]:
    """Two neighbours swapped inside a long word, at each place in turn; never in an animal's name or a number word, where a slip is another animal."""

    def slip(case: Case) -> Iterator[Case]:
        text, facts = case
        for found in LONG_WORD.finditer(text):
            word = found.group()
            if word in names or NUMBER_WORD.search(word):
                continue
            for at in range(1, len(word) - 2):
                if word[at] != word[at + 1]:
                    typo = word[:at] + word[at + 1] + word[at] + word[at + 2 :]
                    yield text[: found.start()] + typo + text[found.end() :], facts

    return slip


def of_another(sexes: Mapping[str, str]) -> Callable[[Case], Iterator[Case]]:
    """The note's one tag put instead of by each other living tag of the same sex."""

    def other(case: Case) -> Iterator[Case]:
        text, facts = case
        said = {str(value) for fact in facts for name, value in fact.items() if name not in ANIMAL_FIELDS}
        told = {value for fact in facts for name, value in fact.items() if name in ANIMAL_FIELDS and value in sexes}
        if len(told) != 1 or any(fact["kind"] not in ANY_ANIMAL for fact in facts):
            return
        (tag,) = told
        if len(re.findall(rf"\b{tag}\b", text)) != 1 or tag in said:
            return
        for instead, sex in sexes.items():
            if instead != tag and sex == sexes[tag] and not re.search(rf"\b{instead}\b", text):
                yield re.sub(rf"\b{tag}\b", instead, text), tuple(_put(fact, tag, instead) for fact in facts)

    return other


def _put(fact: dict[str, Any], tag: str, instead: str) -> dict[str, Any]:
    return {name: instead if name in ANIMAL_FIELDS and value == tag else value for name, value in fact.items()}
