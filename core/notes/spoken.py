"""Notes that were spoken: what an ear is told beforehand, when two ears agree, and what a number may have been mistaken for.

An ear gives words; they are read like typed ones. What is read is sure only where two ears of different make came to the same
facts, and where no number among the words has a twin (fourteen, forty) that could have been meant as well.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Final

from core.herd.questions import living
from core.herd.state import Herd
from core.notes.fact import Json, to_json
from core.notes.journal import Note
from core.notes.listen import noted, printed
from core.notes.reading import Message
from core.notes.replay import Book, local_day
from core.notes.sayings import in_words, sayings
from core.notes.talk.doubt import echo

#: What a note sounds like, for an ear that writes on in the manner of what it has heard: digits, commas between numbers, each verb once.
#: `{0}` and so on are tags that no animal of the farm has: one that leaks into what is heard is then asked about, never noted.
MANNER: Final = (
    "Doe {0} kindled 7, 3 dead. Weighed {1}, 3 pounds 8 ounces. {1} weighed 4 pounds 15 ounces. Bred doe {2} to buck {3}. Rebred. Nest box in for doe {2}. "
    "Palpated, missed, refused. Moved to cage B3. Weaned 16: 3 bucks, 2 does. Litter of 6, fostered 2 kits, lost 1. Tattooed, culled, butchered, sold 2 fryers for 40 dollars. "
    "{0} is 3 pounds. Bit me. Sore hocks, ear mites, snuffles, mastitis, off feed, white toenails. Gave ivermectin. Pulled fur. Bought 4 bags of feed. Who is due?"
)
SAMPLE_TAGS: Final = 4
#: So many names and tags are told an ear beforehand: it listens to no more.
NAMES_TOLD: Final = 30  # not a figure: words
TAGS_TOLD: Final = 12  # not a figure: words

_TWIN: Final = re.compile(r"(?<!\d)(?:1[3-9]|[3-9]0)(?!\d)")
_TEENS: Final = {
    "thirteen": "thirty",
    "fourteen": "forty",
    "fifteen": "fifty",
    "sixteen": "sixty",
    "seventeen": "seventy",
    "eighteen": "eighty",
    "nineteen": "ninety",
}
_TWIN_WORDS: Final = {**_TEENS, **{ten: teen for teen, ten in _TEENS.items()}}
_TWIN_WORD: Final = re.compile(rf"\b(?:{'|'.join(_TWIN_WORDS)})\b", re.IGNORECASE)
SUGGESTED: Final = 3
#: The number of a note that holds what was heard wrongly begins so: the next one of that person says what was meant.
MISHEARD: Final = "heard:"
#: Words that say nothing of themselves, where no fact used them. `not` is none of these.
LITTLE: Final = frozenset(
    "a an the i we it she he they them and of to in is was were be at on for with by my her his our me us you so then now there here up out down".split()  # noqa: SIM905 - a table of words
)
LONG_NUMBER: Final = 4  # digits: read one by one
LONGEST_MISHEARD: Final = 3  # words that an ear makes of one name


@dataclass(frozen=True, slots=True)
class Primer:
    """What an ear is told before it listens: how notes look, every name that may be spoken, and sentences in words alone, such as are said here."""

    manner: str
    names: tuple[str, ...]
    sayings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Ears:
    """What was heard: by the one ear, and by the other; None where there is no other."""

    first: str
    second: str | None = None


@dataclass(frozen=True, slots=True)
class Judged:
    """What spoken words come to.

    text     the words, as the ear that is trusted more heard them; names in it as they were put right before
    note     what the journal would get of them
    agree    whether both ears came to the same facts, with the same words left over
    sure     they agree, and no number could as well have been another
    others   other wordings that may have been meant, the likeliest first
    """

    text: str
    note: Note
    agree: bool
    sure: bool
    others: tuple[str, ...] = ()

    @property
    def tells(self) -> bool:
        """Whether there is a note in it at all."""
        return tells(self.note)

    @property
    def only_asks(self) -> bool:
        """Whether it is a question of the person's: nothing comes of mishearing it but another answer."""
        return self.note.ask is None and bool(self.note.facts) and all(fact.kind == "query" for fact in self.note.facts)


def primer(herd: Herd) -> Primer:
    """What an ear is told of this farm."""
    animals = living(herd)
    tags = tuple(animal.tag for animal in animals)
    names = tuple(dict.fromkeys(animal.name for animal in animals if animal.name))
    manner = MANNER.format(*_free_tags(herd))
    said = [f"Names: {', '.join(names[:NAMES_TOLD])}."] if names else []
    lettered = [tag for tag in tags if not tag.isdigit()][:TAGS_TOLD]
    said += [f"Tags: {', '.join(lettered)}."] if lettered else []
    return Primer(" ".join([manner, *said]), names, sayings(herd))


def _free_tags(herd: Herd) -> list[str]:
    """A few numbers that no animal has."""
    free: list[str] = []
    number = 26  # not a figure: any number does that few animals have
    while len(free) < SAMPLE_TAGS:
        number += 1
        if herd.find(str(number)) is None:
            free.append(str(number))
    return free


