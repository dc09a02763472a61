"""Digits: bare, glued, with a slash or a colon between, `31,32`, `bred 15/7`, `4-6`."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from core.notes.slots.dates import MONTHS, Said
from core.notes.slots.items import COUNTED, KG, NO_MARKS, OZ
from core.notes.slots.measures import TAILS, amount_at, clock_time, measure
from core.notes.slots.scan.base import NOTHING
from core.notes.slots.scan.caged import CAGE_WORDS
from core.notes.slots.scan.counted import NOON
from core.notes.slots.scan.labelled import Labelled
from core.notes.slots.scan.tagged import POUNDS_OR_OUNCES
from core.notes.slots.tokens import NUMBER, WORD, Token
from core.words import OUNCES_IN_POUND

FEEDING: Final = frozenset({"get", "gets", "getting", "fed", "eats", "feed"})
TIME_FIRST: Final = frozenset({"at", "around", "by", "about", "after", "before", "til", "till", "until", "@", "from", "time", "past"})
FIGURES_OF_WATCH: Final = 4
COUNTED_BUT_BAGS: Final = COUNTED - {"bag", "bags"}
#: What may change the sense of a number before it; a number before anything else is only that.
BEHIND_NUMBER: Final = TAILS | MONTHS.keys() | {"and", "&", "'", "+"}
#: Signs that may touch a number and change nothing about it.
ENDS_NUMBER: Final = frozenset({",", ".", ";", ":", "?", "!", ")"})
SHORTEST_WATCH: Final = 3  # figures: `1730` is a time of day, two or three figures are none
#: Digits that the thumb puts for words.
THUMBED: Final = {"2": "to", "4": "for"}


class Figures(Labelled):
    """Digits: bare, glued, with a slash or a colon between, `31,32`, `bred 15/7`, `4-6`."""

    def _figure(self, token: Token) -> None:
        if token.sort == NUMBER:
            self._digits(token)
        elif token.sort == "iso":
            self._date()
        elif token.sort == "slash":
            self._slash(token)
        elif token.sort == "clock":
            self._clock(token)
        else:
            self._pair(token)

    def _digits(self, token: Token) -> None:
        following = self.at + 1
        behind = self.tokens[following] if following < len(self.tokens) else NOTHING
        if (
            token.key.isdigit()
            and len(token.key) <= SHORTEST_WATCH
            and token.key not in THUMBED
            and (not behind.glued or behind.key in ENDS_NUMBER)
            and behind.sort != "slash"
            and behind.key not in BEHIND_NUMBER
        ):
            self._bare(Decimal(token.key), following, spoken_words=False)
            return
        if self._tag_with_tail(token) or self._date() or self._thumbed(token):
            return
        if (
            token.key == "2"
            and self._key(self.at + 1) in {"day", "nite", "night"}
            and self.tokens[self.at + 1].glued
            and self._key(self.at + 2) not in {"old", "wt", "weight"}
        ):
            self._add("date", self.at + 2, Said("near"))
            return
        if self._splits(token) or self._watch(token) or self._sexed_count(token):
            return
        found = amount_at(self.tokens, self.at)
        value, end, spoken_words, possessive = found or (Decimal(0), self.at + 1, False, False)
        self._number(value, end, spoken_words=spoken_words, possessive=possessive)

    def _watch(self, token: Token) -> bool:
        """`0430`, `at 1730`, `1730 h`: a time of day in four figures."""
        said, after = token.key, self._key(self.at + 1)
        told = said.startswith("0") or after in {"h", "hrs"} or self._key(self.at - 1) in {"at", "@"}
        if (
            len(said) != FIGURES_OF_WATCH
            or not said.isdigit()
            or not told
            or int(said[:2]) >= 24  # not a figure: hours and minutes
            or int(said[2:]) >= 60  # not a figure: hours and minutes
            or self.herd.tagged(said)
        ):
            return False
        self._add("time", self.at + (2 if after in {"h", "hrs"} else 1), f"{said[:2]}:{said[2:]}")
        return True

    def _thumbed(self, token: Token) -> bool:
        """`won't lift 4 moss`, `bred 15 2 flint`: a digit for a word, before a name."""
        if token.key == "4" and self._key(self.at + 1) == "sale":
            token.key, token.text, token.sort = "for", "for", WORD
            return self._phrase("for")
        word = THUMBED.get(token.key)
        following = self._key(self.at + 1)
        if token.key == "2" and following in CAGE_WORDS and bool(self.items) and self.items[-1].sort in {"animal", "num"}:
            return self._said_to()  # "moved Moss 2 cage b2"
        owned = following in {"my", "our", "the"} and bool(self.items) and self.items[-1].sort == "animal"
        owned = owned or (token.key == "4" and following == "$" and bool(self.items) and self.items[-1].sort in {"animal", "num"})
        if (
            word is None
            or not (
                following in self.herd.names
                or owned
                or (token.key == "2" and following in CAGE_WORDS and bool(self.items) and self.items[-1].sort == "animal")
            )
            or self.herd.tagged(token.key)
        ):
            return False
        options = self.lexicon.phrases.get(word, ())
        self._add("word", self.at + 1, None, next((marks for rest, marks in options if not rest), NO_MARKS))
        self.items[-1].said = word
        return True

    def _said_to(self) -> bool:
        self._add("word", self.at + 1, None, next((marks for rest, marks in self.lexicon.phrases.get("to", ()) if not rest), NO_MARKS))
        self.items[-1].said = "to"
        return True

    def _splits(self, token: Token) -> bool:
        """`16.5 kits`, `8,2 dead`, `31,32`: two numbers without the space between them."""
        sign = "," if "," in token.key else "."
        left, found, right = token.key.partition(sign)
        if not found or not left or not right.isdigit() or (sign == "," and len(right) > 2) or len(right) > 2:
            return False
        following = self._key(self.at + 1)
        both_tags = sign == "," and self.herd.tagged(left) is not None and self.herd.tagged(right) is not None
        scored = self.items and ("condition" in self.items[-1].marks or self.items[-1].said in {"$", "@"})
        if following in POUNDS_OR_OUNCES or following in KG or scored:
            return False
        counted = following in COUNTED_BUT_BAGS or (following in {"d", "a", "l"} and self.tokens[self.at + 1].glued)
        born = bool(self.items) and "kindle" in self.items[-1].marks and (sign == ",")
        if not (counted or both_tags or born):
            return False
        half = token.start + len(left)
        middle = Token("p", sign, sign, half, half + 1, glued=True)
        last = Token(NUMBER, right, right, half + 1, token.end, glued=True)
        self.tokens[self.at : self.at + 1] = [Token(NUMBER, left, left, token.start, half, token.glued), middle, last]
        self._add("num", self.at + 1, Decimal(left))
        return True

    def _slash(self, token: Token) -> None:
        beside = (self.items and "breed" in self.items[-1].marks) or "breed" in self.lexicon.single.get(self._key(self.at + 1), NO_MARKS)
        if beside and self._pair_of_animals(token):
            return
        found = amount_at(self.tokens, self.at)
        if found:
            item = measure(self.tokens, self.at, found[0], found[1])
            if item is None and self.items and self.items[-1].sort == "cup":
                self.items[-1].value += found[0]  # "1 cup 1/2"
                self.at = found[1]
                return
            if (
                item is None
                and self.items
                and (self.items[-1].sort in {"animal", "num"} or self.items[-1].marks)
                and self._said_already("cup")
            ):
                self._add("cup", found[1], found[0])  # "does 1 cup, bucks 1/2"
                return
            if item is None and self._key(found[1]) in {"a", "of"}:
                of_a = found[1] + (2 if self._key(found[1] + 1) == "a" else 1)  # "3/4 of a cup"
                item = measure(self.tokens, self.at, found[0], of_a) if self._key(of_a) in {"cup", "pound", "lb"} else None
            if item and item.sort in {"weight", "cup", "dose"}:
                self._take(item)
                return
            if self._key(self.at - 1) in FEEDING:
                self._number(found[0], found[1], spoken_words=False, possessive=False)  # "bucks get 3/4" is no day
                return
        self._date()

    def _pair_of_animals(self, token: Token) -> bool:
        """`bred 15/7`: a doe and a buck."""
        left, _, right = token.key.partition("/")
        known = [self.herd.tagged(part) for part in (left, right)]
        if {animal.sex for animal in known if animal} != {"doe", "buck"}:
            return False
        half = token.start + len(left)
        middle = Token("p", "/", "/", half, half + 1, glued=True)
        last = Token(NUMBER, right, right, half + 1, token.end, glued=True)
        self.tokens[self.at : self.at + 1] = [Token(NUMBER, left, left, token.start, half, token.glued), middle, last]
        self._add("num", self.at + 1, Decimal(left))
        return True

    def _clock(self, token: Token) -> None:
        following = self._key(self.at + 1)
        half, end = "", self.at + 1
        if following in {"am", "pm"}:
            half, end = following, self.at + 2
        elif following in {"a", "p"} and self._key(self.at + 2) in {"m", "."}:
            half, end = following + "m", self.at + 3
            while self._key(end) in {"m", "."} and end < self.at + 5 and self.tokens[end].glued:
                end += 1
        time = clock_time(token.key, half)
        before = self._key(self.at - 1)
        beside_date = bool(self.items) and any(item.sort == "date" for item in self.items[-2:])
        if time and (half or before in TIME_FIRST or beside_date):
            self._add("time", end, time)
        else:
            self._add("clock", self.at + 1, token.key)

    def _pair(self, token: Token) -> None:
        sign = "#" if "#" in token.key else "-"
        left, _, right = token.key.partition(sign)
        end = self.at + 1
        if (
            sign == "-"
            and right.isdigit()
            and self.items
            and self.items[-1].sort == "word"
            and int(right) >= OUNCES_IN_POUND
            and int(left) <= NOON
        ):
            self._add("date", end, Said("numeric", int(left), int(right)))  # `bred 11-19`
            return
        if self._key(end) in POUNDS_OR_OUNCES:
            end += 1
            if self._key(end) in OZ:
                end += 1
        elif self._key(end) in {"days", "day", "weeks", "week", "wks", "months"} and sign == "-":
            self._add("span", end + 1, (int(left), "range"))
            return
        self._add("pair", end, (Decimal(left), Decimal(right)))
        self.items[-1].unit = sign
