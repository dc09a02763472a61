"""What is said on a farm, sentence by sentence: an ear that knows no other language is made of these.

The sentences are the kinds' own examples, and patterns of the common ones, with the farm's animals and numbers of every size put
in. Nothing is drawn at random: the same farm gives the same sentences.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import count
from typing import Final

from core.herd.questions import living
from core.herd.state import Herd
from core.notes.kinds import KINDS
from core.notes.slots.numbers import NUMBER_WORDS

#: Each pattern is said so often, with other animals and numbers each time; each example so often, with other numbers.
TIMES: Final = 24  # not a figure: sentences
EXAMPLE_TIMES: Final = 4  # not a figure: sentences

#: Patterns, a line a subject. A word in braces is one of FILLS, or an animal of the farm.
PATTERNS: Final = """
{doe} kindled {few} | {doe} kindled {few} {lost} dead | {doe} kindled {few} all alive | {doe} had {few} | {doe} had {few} kits {day} | {doe} kindled {few} {day}
{doe} had {few} and {lost} were dead | {doe} had {few} this morning and {lost} were dead | {doe} kindled {few} alive {lost} dead | {doe} gave us {few} kits | {doe} kindled
bred {doe} to {buck} | bred {doe} to {buck} {day} | rebred {doe} to {buck} | put {doe} in with {buck} | {doe} refused {buck} | {doe} refused the buck | {doe} would not lift for {buck}
bred {doe} to {buck} twice | {doe} bred to {buck} | {doe} palpated bred | {doe} palpated open | palpated {doe} nothing there | palpated {doe} bred | palpated {doe} not sure | {doe} missed
{doe} did not take | {doe} is open | {doe} felt bred | nest box in {doe} | nest box in for {doe} | box in for {doe} | box out {doe} | took the nest box out of {doe} | {doe} pulled fur | {doe} is carrying hay
put the box in with {doe} | {doe} is pulling fur | {doe} lost {lost} kits | {doe} lost {lost} | {doe} lost {lost} kits froze | {lost} dead kits in the nest of {doe} | {doe} lost {lost} {cause}
{lost} kits of {doe} died | found {lost} dead kits under {doe} | moved {lost} kits from {doe} to {doe} | fostered {lost} kits from {doe} to {doe} | {doe} has {few} kits | counted {few} kits for {doe}
there are {few} left under {doe} | weaned {doe} | weaned {few} kits from {doe} | weaned {doe} {lost} bucks {lost} does | weaned litter of {doe} {few} kits | {doe} weaned {few} | sexed the litter of {doe} {lost} bucks {lost} does
{who} weighed {lb} pounds {oz} ounces | {who} weighs {lb} pounds {oz} ounces | weighed {who} {lb} pounds {oz} ounces | {who} {lb} pounds {oz} | weighed {who} {lb} {oz} | {who} is {lb} pounds | {who} weighs {lb} pounds
{who} is up to {lb} pounds {oz} ounces | {who} came in at {lb} pounds {oz} | the litter of {doe} weighed {lb} pounds {oz} ounces | {who} condition {score} | {who} body condition {score}
{who} gets {cups} cup of feed | {who} gets {cups} cup | bought {few} bags of feed | bought {few} bags of feed for {money} dollars | paid {money} for feed | bucks get {oz} ounces | does get {oz} ounces
{who} bit me | {who} is sweet | {who} is growling | {who} is gentle | {who} lunged at me | {doe} scattered the litter | {doe} ate her litter | {doe} ate {lost} kits | {doe} is peeing in the box | {doe} made a good nest
{who} has {sign} | {who} {sign} | {who} got {sign} | {who} has {sign} in one ear | {who} is off feed | {who} is not eating | {who} is better | treated {who} for {sign} | gave {who} ivermectin | gave {who} a shot of ivermectin
{who} died | found {who} dead | {who} is dead | lost {who} {day} | {who} died {day} | found {who} dead this morning | {who} has white toenails | {who} has a white spot | {who} bad teeth
sold {who} | sold {who} for {money} dollars | sold {who} {money} dollars | sold {lost} from the litter of {doe} | list {who} for {money} dollars | {who} is for sale {money} dollars | saved {who} | sold {who} to {buyer}
gave {who} to {buyer} | culled {who} | culled {who} {sign} | butchered {who} | butchered {few} fryers | butchered {who} dressed {lb} pounds {oz} ounces | processed {who} | plan to cull {who} | butcher {who} on {day}
keep {who} | sell {who} | retire {who} | move {who} to cage {cage} | moved {who} to cage {cage} | {who} to cage {cage} | put {who} in pen {cage} | trimmed nails on {who} | tattooed the litter of {doe}
remind me {day} to trim nails | remind me {day} to weigh {who} | remind me {day} to breed {doe} | skip the nest check on {doe} | done with {who} | {who} is black | {who} won first | {who} best of breed
who is due | who is due this week | when is {doe} due | why {who} | show me {who} | who should i keep | how many kits | how many rabbits | what is due today | what does {who} weigh | {doe} times {buck}
undo | undo that | no {who} not {who} | make that {few} | cold snap tonight | it is {money} degrees | frost tonight | new doe {number} | new buck {number} | {who} looks rough today | {who} looks good
""".strip()

FILLS: Final[Mapping[str, tuple[str, ...]]] = {
    "cause": ("froze", "cold", "starved", "crushed", "chilled", "on the wire", "out of the box", "heat"),
    "sign": ("sore hocks", "snuffles", "ear mites", "a runny nose", "mastitis", "a sore eye", "sneezing", "diarrhea", "a cough", "bloat"),
    "day": ("today", "yesterday", "last night", "this morning", "on monday", "on tuesday", "on wednesday", "on thursday", "friday", "saturday", "sunday", "tomorrow"),
    "buyer": ("the neighbor", "a friend", "a family"),
    "cups": ("half a", "one", "a", "one and a half"),
    "score": ("two", "three", "four", "two and a half", "three and a half"),
    "cage": ("a one", "b two", "b three", "c four", "d five", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
}  # fmt: skip
_SPANS: Final = {"few": (1, 13), "lost": (1, 8), "lb": (1, 13), "oz": (1, 16), "money": (10, 96), "number": (1, 100)}
_STEPS: Final = {"money": 5}
_SLOT: Final = re.compile(r"\{(\w+)\}")
_UNITS: Final = {value: word for word, value in reversed(NUMBER_WORDS.items()) if word.isalpha()}
TEENS_END: Final = 20  # not a figure: from here on a number is two words
HUNDRED: Final = 100  # not a figure: and from here on three

_WEIGHT: Final = re.compile(r"\b(\d{1,2})-(\d{1,2})\b")
_MONEY: Final = re.compile(r"\$(\d+)(?:\.00)?(?![\d.])")
_TAG: Final = re.compile(r"\b([A-Za-z])(\d{1,3})\b")
_PLAIN: Final = re.compile(r"[a-z' ]+")
_NUMBER: Final = re.compile(r"\d+")
_ORDINAL: Final = re.compile(r"\d(?:st|nd|rd|th)\b")
_SHORT: Final = {"lbs": "pounds", "lb": "pounds", "oz": "ounces", "+": "and", "&": "and"}


def sayings(herd: Herd) -> tuple[str, ...]:
    """Sentences in words alone: no digits, no marks."""
    fills = _fills(herd)
    patterns = [pattern for line in PATTERNS.splitlines() for pattern in line.split(" | ")]
    said = [_said(pattern, fills, time) for pattern in patterns for time in range(TIMES)]
    return tuple(dict.fromkeys((*said, *_examples())))


def in_words(number: int) -> str:
    """A number below a thousand as it is said: `thirty one`."""
    if number < TEENS_END:
        return _UNITS[number]
    if number < HUNDRED:
        tens, ones = divmod(number, 10)
        return _UNITS[tens * 10] + (f" {_UNITS[ones]}" if ones else "")
    hundreds, rest = divmod(number, HUNDRED)
    return f"{_UNITS[hundreds]} hundred" + (f" {in_words(rest)}" if rest else "")


def spoken_tag(tag: str) -> str:
    """A tag as it is said: `r twenty one`. A word stays one."""
    parts = re.findall(r"\d{1,3}|[a-z]+", tag.lower())
    return " ".join(in_words(int(part)) if part.isdigit() else part for part in parts)


def _fills(herd: Herd) -> Mapping[str, Sequence[str]]:
    """What each slot can be: numbers in words, and the farm's animals by tag, by name, and by sex with either."""
    spans = {name: tuple(in_words(number) for number in range(*span, _STEPS.get(name, 1))) for name, span in _SPANS.items()}
    return {
        **FILLS,
        **spans,
        "doe": _called(herd, "doe"),
        "buck": _called(herd, "buck"),
        "who": (*_called(herd, "doe"), *_called(herd, "buck")),
    }


