"""Numbers, measures, days and hours as they are said: `two and a half`, `a dozen`, `nineteen fifty a bag`, `half past five`."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from core.notes.slots.animals import Mention
from core.notes.slots.dates import PERIODS, ago_at, date_at
from core.notes.slots.items import NO_MARKS
from core.notes.slots.measures import OF_CUP, amount_at, clock_time, measure
from core.notes.slots.numbers import FRACTIONS, HOMOPHONES, NUMBER_WORDS, TENS
from core.notes.slots.scan.caged import Caged
from core.notes.slots.scan.tagged import MEASURED, NUMBER_FIRST

AFTER_COUPLE: Final = frozenset(
    {
        "of", "more", "", ".", ",", "kits", "kit", "babies", "bunnies", "dead", "alive", "bags", "bucks", "does", "days", "last", "today",
        "this", "yesterday", "overnight",
    }
)  # fmt: skip
NOON = 12  # not a figure: an hour of the day
MINUTES = 60  # not a figure: of an hour
PARTS_OF_HOUR: Final = {"half": 30, "quarter": 15}  # not a figure: minutes
AROUND_HOUR: Final = frozenset({"past", "to", "till"})
DAY_HALVES: Final = {"morning": "am", "afternoon": "pm", "evening": "pm"}
BESIDE_HOUR: Final = frozenset({"this", "today", "tonight", "in", "yesterday", "last", "tomorrow", "when"})
AFTER_ERRAND: Final = frozenset({"and", "", ".", ",", "to", "she", "he", "i", "there"})
ERRANDS: Final = frozenset({"went", "go", "checked", "check", "woke", "walked", "came", "headed", "looked", "look", "peeked", "home", "got up", "feeding", "chores"})  # fmt: skip
ERRAND_ITEMS = 8  # not a figure: items: as far back as an hour's errand is looked for
TENS_LEAST = 10
MOST_FALLS = 9  # a breeding's falls; more behind `f` are degrees
HUNDREDS_OF: Final = frozenset({"pounds", "lbs", "kilos", "grams"})  # not "pound": "two fifty pound bags" are two
FALLS: Final = frozenset({"falls"})
CENTS = 100
WEANED_LABELS: Final = {
    "b": frozenset({"bucks_word"}),
    "d": frozenset({"does_word"}),
    "m": frozenset({"bucks_word"}),
    "f": frozenset({"does_word"}),
}


class Counted(Caged):
    """Numbers, measures, days and hours as they are said: `two and a half`, `a dozen`, `nineteen fifty a bag`, `half past five`."""

    def _date(self) -> bool:
        found = date_at(self.tokens, self.at)
        if found is None:
            return False
        self._add("date", found[1], found[0])
        return True

    def _number_words(self, word: str) -> bool:
        tokens = self.tokens
        if word in {"a", "an", "couple", "one"}:
            ago = ago_at(tokens, self.at)
            if ago:
                self._add("date", ago[1], ago[0])
                return True
            if word == "couple" and self._key(self.at + 1) not in AFTER_COUPLE:
                return False
            if word == "couple":
                self._add("num", self.at + 1, Decimal(2), spoken=True)
                return True
            if word in {"a", "an"}:
                return self._article()
        if word in PARTS_OF_HOUR and self._key(self.at + 1) in AROUND_HOUR:
            return self._about_the_hour(word)
        return self._spoken(self.at)

    def _about_the_hour(self, word: str) -> bool:
        """`half past five`, `quarter to six`."""
        hour = amount_at(self.tokens, self.at + 2)
        if hour is None or not (0 < hour[0] <= NOON and hour[0] == int(hour[0])) or self._key(hour[1]) in MEASURED:
            return False
        to = self._key(self.at + 1) != "past"
        hours, minutes = (int(hour[0]) - to) or NOON, MINUTES - PARTS_OF_HOUR[word] if to else PARTS_OF_HOUR[word]
        half, last = (self._key(hour[1]), hour[1] + 1) if self._key(hour[1]) in {"am", "pm"} else ("", hour[1])
        if self._key(last) == "in" and self._key(last + 1) == "the" and self._key(last + 2) in DAY_HALVES:
            half, last = DAY_HALVES[self._key(last + 2)], last + 3
        self._add("time", last, clock_time(f"{hours}:{minutes}", half))
        return True

    def _spoken(self, begin: int) -> bool:
        """An amount whose words begin at an index: `two and a half`, `half a cup`, a hundred behind its `a`."""
        found = amount_at(self.tokens, begin)
        if found is None:
            return False
        value, end, spoken_words, possessive = found
        if 0 < value < TENS_LEAST and self._key(end) in TENS and value == int(value):
            rest = amount_at(self.tokens, end)
            if rest is not None and self._key(rest[1]) in HUNDREDS_OF:
                value, end = value * CENTS + rest[0], rest[1]  # "one twenty pounds of feed"
        if value in TENS.values() and (unit := self._unit_heard(int(value), end)):
            value, end = value + unit, end + 1  # "thirty to four pounds" among tags 31, 32, 33
        if (
            self._key(begin) == "half"
            and self._key(end) in {"a", "of"}
            and self._key(end + 1) in {"cup", "pound", "lb", "a", "scoop", "bag", "sack", "cc", "c", "ml", "tablet", "tsp"}
        ):
            end += 2 if self._key(end + 1) == "a" else 1
        elif spoken_words and self._key(end) == "of" and self._key(end + 1) == "a":
            end += 2
        self._number(value, end, spoken_words=spoken_words, possessive=possessive)
        return True

    def _unit_heard(self, tens: int, at: int) -> int:
        """The unit that `to` or `for` behind tens stands for: where only the two together are a tag, and a number follows."""
        unit = HOMOPHONES.get(self._key(at), 0) if self._key(at) in {"to", "too", "for", "fore"} else 0
        known = unit and self.herd.tagged(str(tens + unit)) is not None and self.herd.tagged(str(tens)) is None
        return unit if known and self._key(at + 1) in NUMBER_FIRST else 0

    def _article(self) -> bool:
        """`a dozen`, `a couple`, `a half`, `a cup`, `a pound and a half`."""
        following = self._key(self.at + 1)
        if following == "half" and self._key(self.at + 2) == "dozen":
            return self._spoken(self.at + 1)
        if following in {"half", "quarter"}:
            end = self.at + 2
            if self._key(end) in {"a", "of"}:
                end += 1
            self._number(FRACTIONS[following], end, spoken_words=True, possessive=False)
            return True
        if following == "third" and (self._key(self.at + 2), self._key(self.at + 3)) in OF_CUP:
            self._number(FRACTIONS[following], self.at + (4 if self._key(self.at + 2) == "of" else 2), spoken_words=True, possessive=False)
            return True
        if following in {"heaping", "level", "scant", "full", "big"} and self._key(self.at + 2) == "cup":
            return self._measured(Decimal(1), self.at + 2)
        if following in {"bag", "sack"} and [self._key(self.at + n) for n in (2, 3, 4)] == ["and", "a", "half"]:
            self._add("num", self.at + 1, Decimal("1.5"), spoken=True)  # not a figure: one and a half
            self.items[-1].said = "one and a half"
            self._add("word", self.at + 4, None, frozenset({"bag"}))
            return True
        if following == "couple" and (self._key(self.at - 1) == "to" or self._key(self.at + 2) not in AFTER_COUPLE):
            return False
        if following in {"dozen", "couple"}:
            end = self.at + 2
            self._add(
                "num", end + (self._key(end) == "of"), Decimal(12 if following == "dozen" else 2), spoken=True
            )  # not a figure: a dozen
            return True
        if following == "hundred":
            return self._spoken(self.at + 1)
        return following in {"cup", "pound"} and self._measured(Decimal(1), self.at + 1)

    def _number(self, value: Decimal, end: int, *, spoken_words: bool, possessive: bool) -> None:
        """A number with its unit, a span ago, an animal by possessive, or a bare number."""
        if self._key(end) == "f" and value <= MOST_FALLS:
            marks = FALLS if self._said_already("breed") else (WEANED_LABELS["f"] if self._said_already("wean") else NO_MARKS)
            if marks:
                self._add("num", end, value, spoken=spoken_words)
                self._add("word", end + 1, None, marks)
                return
        if not possessive:
            ago = ago_at(self.tokens, self.at) if self._key(end) in PERIODS and value == int(value) else None
            if ago:
                self._add("date", ago[1], ago[0])
                return
            if self._measured(value, end, spoken=spoken_words):
                return
        possessive = (
            possessive or (self._key(end) == "s" and self.tokens[end].glued) or (self._key(end) == "'" and self._key(end + 1) == "s")
        )
        if possessive and value == int(value):
            known = self.herd.tagged(str(int(value)))
            self._animal((known.tag,) if known else (), end)
            self.items[-1].unit = "possessive"
            if not known:
                self.items[-1].value = Mention((), str(int(value)))
            return
        if spoken_words and (self._price_words(value, end) or self._clock_words(value, end)):
            return
        self._bare(value, end, spoken_words=spoken_words)

    def _bare(self, value: Decimal, end: int, *, spoken_words: bool) -> None:
        """A number that nothing behind it changes: an hour behind somebody's errand, else itself, or the tag of the animal before it."""
        hour = value == int(value) and 0 < value <= NOON and self._key(self.at - 1) in {"at", "around", "by"}
        if hour and (self._key(end) in BESIDE_HOUR or (self._key(end) in AFTER_ERRAND and self._errand())):
            self._add("time", end, f"{int(value):02d}:00")
            return
        if self._key(end) == "+" and self._key(end + 1)[:1].isdigit():
            self._add("sum", end + 2)
            return
        below = (
            self.items
            and self.items[-1].said == "-"
            and self.tokens[self.at].glued
            and not self.items[-1].glued
            and len(self.items) > 1
            and self.items[-2].sort == "word"
        )
        self._add("sum" if below else "num", end, value, spoken=spoken_words)
        last = self.items[-1]
        if len(self.items) > 1 and value == int(value) and not spoken_words:
            before = self.items[-2] if self.items[-2].sort != "mark" else (self.items[-3] if len(self.items) > 2 else self.items[-2])
            between = self.items[-2] if before is not self.items[-2] else None
            if before.sort == "animal" and (between is None or between.said in {"(", ",", "-", "#"}):
                self._tag_behind(before, last)

    def _errand(self) -> bool:
        """`went out with my coffee at six and`: behind somebody's errand `at` tells the hour."""
        return any(item.said in ERRANDS for item in self.items[-ERRAND_ITEMS:]) and not any(
            item.marks & {"weigh", "sell", "list", "purchase"} for item in self.items[-ERRAND_ITEMS:]
        )

    def _measured(self, value: Decimal, end: int, *, spoken: bool = False) -> bool:
        """The amount with the unit that stands behind it; no where none does."""
        item = measure(self.tokens, self.at, value, end)
        if item is None:
            return False
        item.spoken = spoken
        self._take(item)
        return True

    def _price_words(self, value: Decimal, end: int) -> bool:
        """`nineteen fifty a bag`: dollars and cents."""
        cents = amount_at(self.tokens, end) if end < len(self.tokens) and self._key(end) in TENS else None
        if cents is None or not cents[2] or value != int(value) or not TENS_LEAST <= cents[0] < CENTS:
            return False
        sold = self._key(self.at - 1) == "for" and self._key(cents[1]) in {"", ".", "today"} and self._said_already("sell", "list")
        if (
            not sold
            and self._key(cents[1]) not in {"each", "apiece"}
            and (self._key(cents[1]), self._key(cents[1] + 1))
            not in {
                ("a", "bag"),
                ("a", "piece"),
                ("per", "bag"),
            }
        ):
            return False
        self._add("money", cents[1], int(value * CENTS + cents[0]))
        return True

    def _clock_words(self, value: Decimal, end: int) -> bool:
        """`at six thirty this morning`, `six thirty in the evening`: hours and minutes."""
        said = amount_at(self.tokens, end) if end < len(self.tokens) and self._key(end) in NUMBER_WORDS else None
        if said is None or not (0 < value <= NOON and TENS_LEAST <= said[0] < MINUTES) or said[0] != int(said[0]):
            return False
        after, last = self._key(said[1]), said[1]
        half = after if after in {"am", "pm"} else ""
        last += bool(half)
        if after == "in" and self._key(last + 1) == "the" and self._key(last + 2) in DAY_HALVES:
            half, last = DAY_HALVES[self._key(last + 2)], last + 3
        told_when = self._key(self.at - 1) in {"at", "around"} and after in BESIDE_HOUR | {"", ".", ","}
        if not (half or told_when) or any(item.marks & {"weigh", "sell", "list", "purchase"} for item in self.items):
            return False
        self._add("time", last, clock_time(f"{int(value)}:{int(said[0])}", half))
        return True