def judged(book: Book, ears: Ears, message: Message) -> Judged:
    """What spoken words come to in this book; the message says when and by whom, its text is not looked at. Nothing is recorded."""
    text, note = _first(book, ears.first, message)
    second = None if ears.second is None else noted(book, _saying(message, ears.second))
    agree = second is not None and _recordable(note) and second.ask is None and _said_in(note) == _said_in(second)
    sure = agree and not any(_recordable(noted(book, _saying(message, twin))) for twin in twins(text))
    others = [] if sure else _others(book, message, Ears(text, ears.second), note)
    return Judged(text, note, agree, sure, tuple(others[:SUGGESTED]))


def _first(book: Book, text: str, message: Message) -> tuple[str, Note]:
    """The words of the ear that is trusted more, and what they come to; with names put right where only so they can be recorded."""
    note = noted(book, _saying(message, text))
    righted = text if _recordable(note) else with_names(text, names_learned(book))
    anew = note if righted == text else noted(book, _saying(message, righted))
    return (righted, anew) if _recordable(anew) and any(fact.kind != "remark" for fact in anew.facts) else (text, note)


def twins(text: str) -> Iterator[str]:
    """The text with one number as the other that sounds like it: fourteen for forty, `30` for `13`."""
    for found in _TWIN.finditer(text):
        digits = found[0]
        yield text[: found.start()] + (f"{digits[1]}0" if digits[0] == "1" else f"1{digits[0]}") + text[found.end() :]
    for found in _TWIN_WORD.finditer(text):
        yield text[: found.start()] + _TWIN_WORDS[found[0].lower()] + text[found.end() :]


def names_learned(book: Book) -> dict[str, str]:
    """Words that an ear hears for a name: heard -> name. Learned where what was heard was put right by typing it."""
    names = {animal.name.lower(): animal.name for animal in living(book.herd) if animal.name}
    learned: dict[str, str] = {}
    for note in book.notes:
        if note.number.startswith(MISHEARD):
            later = (each for each in book.notes if each.id > note.id and each.chat == note.chat and each.author == note.author)
            typed = next(later, None)
            if typed is not None and typed.facts:
                learned.update(_names_changed(note.text, typed.text, names))
    return learned


def _names_changed(heard: str, typed: str, names: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The words of what was heard that stand where a name was typed."""
    before, after = _words(heard), _words(typed)
    for what, start, end, first, last in SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        said, name = " ".join(before[start:end]), " ".join(after[first:last])
        if (
            what == "replace"
            and name in names
            and said not in names
            and end - start <= LONGEST_MISHEARD
            and said.replace(" ", "").isalpha()
        ):
            yield said, names[name]


def with_names(text: str, learned: Mapping[str, str]) -> str:
    """The text with names in place of what is heard for them."""
    for said, name in learned.items():
        text = re.sub(rf"\b{re.escape(said)}\b", name, text, flags=re.IGNORECASE)
    return text


def _words(text: str) -> list[str]:
    return re.findall(r"[\w'-]+", text.lower())


def tells(note: Note) -> bool:
    """Whether a note says something for the book, or asks; words about nobody are talk that the ear happened to catch."""
    if note.ask is not None and not note.facts:
        return note.ask.why != "what"
    return any(fact.kind != "remark" or getattr(fact, "who", None) is not None for fact in note.facts)


def becomes(book: Book, note: Note) -> tuple[str, ...]:
    """What the note would put on the book, a line a fact."""
    herd = book.herd.on_day(local_day(note.at, book.herd))
    return tuple(echo(fact, herd) for fact in printed(note).facts)


def _others(book: Book, message: Message, ears: Ears, note: Note) -> list[str]:
    """Other wordings that read without a question: a number's twin, such as an animal that is there for one that is not; the other ear's."""
    known = [printed(note).facts] if note.ask is None else []
    found: list[str] = []
    for text in (*twins(ears.first), *([ears.second] if ears.second else [])):
        other = noted(book, _saying(message, text))
        if _recordable(other) and other.facts not in known:
            known.append(other.facts)
            found.append(text)
    return found


def _said_in(note: Note) -> list[Json]:
    """A note's facts, and the words that none of them used, with free text as it sounds: one ear writes `9`, the other `nine`."""
    said = (to_json(fact) for fact in note.facts)
    left = [word for word in _aloud(note.unread).split() if word not in LITTLE]
    return [*({name: _aloud(value) if isinstance(value, str) else value for name, value in each.items()} for each in said), left]


def _aloud(text: str) -> str:
    return " ".join(in_words(int(word)) if word.isdecimal() and len(word) < LONG_NUMBER else word for word in _words(text))


def _recordable(note: Note) -> bool:
    """Whether it would be recorded as it is."""
    return note.ask is None and tells(note)


def _saying(message: Message, text: str) -> Message:
    return Message(text, message.at, message.author, message.chat, reply_to=message.reply_to)