def _called(herd: Herd, sex: str) -> tuple[str, ...]:
    animals = [animal for animal in living(herd) if animal.sex in {sex, None}]
    tags = [spoken_tag(animal.tag) for animal in animals]
    names = [_words_alone(animal.name) for animal in animals if animal.name]
    return tuple(filter(None, (*tags, *(f"{sex} {tag}" for tag in tags), *names))) or (sex,)


def _words_alone(name: str) -> str:
    return " ".join(re.findall(r"[a-z']+", name.lower()))


def _said(pattern: str, fills: Mapping[str, Sequence[str]], time: int) -> str:
    """The pattern for that time: each slot goes round its fills at a pace of its own, so that all meet all."""
    place = count(1)

    def filled(found: re.Match[str]) -> str:
        options, at = fills[found[1]], next(place)
        return options[(time * (2 * at - 1) + len(pattern) * at + time // len(options)) % len(options)]

    return _SLOT.sub(filled, pattern)


@lru_cache(maxsize=1)
def _examples() -> tuple[str, ...]:
    """The kinds' examples that can be said as they stand, with other numbers of the same size in place of theirs."""
    texts = (example.text for kind in KINDS for example in kind.examples)
    return tuple(said for text in texts for time in range(EXAMPLE_TIMES) for said in _aloud(text, time))


def _aloud(text: str, time: int) -> Iterator[str]:
    """The example in words; nothing where it has signs that nobody says."""
    if _ORDINAL.search(text):
        return
    text = _MONEY.sub(r"\1 dollars", _WEIGHT.sub(r"\1 pounds \2 ounces", _TAG.sub(r"\1 \2", text.lower())))
    text = _NUMBER.sub(
        lambda found: in_words(_other(int(found[0]) % 1000, time)), re.sub(r"[,;:!?]|\.(?!\d)", " ", text)
    )  # not a figure: said
    words = " ".join(_SHORT.get(word, word) for word in text.split())
    if words and _PLAIN.fullmatch(words):
        yield words


def _other(number: int, time: int) -> int:
    """Another number of the same size, further each time; at first the number itself."""
    size = 12 if number <= 12 else 60  # not a figure: a dozen, and what tags go to
    return number if number > size else (number + 5 * time - 1) % size + 1
