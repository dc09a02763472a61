"""Words that sound like numbers: `to`, `for`, `ate`, `won` are one only where grammar makes them one."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from core.handbook.colors import color_words
from core.notes.slots.items import COUNTED, LB, Item
from core.notes.slots.numbers import HOMOPHONES, NUMBER_WORDS, TENS
from core.notes.slots.scan.base import NEWEST
from core.notes.slots.scan.counted import Counted
from core.notes.slots.scan.tagged import POUNDS_OR_OUNCES

AFTER_BIRTH: Final = frozenset(
    {"candled", "kindled", "kindle", "had", "make", "that", "born", "of", "not", "mean", "no", "said", "meant", "has", "weaned", "lost"}
)
CLAUSE_ENDS: Final = frozenset({"", ".", ",", ";", "\n", "this", "today", "yesterday", "last", "and", "not", "all", "no", "won"})
TRAITS_SAID: Final = frozenset({"type", "fur", "color", "size", "overall"})
MOST_POUNDS: Final = 30  # not a figure: pounds that a rabbit may be said to weigh
ENDS_WEIGHT: Final = frozenset({"", ".", ",", ";", "\n", "and", "today", "this"})
COUNTED_OR_POUNDS: Final = COUNTED | LB
BEHIND_BIRTH: Final = CLAUSE_ENDS | {"alive", "dead"}
BEHIND_AMOUNT: Final = POUNDS_OR_OUNCES | {"cups", "falls"}

ATE_OR_WON: Final = frozenset({"ate", "won"})
TWO_OR_FOUR: Final = frozenset({"to", "too", "for", "fore"})
KITS: Final = frozenset({"kit", "kits", "babies", "bunnies"})
LOST: Final = frozenset({"died", "dead", "lost", "gone", "froze", "missing", "were"})
HAPPENED: Final = frozenset({"lost", "lose", "found", "died", "had"})
TOOK_AWAY: Final = frozenset({"lost", "sold", "found", "moved", "gave", "took"})
BEFORE_COUNT: Final = frozenset({"candled", "lost", "had", "kindled", "has", "fostered", "bought", "weaned", "bucks", "buck", "moved", "sold", "born", "keep", "kept", "and", "ate", "picked", "up", "got"})  # fmt: skip


class HeardNumbers(Counted):
    """Words that sound like numbers: `to`, `for`, `ate`, `won` are one only where grammar makes them one."""

    def _homophone(self, word: str) -> bool:
        before, after = self._key(self.at - 1), self._key(self.at + 1)
        if word == "a":
            return False
        value = Decimal(HOMOPHONES[word])
        if after in ENDS_WEIGHT and word != "too" and self._weighed_to(value):
            return True
        if (
            before in TENS
            and word in {"won", "ate", "too", "tree"}
            and self.items
            and self.items[-1].sort == "num"
            and self.items[-1].spoken
        ):
            last = self.items.pop()
            self.at = last.start
            self._add("num", last.end + 1, last.value + value, spoken=True)
            return True
        if self._is_number(word, before, after):
            self._number(value, self.at + 1, spoken_words=True, possessive=False)
            return True
        return False

    def _counted_of(self, last: Item) -> bool:
        """`weaned sixteen free bucks`: the number before is the doe's tag."""
        return self._said_already("wean") and self.herd.tagged(str(last.value)) is not None

    def _weighed_to(self, ounces: Decimal) -> bool:
        """`weighs four to`, `weighed thirty one four ate`: behind spoken pounds at an end, their ounces."""
        last = self.items[-1] if self.items else None
        if last is None or last.sort != "num" or not last.spoken or last.value != int(last.value) or last.value > MOST_POUNDS:
            return False
        if not any("weigh" in item.marks for item in self.items[-NEWEST:-1]):
            return False
        behind = "weigh" in self.items[-2].marks or self.items[-2].sort in {"num", "animal"}
        if not behind or (self.herd.tagged(str(last.value)) and self.items[-2].sort == "word" and "weighed" in self.items[-2].said):
            return False
        self.items.pop()
        end = self.at + 1
        self.at = last.start
        self._add("pair", end, (last.value, ounces), spoken=True)
        self.items[-1].unit = "-"
        return True

    def _is_number(self, word: str, before: str, after: str) -> bool:
        """Whether grammar makes a number of `to`, `for`, `ate`, `won`."""
        after_number = bool(self.items) and self.items[-1].sort == "num"
        if word in {"free", "tree", "tin", "sex"}:
            return self._counts(word, before, after, after_number=after_number)
        if before in {"kindled", "candled", "had"} and word in {"ate", "won"} and after in NUMBER_WORDS:
            return True  # "kindled ate two were dead"
        if before in AFTER_BIRTH and after in BEHIND_BIRTH and word in ATE_OR_WON | TWO_OR_FOUR:
            return word in ATE_OR_WON or after not in {"this", "last", "and"}
        if word in TWO_OR_FOUR:
            return before == "a" or self._two_or_four(word, before, after, after_number=after_number)
        if word == "won":
            return after in COUNTED or after == "of" or (after in {"was", "dead", "died"} and before in {"and", "but"})
        return word == "ate" and after in {"kits", "alive", "dead", "born", "live"} and before in AFTER_BIRTH

    def _counts(self, word: str, before: str, after: str, *, after_number: bool) -> bool:
        """`weaned free bucks`, `kindled sex`: before what is counted only."""
        counted = word != "free" or (self._said_already("wean", "kindle", "count", "lose", "foster") and before not in {"is", "are", "was"})
        return after in COUNTED_OR_POUNDS and counted and (not after_number or (word == "free" and self._counted_of(self.items[-1])))

    def _two_or_four(self, word: str, before: str, after: str, *, after_number: bool) -> bool:
        """`lost to kits`, `kindled for and to were dead`, `type for`: by the words on both sides."""
        if (after in {"dead", "alive", "live", "died"} and after_number) or after in BEHIND_AMOUNT:
            return True
        if before in TRAITS_SAID and (after in TRAITS_SAID - {before} or (after in {"", ",", "and"} and word in {"for", "fore"})):
            return True
        behind = self._key(self.at + 2)
        if not self.at and after in KITS and behind in LOST:
            return True  # "to kits died under 12"
        if after in {"was", "were"} and before in {"and", "but"} and behind in {"dead", "alive", "stillborn", "born"}:
            return True
        if (after == "more" and before in HAPPENED) or (before in {"is", "are", "has"} and after in color_words()):
            return True
        if before in TOOK_AWAY and (after == "of" or (after == "out" and behind == "of")):
            return True
        if before in {"kindled", "candled"} and after in {"with", "but"}:
            return True
        return after in COUNTED and before in BEFORE_COUNT and not after_number
